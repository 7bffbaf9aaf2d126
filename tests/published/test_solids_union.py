"""Several solids together: overlaps against closed forms and inclusion-exclusion."""

from __future__ import annotations

import math
from itertools import combinations

import pytest
from hypothesis import given, settings, strategies as st

from foredge.contract import Cap, Frustum, Placed
from foredge.solids.bodies import place
from foredge.solids.figures import clay_figures, core_figures, footprint_area
from foredge.solids.plain import Plain
from foredge.solids.whole import Clay
from unit.solids.shapes import relief

CLOSE = 1e-4


def ball(radius: float) -> float:
    return 4 / 3 * math.pi * radius**3


def lens(one: float, two: float, apart: float) -> float:
    """The common part of two balls whose middles are ``apart``.

    E. W. Weisstein, "Sphere-Sphere Intersection", MathWorld (from memory), eq. for unequal
    radii: pi (R + r - d)^2 (d^2 + 2 d r - 3 r^2 + 2 d R + 6 r R - 3 R^2) / (12 d).
    """
    if apart >= one + two:
        return 0.0
    if apart <= abs(one - two):
        return ball(min(one, two))
    inner = apart**2 + 2 * apart * two - 3 * two**2
    inner += 2 * apart * one + 6 * one * two - 3 * one**2
    return math.pi * (one + two - apart) ** 2 * inner / (12 * apart)


@settings(max_examples=12, deadline=None, derandomize=True)
@given(st.floats(3, 15), st.floats(3, 15), st.floats(1, 25))
def test_two_half_balls(one: float, two: float, apart: float) -> None:
    found = core_figures(relief(Cap(one, one), Cap(two, two), apart=apart))
    want = (ball(one) + ball(two) - lens(one, two, apart)) / 2
    assert found.volume == pytest.approx(want, rel=CLOSE)


def test_inclusion_and_exclusion_in_a_chain() -> None:
    # Neighbours overlap, the next but one do not: sum of singles less sum of pairs
    # (inclusion-exclusion, Bronshtein & Semendyayev, page from memory).
    found = core_figures(relief(*[Cap(5.0, 5.0)] * 12, apart=6.0))
    want = (12 * ball(5.0) - 11 * lens(5.0, 5.0, 6.0)) / 2
    assert lens(5.0, 5.0, 12.0) == 0
    assert found.volume == pytest.approx(want, rel=CLOSE)


def test_three_that_overlap_all() -> None:
    # Inclusion-exclusion for three: singles - pairs (closed form) + the triple, which is
    # measured as the body common to all three.
    places = [(0.0, 0.0), (7.0, 0.0), (2.0, 6.0)]
    pieces = tuple(Placed(Cap(6.0, 6.0), x, y, 0.0, 0.0) for x, y in places)
    pairs = sum(lens(6.0, 6.0, math.dist(a, b)) for a, b in combinations(places, 2)) / 2
    common = []
    for n in (64, 128):
        first, second, third = (place(piece, 0.0, n) for piece in pieces)
        common.append((first ^ second ^ third).volume())
    triple = (4 * common[1] - common[0]) / 3
    assert triple > 1
    want = 3 * ball(6.0) / 2 - pairs + triple
    assert core_figures((Plain(pieces, "core"),)).volume == pytest.approx(want, rel=CLOSE)


def test_the_same_one_thrice_counts_once() -> None:
    found = core_figures(relief(Cap(8.0, 8.0), Cap(8.0, 8.0), Cap(8.0, 8.0)))
    assert found.volume == pytest.approx(ball(8.0) / 2, rel=CLOSE)


def test_skins_that_merge() -> None:
    grown = clay_figures(relief(Cap(5.0, 5.0), Cap(5.0, 5.0), apart=12.0), Clay(2.0))
    want = (2 * ball(7.0) - lens(7.0, 7.0, 12.0) - 2 * ball(5.0)) / 2
    assert grown.volume == pytest.approx(want, rel=CLOSE)


def test_footprint_of_two_circles() -> None:
    # Area common to two equal circles: 2 r^2 acos(d / 2r) - d sqrt(4 r^2 - d^2) / 2;
    # Weisstein, "Circle-Circle Intersection", MathWorld (from memory).
    area = footprint_area(relief(Cap(5.0, 5.0), Cap(5.0, 5.0), apart=12.0), Clay(2.0))
    common = 2 * 49 * math.acos(12 / 14) - 12 / 2 * math.sqrt(4 * 49 - 144)
    assert area == pytest.approx(2 * math.pi * 49 - common, rel=CLOSE)


def test_inset_ringed_by_clay() -> None:
    # A tube of clay between two cylinders, half as high as the inset (a decision of ours);
    # its socket is 1 / (1 - s) as large for a linear shrinkage s.
    found = clay_figures(relief(Frustum(5.0, 5.0, 4.0), made="rigid"), Clay(2.0, 0.05, 0.5))
    socket = 5.0 / 0.95
    assert found.volume == pytest.approx(math.pi * (49 - socket**2) * 2, rel=CLOSE)
    assert found.area == pytest.approx(math.pi * (49 - socket**2) + 2 * math.pi * 7 * 2, rel=CLOSE)
    assert found.top == pytest.approx(4.0)


def test_clay_about_an_inset_on_a_core() -> None:
    # Half an inset ball sunk in a larger half ball: nothing of it in core or clay.
    inset = Plain((Placed(Cap(4.0, 4.0), 0.0, 0.0, 0.0, 0.0),), "rigid")
    shapes = (*relief(Cap(10.0, 10.0)), inset)
    assert core_figures(shapes).volume == pytest.approx((ball(10) - ball(4)) / 2, rel=CLOSE)
    clay = clay_figures(shapes, Clay(2.0))
    assert clay.volume == pytest.approx((ball(12) - ball(10)) / 2, rel=CLOSE)
    assert clay.area == pytest.approx(2 * math.pi * 144, rel=CLOSE)
