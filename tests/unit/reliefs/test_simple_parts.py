"""Parts of one solid: their numbers, their defaults, their place on the panel."""

from __future__ import annotations

import math

import pytest

from foredge.contract import measure_solids, outline_of
from foredge.solids.figures import core_figures
from foredge.solids.plain import plain
from foredge.testing import check_plugin, registry_of
from unit.reliefs.forms import make, rules, said, shape
from unit.solids.shapes import SKIN

NAMES = [
    *("arc", "cone", "dome", "fin", "horn", "mound"),
    *("plate", "repeat", "ring", "rope", "scatter", "tube"),
]


def volume(part: str) -> float:
    return core_figures(plain((shape(part),))).volume


@pytest.mark.parametrize("name", NAMES)
def test_contract(name: str) -> None:
    found = registry_of().find("relief-part", name)
    assert found is not None
    check_plugin(found.plugin)


@pytest.mark.parametrize(
    ("part", "want"),
    [
        ("{use: dome, diameter: 20 mm}", 2 / 3 * math.pi * 1000),
        ("{use: dome, diameter: 20 mm, height: 4 mm}", math.pi * 4 * (300 + 16) / 6),
        ("{use: mound, length: 20 mm, width: 12 mm, height: 5 mm}", 2 / 3 * math.pi * 300),
        ("{use: cone, diameter: 20 mm, height: 7 mm}", math.pi * 700 / 3),
        ("{use: cone, diameter: 20 mm, top: 8 mm, height: 7 mm}", math.pi * 7 * 156 / 3),
        ("{use: fin, length: 20 mm, width: 6 mm, height: 5 mm}", 300),
        # Half an ellipse of 10 by 6 (height) led round 40 mm; a whole one of 10 by 6.
        ("{use: ring, diameter: 50 mm, width: 10 mm, height: 6 mm}", math.pi**2 * 40 * 15),
        (
            "{use: ring, diameter: 50 mm, width: 10 mm, height: 6 mm, section: round}",
            math.pi**2 * 40 * 15,
        ),
        (
            "{use: arc, diameter: 50 mm, width: 10 mm, height: 6 mm, start: 45 deg, sweep: 90 deg}",
            math.pi**2 * 10 * 15,
        ),
        # Half a capsule: half a cylinder and half a ball.
        (
            "{use: rope, points: [[10 mm, 10 mm], [40 mm, 50 mm]], diameter: 6 mm, "
            "section: half-round}",
            (math.pi * 9 * 50 + 4 / 3 * math.pi * 27) / 2,
        ),
        # A straight horn: a cone that touches two balls; the root's is half under the board.
        ("{use: horn, diameter: 10 mm, tip: 10 mm, length: 30 mm}", math.pi * 25 * (30 + 10 / 3)),
        (
            "{use: plate, points: [[0 mm, 0 mm], [30 mm, 0 mm], [0 mm, 40 mm]], thickness: 3 mm}",
            1800,
        ),
    ],
)
def test_volume(part: str, want: float) -> None:
    assert volume(part) == pytest.approx(want, rel=2e-4)


def test_place_and_turn() -> None:
    (piece,) = shape("{use: dome, diameter: 9 mm, x: 10 mm, y: 0 mm, turn: 30 deg}").pieces
    assert (piece.x.value, piece.y.value, piece.turn.value) == (10, 0, 30)
    (piece,) = shape("{use: dome, diameter: 9 mm}").pieces
    assert (piece.x.value, piece.y.value, piece.turn.value, piece.lift.value) == (75, 110, 0, 0)


def test_points_are_the_panels_own() -> None:
    drawn = "{use: rope, points: [[10 mm, 10 mm], [140 mm, 10 mm]], diameter: 6 mm"
    rings = outline_of(shape(drawn + "}"), SKIN)
    xs, ys = zip(*(point for ring in rings for point in ring), strict=True)
    assert (min(xs), max(xs)) == pytest.approx((5, 145), abs=0.02)
    assert (min(ys), max(ys)) == pytest.approx((5, 15), abs=0.02)
    rings = outline_of(shape(drawn + ", y: 100 mm}"), SKIN)
    assert max(y for ring in rings for _, y in ring) == pytest.approx(115, abs=0.02)


@pytest.mark.parametrize(("core", "made"), [("foil", "core"), ("none", "clay"), ("rigid", "rigid")])
def test_what_it_is_made_of(core: str, made: str) -> None:
    assert shape(f"{{use: dome, diameter: 20 mm, core: {core}}}").made == made


def test_closed_rope_is_longer() -> None:
    corners = "[[10 mm, 10 mm], [60 mm, 10 mm], [60 mm, 60 mm], [10 mm, 60 mm]]"
    drawn = f"{{use: rope, points: {corners}, diameter: 6 mm, section: half-round"
    gained = volume(drawn + ", closed: true}") - volume(drawn + "}")
    # One side more. At both its ends a quarter of a half ball is shared, and an eighth of a
    # Steinmetz solid (16 r^3 / 3, Bronshtein & Semendyayev, page from memory) with its arm;
    # half a half ball that closed the open end is lost.
    cube = 3.0**3
    side, shared, ends = math.pi * 9 / 2 * 50, 2 / 3 * cube - math.pi / 6 * cube, math.pi / 3 * cube
    assert gained == pytest.approx(side - 2 * shared - 2 * ends, rel=1e-3)


