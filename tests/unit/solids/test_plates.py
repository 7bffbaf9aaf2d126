"""Plates and fins grown by a skin: no seams inside, whatever the outline."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings, strategies as st

from foredge.contract import Ring, Slab, faults_of_polygon, signed_area
from foredge.solids.figures import clay_figures, core_figures
from foredge.solids.whole import Clay
from unit.solids.shapes import relief


def star(points: int, inner: float, turn: float) -> tuple[tuple[float, float], ...]:
    return tuple(
        (
            (20 if place % 2 else inner) * math.cos(turn + math.pi * place / points),
            (20 if place % 2 else inner) * math.sin(turn + math.pi * place / points),
        )
        for place in range(2 * points)
    )


def rim(outline: tuple[tuple[float, float], ...]) -> float:
    return sum(math.dist(a, b) for a, b in zip(outline, (*outline[1:], outline[0]), strict=True))


@settings(max_examples=10, deadline=None, derandomize=True)
@given(st.integers(3, 9), st.floats(9, 19), st.floats(0, 3))
def test_star_shaped_plates(points: int, inner: float, turn: float) -> None:
    outline = star(points, inner, turn)
    assert not faults_of_polygon(outline)
    area, height, t = signed_area(outline), 3.0, 0.05
    bare = core_figures(relief(Slab(outline, height, 0.0)))
    assert bare.volume == pytest.approx(area * height)
    assert bare.area == pytest.approx(area + rim(outline) * height)
    # A thin skin is as large as what it covers, but for terms in t squared.
    skin = clay_figures(relief(Slab(outline, height, 0.0)), Clay(t))
    assert skin.volume == pytest.approx(bare.area * t, rel=0.01)
    assert skin.area == pytest.approx(bare.area, rel=0.02)
    bevelled = core_figures(relief(Slab(outline, height, 0.5)))
    skin = clay_figures(relief(Slab(outline, height, 0.5)), Clay(t))
    assert skin.volume == pytest.approx(bevelled.area * t, rel=0.02)
    assert bevelled.volume < bare.volume


def test_which_way_round_an_outline_runs_does_not_matter() -> None:
    outline = star(5, 12, 0.3)
    one, other = (
        clay_figures(relief(Slab(way, 3.0, 1.0)), Clay(2.0)) for way in (outline, outline[::-1])
    )
    assert one.volume == pytest.approx(other.volume, rel=1e-6)


def test_a_bevel_as_deep_as_the_plate() -> None:
    # A pyramid's frustum: the prismoidal formula, with the square's 20, 14 and 17 mm.
    square = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0))
    found = core_figures(relief(Slab(square, 3.0, 3.0)))
    assert found.volume == pytest.approx(3 / 6 * (400 + 4 * 289 + 196), rel=1e-4)


def test_the_ends_of_an_arc_get_their_skin() -> None:
    arc = relief(Ring(20.0, 6.0, 8.0, 30.0, 100.0, 4.0))
    bare, t = core_figures(arc), 0.05
    assert clay_figures(arc, Clay(t)).volume == pytest.approx(bare.area * t, rel=0.01)
