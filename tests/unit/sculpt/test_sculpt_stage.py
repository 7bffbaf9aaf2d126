"""The sculpt stage: what it makes known, for each way a relief can be made."""

import math

import pytest

from foredge.contract import Severity
from foredge.quantity import band
from foredge.testing import book_from, check_stage
from sculpt_books import (
    BALL,
    DOME,
    ids,
    made,
    operation,
    registry,
    relief,
    spec,
    upstream,
    value,
    words,
    work,
)

MADE_ON = ("bare-board", "covered-case", "finished-book")
STAGE = next(one for one in registry().stages() if one.name == "sculpt")


@pytest.mark.parametrize("made_on", MADE_ON)
def test_the_stage_keeps_its_contract(made_on: str) -> None:
    book = book_from(spec(relief(made_on=made_on, parts=[DOME, BALL])), registry=registry())
    result = check_stage(STAGE, book, upstream(book))
    assert {drawing.name for drawing in result.drawings} >= {
        "sculpt-front-plan",
        "sculpt-front-sections",
    }


def test_a_book_without_relief_has_flat_panels_and_nothing_to_do() -> None:
    result = made()
    for on in ("front", "back", "spine"):
        assert value(result, f"height.{on}") == 0
    board = value(result, "surface.front")
    assert board == pytest.approx(value(result, "surface.back"))
    assert not result.operations and not result.gates and not result.facts


def test_surface_is_the_relief_and_the_ground_round_it() -> None:
    result, flat = made(relief()), made()
    surface, base = value(result, "front.surface"), value(result, "front.base")
    whole = value(flat, "surface.front")
    assert value(result, "surface.front") == pytest.approx(whole - base + surface)
    assert value(result, "surface.back") == pytest.approx(whole)


def test_the_wet_clay_is_the_dry_clay_with_its_shrinkage_in_three_directions() -> None:
    result = made(relief(skin={"use": "paper-clay", "shrinkage": "10 %"}))
    dry = value(result, "front.clay.volume")
    assert value(result, "put_on.front") == pytest.approx(dry / 0.9**3)
    assert value(result, "layer.front.fresh") == pytest.approx(3.0 / 0.9**3)


def test_masses_are_those_of_their_parts() -> None:
    skin = {
        "use": "paper-clay", "shrinkage": "10 %", "solids": "50 %",
        "wet_density": "1.2 g/cm3", "dry_density": "0.8 g/cm3",
    }  # fmt: skip
    result = made(relief(skin=skin, parts=[{**DOME, "core": "none"}]))
    dry = value(result, "front.clay.volume")
    assert value(result, "mass.front.dry") == pytest.approx(dry * 0.8e-3)
    assert value(result, "mass.front.wet") == pytest.approx(dry / 0.729 * 1.2e-3)
    assert value(result, "water.front") == pytest.approx(dry / 0.729 * 0.6e-3)
    assert value(result, "mass.dry") == pytest.approx(value(result, "mass.front.dry"))


def test_a_core_adds_foil_tape_and_glue() -> None:
    result = made(relief(core={"packed": "0.2 g/cm3"}))
    foil = value(result, "front.core.volume") * 0.2e-3
    assert value(result, "foil.front") == pytest.approx(foil)
    tape = value(result, "front.core.area") * 1.5 * 115e-6
    clay = value(result, "front.clay.volume") * 0.68e-3
    glue = value(result, "glue_points.front") * 0.4
    assert value(result, "mass.front.dry") == pytest.approx(foil + tape + clay + glue)


def test_insets_weigh_by_their_density() -> None:
    heavy = made(relief(parts=[BALL], inset_density="8 g/cm3"))
    light = made(relief(parts=[BALL], inset_density="1 g/cm3"))
    ball = 2 / 3 * math.pi * 8**3
    assert value(heavy, "mass.front.dry") - value(light, "mass.front.dry") == pytest.approx(
        ball * 7e-3, rel=1e-3
    )


def test_a_symmetric_relief_in_the_middle_pulls_at_the_middle_of_the_board() -> None:
    result, up = made(relief()), upstream(book_from(spec(relief()), registry=registry()))
    lever = up.quantity("case.board.width").value / 2 + up.quantity("case.joint").value
    assert value(result, "moment.front") == pytest.approx(
        value(result, "cover.front") * lever, rel=1e-4
    )


def test_the_tilt_is_the_steepest_slope_to_the_joint() -> None:
    part = {"use": "cone", "diameter": "20 mm", "top": "16 mm", "height": "12 mm", "x": "100 mm",
            "core": "none"}  # fmt: skip
    result = made(relief(parts=[part]))
    joint = upstream(book_from(spec(), registry=registry())).quantity("case.joint").value
    assert value(result, "tilt.front") == pytest.approx(
        math.degrees(math.atan(12 / (100 - 8 + joint))), rel=0.03
    )


