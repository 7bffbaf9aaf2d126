from collections.abc import Callable

from hypothesis import given, settings, strategies as st

from foredge.contract import Gate, Operation, Origin, leaf, say
from foredge.dimension import TIME
from foredge.plan.order import order

STAGES = ("text-block", "case")


def op(name: str, minutes: float = 20, wait: float = 0, **more: object) -> Operation:
    def time(value: float) -> object:
        return leaf(value * 60, TIME, "t", Origin("default"))

    return Operation(
        id=name,
        title=name,
        steps=(say("Do it."),),
        hands_on=time(minutes),  # type: ignore[arg-type]
        wait=time(wait) if wait else None,  # type: ignore[arg-type]
        **more,  # type: ignore[arg-type]
    )


def ids(*operations: Operation, gates: tuple[Gate, ...] = ()) -> list[str]:
    ordered, problems = order(operations, STAGES, gates)
    assert not problems
    return [operation.id for operation in ordered]


def test_order_follows_after_and_not_declaration() -> None:
    assert ids(
        op("text-block.sew", after=("text-block.fold",)),
        op("text-block.fold"),
    ) == ["text-block.fold", "text-block.sew"]


def test_ties_go_by_stage_and_stay_with_it() -> None:
    assert ids(
        op("case.cut"),
        op("case.glue", after=("case.cut",)),
        op("text-block.fold"),
        op("text-block.sew", after=("text-block.fold",)),
    ) == ["text-block.fold", "text-block.sew", "case.cut", "case.glue"]


def test_a_long_wait_begins_early() -> None:
    assert ids(
        op("text-block.fold", 120),
        op("text-block.sew", 180, after=("text-block.fold",)),
        op("case.cut-layers", 15),
        op("case.laminate", 15, 24 * 60, after=("case.cut-layers",)),
        op("case.cut-boards", after=("case.laminate", "text-block.sew")),
    ) == [
        "case.cut-layers",
        "case.laminate",
        "text-block.fold",
        "text-block.sew",
        "case.cut-boards",
    ]


def test_a_long_wait_is_filled_with_other_work() -> None:
    assert ids(
        op("text-block.fold", 120),
        op("text-block.press", 5, 12 * 60, after=("text-block.fold",)),
        op("text-block.sew", 180, after=("text-block.press",)),
        op("case.cut", 30),
    ) == ["text-block.fold", "text-block.press", "case.cut", "text-block.sew"]


def test_a_short_wait_is_sat_out() -> None:
    assert ids(
        op("text-block.glue", 10, 45),
        op("text-block.line", 10, after=("text-block.glue",)),
        op("case.cut", 30),
    ) == ["text-block.glue", "text-block.line", "case.cut"]


def test_optional_order_counts_only_where_the_other_is() -> None:
    assert ids(
        op("text-block.sew", after_any=("text-block.punch", "nowhere.at-all")),
        op("text-block.punch"),
        op("case.seal", before_any=("text-block.punch", "nowhere.else")),
    ) == ["case.seal", "text-block.punch", "text-block.sew"]


def test_what_stops_for_a_gate_comes_after_it() -> None:
    gate = Gate("G2", "The block", "text-block.press", ())
    assert ids(
        op("text-block.cut", stops_for=("G2",)),
        op("text-block.press"),
        gates=(gate,),
    ) == ["text-block.press", "text-block.cut"]


def test_unknown_operation_names_near_ones_and_the_rest_is_ordered() -> None:
    ordered, problems = order(
        [op("case.case-in", after=("text-block.press-block",)), op("text-block.press-blocks")],
        STAGES,
    )
    assert len(ordered) == 2
    (problem,) = problems
    assert problem.rule == "operation-unknown"
    assert problem.path == ("case",)
    assert "'case.case-in' must come after 'text-block.press-block'" in problem.text
    assert "near: text-block.press-blocks" in problem.text


def test_a_cycle_is_named_whole() -> None:
    _, problems = order(
        [
            op("case.c", after=("case.b",)),
            op("case.a", after=("case.c",)),
            op("case.b", after=("case.a",)),
        ],
        STAGES,
    )
    (problem,) = problems
    assert problem.rule == "operation-cycle"
    assert problem.text.endswith(": case.a -> case.b -> case.c -> case.a")


def test_an_operation_before_itself_is_a_cycle() -> None:
    _, problems = order([op("case.a", after=("case.a",))], STAGES)
    assert [problem.rule for problem in problems] == ["operation-cycle"]


def test_two_of_one_id() -> None:
    ordered, problems = order([op("case.a"), op("case.a")], STAGES)
    assert len(ordered) == 1
    assert [problem.rule for problem in problems] == ["operation-twice"]


@st.composite
def graphs(draw: Callable[..., int]) -> list[Operation]:
    size = draw(st.integers(1, 12))
    operations = []
    for place in range(size):
        needs = draw(st.sets(st.integers(0, size - 1), max_size=3))
        operations.append(
            op(
                f"{STAGES[place % 2]}.{place}",
                draw(st.integers(1, 300)),
                draw(st.sampled_from([0, 30, 600, 1440])),
                after=tuple(f"{STAGES[n % 2]}.{n}" for n in sorted(needs) if n < place),
            )
        )
    return operations


@settings(max_examples=150)
@given(graphs(), st.randoms())
def test_any_graph_comes_out_whole_in_order_and_always_the_same(
    operations: list[Operation], random: object
) -> None:
    ordered, problems = order(operations, STAGES)
    assert not problems
    places = {operation.id: place for place, operation in enumerate(ordered)}
    assert set(places) == {operation.id for operation in operations}
    for operation in operations:
        assert all(places[need] < places[operation.id] for need in operation.after)
    assert order(operations, STAGES)[0] == ordered
