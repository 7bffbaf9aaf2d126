"""Straps against geometry that is worked out another way, and against published rules."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from closure_books import fastened, value

Point = tuple[float, float]


def hull(points: list[Point]) -> list[Point]:
    """The convex hull: A. M. Andrew, "Another efficient algorithm for convex hulls in two
    dimensions", Information Processing Letters 9, 1979."""

    def half(path: list[Point]) -> list[Point]:
        kept: list[Point] = []
        for x, y in path:
            while len(kept) > 1:
                (ax, ay), (bx, by) = kept[-2:]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0:
                    break
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    points = sorted(set(points))
    return half(points) + half(points[::-1])


def around(points: list[Point]) -> float:
    """How long a band drawn tight round ``points`` is."""
    ring = hull(points)
    return sum(math.dist(a, b) for a, b in zip(ring, ring[1:] + ring[:1], strict=True))


def section(thick: float, relief: float, start: float, end: float) -> list[Point]:
    """The book across: covers 158 mm wide, a flat-topped relief from ``start`` to ``end``."""
    box = [(0.0, 0.0), (158.0, 0.0), (158.0, thick), (0.0, thick)]
    return [*box, (start, thick + relief), (end, thick + relief)]


def test_round_a_plain_book_a_tight_band_is_what_we_say() -> None:
    """No use, no relief: the perimeter of the section. The growth by use is taken out again."""
    girth = value(fastened("{use: wrap-strap}"), "girth")
    assert girth - 2 * 20 * 0.12 == pytest.approx(around(section(20, 0, 10, 20)))


@given(st.floats(0, 30), st.floats(0, 158), st.floats(0, 158))
def test_no_band_over_a_relief_is_longer_than_ours(relief: float, a: float, b: float) -> None:
    """A convex figure inside a box has a shorter outline than it (Archimedes, On the Sphere and
    Cylinder I, postulate 2); wherever the relief stands, our strap reaches round it."""
    ours = 2 * 158 + 2 * (20 + relief)
    assert around(section(20, relief, min(a, b), max(a, b))) <= ours + 1e-9


@pytest.mark.parametrize("relief", [3.0, 12.0])
def test_and_ours_is_exact_over_a_relief_from_edge_to_edge(relief: float) -> None:
    girth = value(fastened("{use: wrap-strap}", relief=relief, made_on="covered-case"), "girth")
    tight = around(section(20, relief, 0, 158))
    assert girth - 2 * (20 + relief) * 0.12 == pytest.approx(tight)


def test_an_elastic_runs_round_head_and_tail() -> None:
    """Along the height: the band from slit to slit is the outline of the section less what lies
    bare on the back between the slits."""
    loop = value(fastened("{use: elastic, from_ends: 15 mm}"), "loop")
    box = [(0.0, 0.0), (214.0, 0.0), (214.0, 20.0), (0.0, 20.0)]
    assert loop == pytest.approx(around(box) - (214 - 2 * 15))


@given(st.floats(5, 60), st.floats(10, 40))
def test_a_ribbon_bow_meets_in_the_middle_of_the_fore_edge(thick: float, edge: float) -> None:
    """Both ribbons without their bows just span slit, fore-edge, slit."""
    result = fastened(
        f"{{use: ribbon-tie, bow: 200 mm, from_fore_edge: {edge:.3f} mm}}", case_thickness=thick
    )
    both = 2 * (value(result, "length") - 200)
    assert both == pytest.approx(2 * edge + thick * 1.12, abs=0.01)


def test_bed_half_through_the_board() -> None:
    """Ibizzweb, "Leather book inspiration (with magnetic snaps)": the bed of a strap is cut about
    half through the board. Ours is as deep as the strap; an ordinary ribbon needs less than half
    of an ordinary board."""
    result = fastened("{use: ribbon-tie, ribbon: ribbon}")
    deep = next(
        step.values["deep"]
        for one in result.work.operations
        for step in one.steps
        if "deep" in step.values
    )
    assert deep.value <= 2.5 / 2
