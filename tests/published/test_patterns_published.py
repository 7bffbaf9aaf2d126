"""Counts of patterns against brute force: pieces put down one by one, and paper that is hidden.

Nothing is shared with the plugins but the size of the field and the words of the spec. The
reference is our own counting; no published figure stands behind it.
"""

from __future__ import annotations

import math
import random
from itertools import pairwise

import pytest
from hypothesis import given, settings, strategies as st

from foredge.contract import Line, OrnamentResult
from ornament_books import adorn, adorned, cased, quantity

MM = st.integers(40, 600).map(lambda halves: halves / 2)
"""Half millimetres, as sizes are cut."""


def laid(item: str, width: float, height: float) -> OrnamentResult:
    """A pattern whose field is exactly ``width`` by ``height``."""
    told = f"{{use: {item}, on: front, margin: 0 mm, clear: 0 mm, stock: wrap}}"
    return adorn(adorned(told), cased(board__width=width, board__height=height))


def outlines(result: OrnamentResult) -> list[tuple[tuple[float, float], ...]]:
    """Every piece on the full-size sheet, mm from the field's corner."""
    (drawing,) = result.work.drawings
    field = next(i for i in drawing.items if isinstance(i, Line) and i.role == "guide")
    left, top = field.points[0]
    return [
        tuple((x - left, y - top) for x, y in item.points)
        for item in drawing.items
        if isinstance(item, Line) and item.role == "outline"
    ]


def in_a_row(room: float, size: float, gap: float) -> int:
    """Pieces laid one after the other, a gap between them, as long as the next one fits."""
    placed, end = 0, 0.0
    while end + size <= room + 1e-9:
        placed += 1
        end += size + gap
    return placed


@given(MM, MM, st.integers(8, 80), st.integers(8, 80), st.integers(0, 12))
@settings(max_examples=40, deadline=None)
def test_as_many_tiles_as_can_be_put_down(
    width: float, height: float, wide: int, high: int, gap: int
) -> None:
    wide_mm, high_mm, gap_mm = wide / 2, high / 2, gap / 2
    result = laid(
        f"tile-pattern, width: {wide_mm} mm, height: {high_mm} mm, gap: {gap_mm} mm", width, height
    )
    if result.done == "":
        return
    columns, rows = in_a_row(width, wide_mm, gap_mm), in_a_row(height, high_mm, gap_mm)
    assert quantity(result, "count") == columns * rows
    pieces = outlines(result)
    assert len(pieces) == columns * rows
    _apart(pieces, width, height, gap_mm)


def _apart(
    pieces: list[tuple[tuple[float, float], ...]], width: float, height: float, gap: float
) -> None:
    """Every rectangle lies in the field, and no two are nearer than the gap."""
    boxes = [(ring[0][0], ring[0][1], ring[2][0], ring[2][1]) for ring in pieces]
    for left, top, right, bottom in boxes:
        assert left >= -1e-9 and top >= -1e-9
        assert right <= width + 1e-9 and bottom <= height + 1e-9
    for place, a in enumerate(boxes[:60]):
        for b in boxes[place + 1 : 60]:
            beside = max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3])
            assert beside >= gap - 1e-9


@given(MM, MM, st.integers(4, 60), st.integers(0, 20), st.sampled_from(["height", "width"]))
@settings(max_examples=40, deadline=None)
def test_as_many_strips_as_can_be_put_down(
    width: float, height: float, wide: int, gap: int, along: str
) -> None:
    item = f"strip-pattern, width: {wide / 2} mm, gap: {gap / 2} mm, along: {along}"
    result = laid(item, width, height)
    if result.done == "":
        return
    room, run = (width, height) if along == "height" else (height, width)
    assert quantity(result, "count") == in_a_row(room, wide / 2, gap / 2)
    assert quantity(result, "length") == run
    _apart(outlines(result), width, height, gap / 2)


