"""Plain geometry of patterns."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from foredge_patterns.layout import (
    Box,
    band,
    band_length,
    evenly,
    half_span as span,
    scale_ring,
    within,
)

SIDE = st.floats(10, 300)


@given(SIDE, st.floats(1, 9), st.floats(1, 20), st.integers(1, 30))
def test_pieces_lie_in_the_middle_of_their_room(
    room: float, size: float, pitch: float, count: int
) -> None:
    starts = evenly(room, size, pitch, count)
    assert len(starts) == count
    assert starts[0] == pytest.approx(room - starts[-1] - size, abs=1e-9)


@given(SIDE, SIDE, st.floats(10, 80), st.floats(0.5, 8))
def test_a_strip_through_the_middle_is_as_long_as_the_line_and_its_slanted_ends(
    width: float, height: float, degrees: float, strip: float
) -> None:
    """Worked out by hand: the line's own length, and the strip's width by the slope of an end."""
    angle = math.radians(degrees)
    line = min(width / math.cos(angle), height / math.sin(angle))
    steep = width * math.tan(angle) > height
    slant = strip / math.tan(angle) if steep else strip * math.tan(angle)
    corner = abs(width * math.sin(angle) - height * math.cos(angle)) / 2
    if corner > strip / 2:  # neither end of the strip reaches round a corner
        assert band_length(width, height, degrees, strip, 0.0) == pytest.approx(line + slant)


@given(SIDE, SIDE, st.floats(10, 80), st.floats(-150, 150))
def test_both_sets_and_both_sides_are_alike(
    width: float, height: float, degrees: float, offset: float
) -> None:
    one = band_length(width, height, degrees, 5.0, offset)
    assert band_length(width, height, degrees, 5.0, -offset) == pytest.approx(one, abs=1e-6)
    assert band_length(width, height, -degrees, 5.0, offset) == pytest.approx(one, abs=1e-6)


@given(SIDE, SIDE, st.floats(10, 80))
def test_beyond_the_span_no_line_crosses(width: float, height: float, degrees: float) -> None:
    edge = span(width, height, degrees)
    assert band_length(width, height, degrees, 1e-6, edge - 1e-3) > 0
    assert band(width, height, degrees, 1e-6, edge + 1e-3) == ()


@pytest.mark.parametrize("tip", ["square", "round", "pointed"])
def test_a_scale_stays_in_its_box_and_reaches_its_foot(tip: str) -> None:
    ring = scale_ring(Box(10.0, 20.0, 18.0, 25.0), tip)
    assert (min(x for x, _ in ring), max(x for x, _ in ring)) == pytest.approx((10, 28))
    assert (min(y for _, y in ring), max(y for _, y in ring)) == pytest.approx((20, 45))


def test_what_lies_over_the_sides_is_cut_off() -> None:
    ring = within(Box(-5.0, 0.0, 20.0, 10.0).ring, 12.0)
    assert {x for x, _ in ring} == {0.0, 12.0}