def test_what_is_left_free_adds_up_to_the_board() -> None:
    result, up = made(relief()), upstream(book_from(spec(relief()), registry=registry()))
    wide = up.quantity("case.board.width").value
    free = value(result, "free.front.joint") + value(result, "free.front.fore_edge")
    assert free + 66 == pytest.approx(wide, abs=0.05)


@pytest.mark.parametrize("made_on", MADE_ON)
def test_g3_is_measured_when_the_clay_is_dry_and_nothing_before_needs_it(made_on: str) -> None:
    result = made(relief(made_on=made_on))
    (gate,) = result.gates
    assert (gate.id, gate.after) == ("G3", "sculpt.check-dry-front")
    assert dict(result.facts)["sculpt.dry"] == gate.after
    assert [reading.key for reading in gate.readings] == ["relief.front"]
    steps = work(relief(made_on=made_on))
    names = [one.id for one in steps]
    before = steps[: names.index(gate.after) + 1]
    needing = [
        q.name for one in before for s in one.steps for q in s.quantities() if "G3" in q.gates
    ]
    assert needing == []


def test_a_reading_makes_the_height_firm() -> None:
    result = made(relief(), measured={"relief": {"front": "14 mm"}})
    height = result.quantity("sculpt.height.front")
    assert (height.value, height.firm) == (14.0, True)
    assert value(result, "press_board.front.depth") == 17.0


def test_the_estimate_has_a_band_from_skin_and_hand() -> None:
    found = band(made(relief()).quantity("sculpt.height.front"))
    assert found.low < 12 < 13 < found.high


@pytest.mark.parametrize(
    ("said", "layers"),
    [({}, 1), ({"thickness": "8 mm"}, 3), ({"thickness": "8 mm", "layer": "4 mm"}, 2),
     ({"layers": 2}, 2)],
)  # fmt: skip
def test_the_skin_is_laid_in_as_many_layers_as_it_takes(
    said: dict[str, object], layers: int
) -> None:
    result = made(relief(skin={"use": "paper-clay", **said}))
    laid = [one for one in result.operations if one.id.startswith("sculpt.skin-front-")]
    assert len(laid) == layers
    assert [one.after[0] for one in laid[1:]] == [one.id for one in laid[:-1]]


def test_thicker_layers_and_a_damp_cool_room_dry_longer() -> None:
    def dries(thick: str, **top: object) -> float:
        skin = {"use": "paper-clay", "thickness": thick, "layers": 1}
        return value(made(relief(skin=skin), **top), "layer.front.dries")

    usual = dries("3 mm")
    assert usual == pytest.approx(36 * 3600)
    assert dries("6 mm") == pytest.approx(usual * 2**1.5)
    bad = {"room": {"temperature": "14 degC", "humidity": "70 %"}}
    assert dries("3 mm", bench=bad) == pytest.approx(usual * 1.75 * 1.5)
    good = {"room": {"temperature": "20 degC", "humidity": "50 %", "fan": True}}
    assert dries("3 mm", bench=good) == pytest.approx(usual * 0.6)


def test_solid_clay_dries_by_its_own_depth() -> None:
    cone = {"use": "cone", "diameter": "12 mm", "height": "6 mm", "core": "none"}
    assert value(made(relief(parts=[cone])), "layer.front.dries") == pytest.approx(
        36 * 3600 * 2**1.5
    )


def test_one_skin_is_mixed_once_and_two_skins_twice() -> None:
    both = made(relief(), relief("back"))
    assert [one.id for one in both.operations if "mix-clay" in one.id] == ["sculpt.mix-clay"]
    one = made(relief())
    assert value(both, "clay.needed") == pytest.approx(2 * value(one, "clay.needed"))
    two = made(relief(), relief("back", skin={"use": "pulp-paste"}))
    assert [op.id for op in two.operations if "mix-clay" in op.id] == [
        "sculpt.mix-clay",
        "sculpt.mix-clay-2",
    ]


def test_several_reliefs_are_measured_together() -> None:
    result = made(relief(), relief("back", "finished-book"))
    (gate,) = result.gates
    assert gate.after == "sculpt.measure-reliefs"
    assert [reading.key for reading in gate.readings] == ["relief.front", "relief.back"]


def test_two_reliefs_on_one_panel_are_refused_and_the_panels_stay_known() -> None:
    result = made(relief(), relief(id="again"))
    assert [p.rule for p in result.problems if p.severity is Severity.ERROR] == ["relief-twice"]
    assert value(result, "height.front") == 0


