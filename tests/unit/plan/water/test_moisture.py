"""The moisture ledger: who gets wet, in which order, what is unbalanced, which face pulls more."""

from dataclasses import replace
from pathlib import Path

import pytest

from foredge.compile import compile_spec
from foredge.contract import Build
from foredge.contract.moisture import Balance
from foredge.emit.moisture import moisture_rows
from foredge.plan.water.moisture import plan_moisture
from foredge.registry import collect

CHECKOUT = Path(__file__).parents[4]
DEMOS = sorted((CHECKOUT / "specs").glob("*.yaml"))
REGISTRY, _ = collect(entry_points=False)


def compiled(name: str) -> Build:
    build = compile_spec(str(CHECKOUT / "tests" / "specs-valid" / f"{name}.yaml"), REGISTRY).build
    assert build is not None
    return build


@pytest.fixture(scope="module", params=DEMOS, ids=lambda spec: spec.stem)
def demo(request: pytest.FixtureRequest) -> Build:
    build = compile_spec(str(request.param), REGISTRY).build
    assert build is not None
    return build


def test_every_wetting_is_told_once_in_the_order_of_work(demo: Build) -> None:
    told = demo.plan.moisture.wettings
    assert len(told) == sum(len(operation.wettings) for operation in demo.order)
    place = {operation.id: at for at, operation in enumerate(demo.order)}
    places = [place[one.operation] for one in told]
    assert places == sorted(places)
    assert all(one.dry_after.value > 0 for one in told)


def test_water_is_what_the_operations_bring(demo: Build) -> None:
    """The glue of the covering: area by spread by its share of water, as the tables have it."""
    named = {one.name: one for one in demo.whole.quantities}
    area = named["case.board.width"].value * named["case.board.height"].value
    covering = [
        one
        for one in demo.plan.moisture.wettings
        if one.what == "board-back" and one.side == "outside" and one.water is not None
    ]
    water = sum(one.water.value for one in covering if one.water is not None)
    # Between the driest glue there is (PVA, 40 % of 70 g/m2) and the wettest (paste).
    assert 0.4 * 70e-6 * area < water < 0.93 * 220e-6 * area


def test_the_book_is_posted_after_it_is_closed(demo: Build) -> None:
    ready = {one.step: one for one in demo.plan.moisture.ready}
    place = {operation.id: at for at, operation in enumerate(demo.order)}
    assert {"close", "post"} <= set(ready)
    assert place[ready["close"].operation] <= place[ready["post"].operation]
    if "paint" in ready:
        assert place[ready["paint"].operation] < place[ready["close"].operation]


def test_only_boards_that_were_wetted_before_covering_wait_for_it() -> None:
    bought, laminated = compiled("plain-journal"), compiled("laminated-core")
    assert "cover" not in {one.step for one in bought.plan.moisture.ready}
    (ready,) = (one for one in laminated.plan.moisture.ready if one.step == "cover")
    assert ready.operation == "case.laminate-boards"
    assert ready.wait is not None and ready.wait.value >= 48 * 3600


@pytest.mark.parametrize(
    ("spec", "boards"),
    [
        ("one-sided-wetting", ["board-front"]),
        ("counter-lined", []),
        ("one-sided-sealing", ["board-front"]),
        ("clay-on-sealed-board", []),
        ("clay-on-unsealed-board", ["board-front"]),
        ("relief-dome", []),
        ("plain-journal", []),
    ],
)
def test_clay_on_one_side_with_nothing_against_it(spec: str, boards: list[str]) -> None:
    found = compiled(spec).plan.moisture.one_sided
    assert [one.what for one in found] == boards


def test_one_sided_water_is_all_the_water_of_the_clay() -> None:
    build = compiled("one-sided-wetting")
    (found,) = build.plan.moisture.one_sided
    assert found.water.value == pytest.approx(build.quantity("sculpt.water.front").value)


