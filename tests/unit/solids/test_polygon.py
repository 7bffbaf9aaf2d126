"""Polygons: area, faults that name their sides, bevels."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from foredge.contract import faults_of_polygon, inset, signed_area

SQUARE = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
NOTCHED = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (10.0, 8.0), (0.0, 20.0)]


def test_area_has_a_sign() -> None:
    assert signed_area(SQUARE) == 100
    assert signed_area(SQUARE[::-1]) == -100


@pytest.mark.parametrize(
    ("corners", "fault"),
    [
        (SQUARE[:2], "it has 2 corners; an outline needs three or more"),
        ([*SQUARE, (0.0, 0.0)], "corners 5 and 1 are the same point"),
        (
            [(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)],
            "the side from corner 1 to 2 crosses the side from corner 3 to 4",
        ),
        (
            [(0.0, 0.0), (10.0, 0.0), (5.0, 0.0), (5.0, 5.0)],
            "the side from corner 1 to 2 folds back on the side from corner 2 to 3",
        ),
        (
            [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 0.0), (0.0, 10.0)],
            "the side from corner 1 to 2 crosses the side from corner 3 to 4",
        ),
    ],
)
def test_faults(corners: list[tuple[float, float]], fault: str) -> None:
    assert fault in faults_of_polygon(corners)


def test_sound_outlines() -> None:
    assert faults_of_polygon(SQUARE) == faults_of_polygon(NOTCHED) == []
    assert faults_of_polygon(NOTCHED[::-1]) == []


@given(st.integers(3, 40), st.floats(0, 6), st.floats(5, 60))
def test_regular_polygons_are_sound_and_draw_in_evenly(
    corners: int, turn: float, radius: float
) -> None:
    angles = [turn + 2 * math.pi * place / corners for place in range(corners)]
    outline = [(radius * math.cos(a), radius * math.sin(a)) for a in angles]
    assert faults_of_polygon(outline) == []
    inner = radius * math.cos(math.pi / corners)
    drawn = inset(outline, inner / 2)
    assert drawn is not None
    assert signed_area(drawn) == pytest.approx(signed_area(outline) / 4)
    assert inset(outline, inner * 1.01) is None


def test_a_notch_keeps_its_corners() -> None:
    for outline in (NOTCHED, NOTCHED[::-1]):
        drawn = inset(outline, 1.0)
        assert drawn is not None
        assert len(drawn) == 5
        assert abs(signed_area(drawn)) < abs(signed_area(outline))
    assert inset(NOTCHED, 6.0) is None