def test_tube_lies_on_the_board_unless_raised() -> None:
    points = (
        "[{x: 0 mm, y: 0 mm, diameter: 8 mm}, {x: 30 mm, y: 0 mm, height: 9 mm, diameter: 4 mm}]"
    )
    (piece,) = shape(f"{{use: tube, points: {points}}}").pieces
    report = measure_solids(
        (shape(f"{{use: tube, points: {points}}}"),), SKIN, prefix="sculpt.front"
    )
    assert [point[2].value for point in piece.solid.points] == [4, 9]  # type: ignore[union-attr]
    assert report.core_height.value == pytest.approx(11, abs=0.01)
    assert report.height.value == pytest.approx(13, abs=0.01)


def test_bent_horn_ends_where_its_arc_does() -> None:
    # Straight up, then a quarter of a circle: radius L / (pi / 2), over and up by as much.
    (piece,) = shape("{use: horn, diameter: 8 mm, length: 31.4159 mm, bend: 90 deg}").pieces
    along, across, up = piece.solid.points[-1]  # type: ignore[union-attr]
    assert (along.value, across.value, up.value) == pytest.approx((20, 0, 20), rel=1e-4)


PLATE = "{use: plate, thickness: 3 mm, points: "
BAD = [
    (
        PLATE + "[[0 mm, 0 mm], [20 mm, 20 mm], [20 mm, 0 mm], [0 mm, 20 mm]]}",
        "relief-outline",
        "the side from corner 1 to 2 crosses the side from corner 3 to 4",
    ),
    (
        PLATE + "[[0 mm, 0 mm], [20 mm, 0 mm], [20 mm, 0 mm], [0 mm, 20 mm]]}",
        "relief-outline",
        "corners 2 and 3 are the same point",
    ),
    (
        PLATE + "[[0 mm, 0 mm], [20 mm, 0 mm], [40 mm, 0 mm]]}",
        "relief-outline",
        "folds back",
    ),
    (
        PLATE + "[[0 mm, 0 mm], [20 mm, 0 mm], [0 mm, 20 mm]], bevel: 4 mm}",
        "relief-bevel",
        "the bevel of 4 mm is deeper than the plate's 3 mm",
    ),
    (
        "{use: plate, thickness: 9 mm, bevel: 8 mm, "
        "points: [[0 mm, 0 mm], [20 mm, 0 mm], [0 mm, 20 mm]]}",
        "relief-bevel",
        "too narrow for a bevel of 8 mm",
    ),
    (
        "{use: horn, diameter: 20 mm, length: 15 mm, bend: 120 deg}",
        "relief-horn-in-itself",
        "a curve of 7.2 mm radius, and the root is 10 mm",
    ),
    (
        "{use: horn, diameter: 8 mm, length: 100 mm, bend: 355 deg, rise: 170 deg}",
        "relief-horn-in-itself",
        "comes round to its own root",
    ),
    (
        "{use: arc, diameter: 50 mm, width: 10 mm, height: 6 mm, sweep: 400 deg}",
        "relief-form",
        "it goes 400 degrees round",
    ),
    (
        "{use: arc, diameter: 50 mm, width: 10 mm, height: 6 mm, sweep: 0 deg}",
        "relief-form",
        "it goes 0 degrees round",
    ),
    ("{use: ring, diameter: 19 mm, width: 10 mm, height: 6 mm}", "relief-form", "in itself"),
    ("{use: ring, diameter: 9 mm, width: 10 mm, height: 6 mm}", "relief-form", "above 0"),
    ("{use: dome, diameter: 30 m}", "relief-form", "one of its sizes comes to"),
]


@pytest.mark.parametrize(("part", "rule", "words"), BAD)
def test_bad_input_is_a_problem(part: str, rule: str, words: str) -> None:
    result = make(part)
    assert result.shape is None
    assert {problem.rule for problem in result.problems} == {rule}
    assert any(words in problem.text for problem in result.problems)


@pytest.mark.parametrize("size", ["0 mm", "-3 mm", "nan mm", "20"])
def test_sizes_that_are_none(size: str) -> None:
    (line,) = said(f"{{use: dome, diameter: {size}}}")
    assert "error" in line


def test_warnings() -> None:
    twice = "{use: rope, points: [[9 mm, 9 mm], [9 mm, 9 mm], [40 mm, 9 mm]], diameter: 6 mm}"
    assert rules(twice) == [("relief-point-twice", "points.1")]
    assert make(twice).shape is not None
    under = "{use: horn, diameter: 6 mm, length: 60 mm, rise: 20 deg, bend: 60 deg}"
    assert rules(under) == [("relief-under-board", "bend")]