def test_glue_between_the_layers_of_a_board_balances_nothing() -> None:
    """It is wetted on both sides, but before it is cut, and dry long before the clay."""
    build = compiled("one-sided-wetting")
    order = list(build.order)
    at = next(i for i, one in enumerate(order) if one.id == "case.cover")
    first = order[at].wettings[0]
    early = replace(first, side="inside", layer="", area=None, pull=None)
    order[0] = replace(order[0], wettings=(early,))
    assert [one.what for one in plan_moisture(replace(build, order=tuple(order)))[0].one_sided]
    order[at] = replace(order[at], wettings=(*order[at].wettings, early))
    assert not plan_moisture(replace(build, order=tuple(order)))[0].one_sided


def test_damp_names_the_last_clay_its_test_and_what_shuts_it_in() -> None:
    (damp,) = compiled("sealed-when-dry").plan.moisture.damp
    assert (damp.what, damp.test) == ("front", "sculpt.check-dry-front")
    assert damp.wetted in ("sculpt.fill-cracks-front", "sculpt.skin-front-1")
    assert damp.wait.value > 12 * 3600
    assert damp.shut_by == ()  # modelled on the finished book: nothing comes after but coats
    (shut,) = compiled("cased-in-untested").plan.moisture.damp
    assert [name for name in shut.shut_by if name.startswith("case.")]


def pulls(spec: str) -> dict[str, Balance]:
    return {one.what: one for one in compiled(spec).plan.moisture.balance}


def test_cloth_outside_and_paper_inside_balance() -> None:
    (front, back) = pulls("plain-journal").values()
    assert front.pull_outside.value == back.pull_outside.value == pytest.approx(1.0)
    assert front.pull_inside.value == pytest.approx(1.0, abs=0.05)


def test_leather_pulls_as_its_row_says() -> None:
    """The table's weight of goatskin is 3, from memory; the whole board is covered."""
    assert pulls("board-pull")["board-front"].pull_outside.value == pytest.approx(3.0)


def test_a_counter_lining_pulls_inwards_and_clay_by_its_share() -> None:
    plain, lined = pulls("one-sided-wetting"), pulls("counter-lined")
    front, with_paper = plain["board-front"], lined["board-front"]
    assert with_paper.excess < front.excess
    assert [layer.title for layer in with_paper.inside] == ["counter-lining", "paste-down"]
    skin = [layer for layer in front.outside if layer.title == "relief skin"]
    build = compiled("one-sided-wetting")
    share = build.quantity("sculpt.footprint.front") / (
        build.quantity("case.board.width") * build.quantity("case.board.height")
    )
    clay = build.book.practice("pull-clay")
    assert sum(one.pull.value for one in skin) == pytest.approx((clay * share).value, rel=0.15)
    assert not [layer for layer in plain["board-back"].outside if layer.title == "relief skin"]


def test_a_board_nobody_glues_on_has_no_pull() -> None:
    build = compiled("plain-journal")
    dry = tuple(replace(operation, wettings=()) for operation in build.order)
    moisture, problems = plan_moisture(replace(build, order=dry))
    assert problems == [] and moisture.wettings == ()
    assert [one.pull_outside.value for one in moisture.balance] == [0, 0]


def test_clay_over_a_sealed_board_is_told_to_dry_one_way() -> None:
    shut, open_ = compiled("clay-dries-one-sided"), compiled("relief-dome")
    assert [one.operation for one in shut.plan.moisture.wettings if one.one_way] == [
        "sculpt.skin-front-1"
    ]
    assert not [one for one in open_.plan.moisture.wettings if one.one_way]
    rows = [row for row in moisture_rows(shut) if "dries from there only" in row.side]
    assert len(rows) == 1


def test_a_core_of_card_counts_in_the_balance() -> None:
    front = next(
        one
        for one in compiled("card-core-pulls").plan.moisture.balance
        if one.what == "board-front"
    )
    assert "core" in [layer.title for layer in front.outside]