@given(MM, MM, st.integers(10, 60), st.integers(20, 80), st.integers(1, 15))
@settings(max_examples=40, deadline=None)
def test_rows_hide_the_field_and_one_piece_less_does_not(
    width: float, height: float, wide: int, high: int, over: int
) -> None:
    """Paper that shows is looked for on a grid of points; whole rows and pieces are counted."""
    wide_mm, high_mm, over_mm = wide / 2, high / 2, over / 2
    item = f"row-pattern, width: {wide_mm} mm, height: {high_mm} mm, overlap: {over_mm} mm"
    result = laid(f"{item}, tip: square", width, height)
    if result.done == "":
        return
    boxes = [
        (min(x for x, _ in r), min(y for _, y in r), max(x for x, _ in r), max(y for _, y in r))
        for r in outlines(result)
    ]
    feet = sorted({round(box[3], 6) for box in boxes}, reverse=True)
    # Rows: put down from the tail, each up by what may show, until the head is reached.
    rows, top = 1, height - high_mm
    while top > 1e-9:
        rows, top = rows + 1, top - (high_mm - over_mm)
    assert quantity(result, "rows") == len(feet) == rows
    assert len(boxes) == quantity(result, "count")
    for row, foot in enumerate(feet):
        here = sorted(box for box in boxes if round(box[3], 6) == foot)
        assert here[0][0] == pytest.approx(0, abs=1e-6)
        assert here[-1][2] == pytest.approx(width, abs=1e-6)
        assert all(b[0] <= a[2] + 1e-6 for a, b in pairwise(here))
        if row % 2 == 0:  # as few as cover the width
            assert len(here) == math.ceil(width / wide_mm - 1e-9)
    for a, b in pairwise(feet):
        assert a - b <= high_mm - over_mm + 1e-6


@given(
    MM, MM, st.integers(2, 12), st.integers(13, 60), st.sampled_from([20.0, 30.0, 45.0, 57.0, 75.0])
)
@settings(max_examples=40, deadline=None)
def test_every_line_of_a_net_that_crosses_the_field_has_its_strip(
    width: float, height: float, wide: int, spacing: int, degrees: float
) -> None:
    """Lines are tried one by one, far beyond the field, and walked along in small steps."""
    item = f"net-pattern, width: {wide / 2} mm, spacing: {spacing / 2} mm, angle: {degrees} deg"
    result = laid(item, width, height)
    if result.done == "":
        return
    crossing = [
        chord
        for place in range(-200, 201)
        if (chord := _chord(width, height, degrees, place * spacing / 2)) > 1e-6
    ]
    assert quantity(result, "count") == 2 * len(crossing)
    lengths = sorted(
        length.value
        for piece in result.work.pieces
        for length in (piece.height,) * round(piece.count.value)
    )
    # No strip is shorter than its line, none longer than its line and two slanted ends.
    ends = wide / 2 * (math.tan(math.radians(degrees)) + 1 / math.tan(math.radians(degrees)))
    for length, chord in zip(lengths, sorted(2 * crossing), strict=True):
        assert chord - 1e-6 <= length <= chord + ends + 0.5 + 1e-6


def _chord(width: float, height: float, degrees: float, offset: float) -> float:
    """How much of a line lies in the field, by clipping its parameter against the four sides."""
    angle = math.radians(degrees)
    dx, dy = math.cos(angle), math.sin(angle)
    x, y = width / 2 - offset * dy, height / 2 + offset * dx
    low, high = -math.inf, math.inf
    for at, step, room in ((x, dx, width), (y, dy, height)):
        a, b = sorted(((0 - at) / step, (room - at) / step))
        low, high = max(low, a), min(high, b)
    return max(0.0, high - low)


@pytest.mark.parametrize("degrees", [30, 45, 60])
def test_the_area_under_a_net_is_what_random_points_find(degrees: int) -> None:
    """Forty thousand points (seeded), each asked whether a strip lies over it."""
    width, height, wide, spacing = 300.0, 300.0, 6.0, 24.0
    item = f"net-pattern, width: {wide} mm, spacing: {spacing} mm, angle: {degrees} deg"
    result = laid(item, width, height)
    angle, hits, tried, chance = math.radians(degrees), 0, 40_000, random.Random(degrees)
    for _ in range(tried):
        x, y = chance.uniform(-width / 2, width / 2), chance.uniform(-height / 2, height / 2)
        hits += any(
            abs((d + spacing / 2) % spacing - spacing / 2) <= wide / 2
            for d in (
                y * math.cos(angle) - x * math.sin(angle),
                y * math.cos(angle) + x * math.sin(angle),
            )
        )
    share = result.covers.value / (width * height)
    assert share == pytest.approx(hits / tried, abs=0.01)