def test_a_relief_on_the_spine_asks_nothing_of_a_board() -> None:
    cord = {"use": "rope", "points": [["6 mm", "30 mm"], ["6 mm", "150 mm"]], "diameter": "3 mm"}
    result = made(relief("spine", parts=[cord], skin={"use": "tissue-skin"}))
    names = [quantity.name for quantity in result.quantities]
    assert "sculpt.moment.spine" not in names
    assert not [one for one in result.operations if one.wettings]


def test_tissue_is_not_modelled() -> None:
    result = made(relief(skin={"use": "tissue-skin"}))
    assert "sculpt.fill-cracks-front" not in [one.id for one in result.operations]
    assert "thick over" not in words(operation(result, "skin-front-1"))


def test_the_order_of_a_bare_board() -> None:
    found = ids(relief(made_on="bare-board"))
    wanted = ["case.cut-boards", "sculpt.seal-front-1", "sculpt.seal-front-2",
              "sculpt.fix-core-front", "sculpt.tape-core-front", "sculpt.skin-front-1",
              "sculpt.fill-cracks-front", "sculpt.check-dry-front", "sculpt.fit-covering-front",
              "case.cover", "case.case-in", "case.press"]  # fmt: skip
    assert [one for one in found if one in wanted] == wanted
    assert found.index("sculpt.cut-press-board-front") < found.index("case.press")


def test_the_order_of_a_covered_case() -> None:
    found = ids(relief())
    wanted = ["case.cover", "sculpt.counter-line-front", "sculpt.key-front",
              "sculpt.fix-core-front", "sculpt.skin-front-1", "sculpt.fill-cracks-front",
              "sculpt.check-dry-front", "case.case-in"]  # fmt: skip
    assert [one for one in found if one in wanted] == wanted


def test_the_order_of_a_finished_book() -> None:
    found = ids(relief(made_on="finished-book"))
    wanted = ["case.press", "sculpt.wrap-block-front", "sculpt.key-front",
              "sculpt.fix-core-front", "sculpt.skin-front-1", "sculpt.fill-cracks-front",
              "sculpt.tie-shut-front", "sculpt.check-dry-front"]  # fmt: skip
    assert [one for one in found if one in wanted] == wanted
    assert "sculpt.cut-press-board-front" not in found


@pytest.mark.parametrize("made_on", MADE_ON)
def test_the_clay_is_mixed_when_it_is_wanted(made_on: str) -> None:
    found = ids(relief(made_on=made_on))
    mix, laid = found.index("sculpt.mix-clay"), found.index("sculpt.skin-front-1")
    assert found.index("sculpt.tape-core-front") < mix < laid <= mix + 1


def test_sealing_by_coats_and_faces() -> None:
    three = made(relief(made_on="bare-board", coats=3))
    seals = [one for one in three.operations if one.id.startswith("sculpt.seal-")]
    assert len(seals) == 3
    assert {wet.side for one in seals for wet in one.wettings} == {"both"}
    one = made(relief(made_on="bare-board", seal="one face"))
    assert {w.side for op in one.operations if "seal" in op.id for w in op.wettings} == {"outside"}
    none = made(relief(made_on="bare-board", seal="none"))
    assert not [op for op in none.operations if "seal" in op.id]


def test_a_relief_wets_the_outside_of_its_board() -> None:
    result = made(relief(skin={"use": "paper-clay", "thickness": "6 mm"}))
    wet = [w for one in result.operations if "skin-front" in one.id for w in one.wettings]
    assert {(w.what, w.side) for w in wet} == {("board-front", "outside")}
    assert sum(w.water.value for w in wet if w.water is not None) == pytest.approx(
        value(result, "water.front")
    )


def test_the_cut_out_clears_the_relief() -> None:
    result = made(relief())
    drawing = next(one for one in result.drawings if one.name == "sculpt-front-cut-out")
    cut = [item for item in drawing.items if getattr(item, "role", "") == "cut"]
    xs = [x for line in cut for x, _ in line.points]
    assert max(xs) - min(xs) == pytest.approx(60 + 2 * (3 + 5), abs=0.05)
    assert drawing.true_scale


def test_options_of_the_last_layer_reach_the_bench() -> None:
    more = {
        "texture": "pitted with a stiff brush",
        "inclusions": [{"what": "coarse sand", "kind": "sand"}],
        "parts": [DOME, {**BALL, "x": "30 mm", "y": "40 mm"}],
    }
    last = words(operation(made(relief(**more)), "skin-front-1"))
    for said in (
        "pitted with a stiff brush",
        "coarse sand",
        "Press eye in",
        "Smooth it with a wet",
    ):
        assert said in last
    assert "Smooth it" not in words(operation(made(relief(smoothing="none")), "skin-front-1"))
