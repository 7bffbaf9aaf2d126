"""Nothing but blanks is cut before its gate, and the order of work is possible."""

from __future__ import annotations

import pytest

from case_books import book, finished_block
from foredge.contract import Operation, StageResult, number, say
from foredge.plan.order import order
from foredge_stages.case import PLUGIN

READY = Operation(
    "text-block.line-spine", "Line the spine", (say("Line it."),), number(60), after=()
)
CASES = {
    "laminated, backed, board spine": """\
case:
  boards: {use: laminated, layers: [{stock: cereal}, {stock: flute}, {stock: cereal}]}
  covering: {use: full-cloth, material: shirt}
  spine: {use: board}
  casing_in: {use: hinge-first}
""",
    "bought, quarter cloth": """\
case:
  boards: {use: bought, stock: grey}
  covering: {use: quarter-cloth, material: shirt, sides: wrap}
""",
    "layers by thickness, no spine": """\
case:
  boards: {use: laminated, card: cereal, thickness: 3 mm}
  covering: {use: full-cloth, material: coat}
  spine: {use: none}
""",
}


def ordered(case: str) -> tuple[StageResult, list[Operation]]:
    of = book(case)
    result = PLUGIN.run(of, finished_block(of))
    work, problems = order((*result.operations, READY), ("text-block", "case"), result.gates)
    assert not problems
    return result, list(work)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_nothing_before_the_gates_rests_on_them(case: str) -> None:
    result, work = ordered(case)
    pieces = {piece.name: piece for piece in result.pieces}
    stop = next(at for at, operation in enumerate(work) if "G1" in operation.stops_for)
    for operation in work[:stop]:
        used = [q for step in operation.steps for q in step.quantities()]
        used += [use.amount for use in operation.uses]
        used += [wetting.water for wetting in operation.wettings if wetting.water is not None]
        used += [operation.hands_on]
        for name in operation.pieces:
            piece = pieces[name]
            assert piece.blank, name
            used += [piece.width, piece.height, piece.count]
        for quantity in used:
            assert quantity.firm, (operation.id, quantity)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_every_piece_is_cut_once_and_every_blank_is_trimmed_to_a_piece(case: str) -> None:
    result, work = ordered(case)
    names = [piece.name for piece in result.pieces]
    assert len(names) == len(set(names))
    cut = [name for operation in work for name in operation.pieces]
    assert sorted(cut) == sorted(names)
    blanks = [piece for piece in result.pieces if piece.blank]
    pieces = {piece.name: piece for piece in result.pieces}
    for blank in blanks:
        target = pieces[blank.trimmed_to]
        assert target.stock is None, "what is trimmed from a blank is not cut from the shelf again"
        assert blank.width.value >= target.width.value + 5
        assert blank.height.value >= target.height.value + 5


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_whoever_uses_a_gated_size_comes_after_its_stop(case: str) -> None:
    _, work = ordered(case)
    passed: set[str] = set()
    for operation in work:
        passed.update(operation.stops_for)
        for step in operation.steps:
            for quantity in step.quantities():
                assert quantity.gates <= passed, (operation.id, quantity)


def test_gate_one_reads_board_and_cloth() -> None:
    result, work = ordered(CASES["laminated, backed, board spine"])
    (gate,) = result.gates
    assert [reading.key for reading in gate.readings] == ["board", "joint_cloth"]
    for reading in gate.readings:
        assert reading.quantity.gates == {"G1"}
    ids = [operation.id for operation in work]
    assert ids.index("case.cure-boards") < ids.index(gate.after)
    assert ids.index("case.back-cloth") < ids.index(gate.after)
    assert ids.index(gate.after) < ids.index("case.cut-boards")


def test_board_is_cured_before_it_is_covered() -> None:
    _, work = ordered(CASES["layers by thickness, no spine"])
    ids = [operation.id for operation in work]
    chain = ["case.cut-layers", "case.laminate-boards", "case.cure-boards", "case.cut-boards"]
    chain += ["case.cover", "case.line-spine", "case.case-in", "case.press"]
    assert [name for name in ids if name in chain] == chain


def test_edges_are_wrapped_between_cutting_and_covering() -> None:
    _, work = ordered(CASES["laminated, backed, board spine"])
    ids = [operation.id for operation in work]
    assert ids.index("case.cut-boards") < ids.index("case.wrap-edges") < ids.index("case.cover")


def test_facts_name_operations() -> None:
    for case in CASES.values():
        result, work = ordered(case)
        ids = {operation.id for operation in work}
        facts = dict(result.facts)
        for name in ("case.covered", "case.cased_in", "case.boards_cut"):
            assert facts[name] in ids


def test_readings_do_not_change_a_blank() -> None:
    case = CASES["layers by thickness, no spine"]
    before, _ = ordered(case)
    of = book(case, "measured: {board: 2.9 mm, block: {width: 149 mm}}\n")
    after = PLUGIN.run(of, finished_block(of))
    for name in ("case.layer.width", "case.layer.height"):
        assert before.quantity(name).value == after.quantity(name).value
