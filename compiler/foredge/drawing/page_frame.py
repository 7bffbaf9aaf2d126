"""What stands round the drawings of every page: titles, print at 100 %, the two check bars."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foredge.drawing.model import CheckBar, Cross, Item, Label, Line, Point, Shape
from foredge.drawing.paper import FOOT, HEAD, MARGIN, Paper
from foredge.drawing.sheets import Page, Placed
from foredge.drawing.textbox import text_width
from foredge.drawing.tiling import OVERLAP, Grid, Tile, crosses

FULL_SIZE = "Print at 100 %, no fitting to page."
TOP = MARGIN + HEAD
"""y of the first line that a drawing may use, mm."""

LEAST = 2.2
"""Smallest letters, mm: some 6 points."""

_TICK = 1.8


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page before it has a number.

    ``note`` is what must be known before it is used (provisional). ``tile`` and ``grid`` are
    given where it shows a part of a large drawing; then ``placed`` is that one drawing.
    """

    title: str
    level: bool
    placed: tuple[Placed, ...] = ()
    note: str = ""
    extra: tuple[Item, ...] = ()
    marks: tuple[str, ...] = ()
    tile: Tile | None = None
    grid: Grid | None = None


def fitted(label: Label, room: float) -> Label:
    """``label`` in letters so small that it is ``room`` mm wide at most; cut with … at the end."""
    wide = text_width(label.text, 1.0)
    size = min(label.size, room / wide) if wide else label.size
    if size >= LEAST:
        return replace(label, size=size)
    text = label.text
    while text and text_width(text + "…", LEAST) > room:
        text = text[:-1]
    return replace(label, text=text.rstrip() + "…", size=LEAST)


def framed(sheet: Sheet, paper: Paper, book: str, number: int, count: int) -> Page:
    """``sheet`` as page ``number`` of ``count``."""
    width, height = paper.size(level=sheet.level)
    items = (
        *_head(sheet, width, book, f"page {number} of {count}"),
        *_foot(height),
        *(_tile_marks(sheet, sheet.tile, sheet.grid, width, height)
          if sheet.tile and sheet.grid else ()),
        *sheet.extra,
    )  # fmt: skip
    return Page(width, height, tuple(items), sheet.placed, sheet.marks)


def _head(sheet: Sheet, width: float, book: str, numbered: str) -> Iterator[Item]:
    room, right = width - 2 * MARGIN, width - MARGIN
    count = text_width(numbered, 3.2)
    yield fitted(Label((MARGIN, MARGIN + 3), book, 3.2), room - count - 5)
    yield Label((right, MARGIN + 3), numbered, 3.2, anchor="end")
    yield fitted(Label((MARGIN, MARGIN + 8), sheet.title, 4.2), room)
    line = MARGIN + 12.3
    yield Label((MARGIN, line), FULL_SIZE, 3.2)
    if sheet.note:
        left = text_width(FULL_SIZE, 3.2) + 6
        yield fitted(Label((right, line), sheet.note, 3.2, anchor="end"), room - left)


def _foot(height: float) -> Iterator[Item]:
    top = height - MARGIN - FOOT + 3
    yield CheckBar((MARGIN, top), "mm", beside=True)
    yield CheckBar((MARGIN, top + 5), "in", beside=True)


def _tile_marks(
    sheet: Sheet, tile: Tile, grid: Grid, width: float, height: float
) -> Iterator[Item]:
    placed = sheet.placed[0]

    def on_page(point: Point) -> Point:
        return placed.origin[0] + point[0], placed.origin[1] + point[1]

    yield from (Cross(on_page(point), OVERLAP * 0.6) for point in crosses(tile, grid))
    yield from _edges(placed, tile)
    yield from _small_map(tile, grid, width - MARGIN, height - MARGIN - FOOT + 2)


def _edges(placed: Placed, tile: Tile) -> Iterator[Item]:
    """Cut lines where the tile is laid over others, glue lines where others lie over it."""
    left, top = placed.at
    right, foot = left + placed.window.width, top + placed.window.height
    if tile.column:
        yield Line(((left, top), (left, foot)), "cut")
        yield from (Line(((left, y), (left, y + dy)), "cut")
                    for y, dy in ((top, -_TICK), (foot, _TICK)))  # fmt: skip
    if tile.row:
        yield Line(((left, top), (right, top)), "cut")
        yield from (Line(((x, top), (x + dx, top)), "cut")
                    for x, dx in ((left, -_TICK), (right, _TICK)))  # fmt: skip
    if tile.right is not None:
        x = placed.origin[0] + tile.right
        yield Line(((x, top), (x, foot)), "glue")
        yield Line(((right, top), (right, foot)), "guide")
    if tile.foot is not None:
        y = placed.origin[1] + tile.foot
        yield Line(((left, y), (right, y)), "glue")
        yield Line(((left, foot), (right, foot)), "guide")


def _small_map(tile: Tile, grid: Grid, right: float, top: float) -> Iterator[Item]:
    """Where this tile lies among the others."""
    side = min(9.0 / grid.rows, 30.0 / grid.columns, 4.0)
    left = right - side * grid.columns
    for other in grid.tiles:
        x, y = left + other.column * side, top + other.row * side
        ring = ((x, y), (x + side, y), (x + side, y + side), (x, y + side))
        if other == tile:
            yield Shape((ring,), "fill", 0.6)
        yield Line(ring, "dimension", closed=True)
