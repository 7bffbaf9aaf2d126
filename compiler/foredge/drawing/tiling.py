"""How drawings share printed pages, and how a large one is cut into tiles. Geometry only.

A tile runs past its right and lower neighbours' first line by ``OVERLAP``. The neighbour is cut
along its own left (upper) edge and glued on that margin, so the drawing meets itself along one
line. A cross lies in the middle of each margin at the same place of the drawing on both tiles.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from foredge.drawing.model import Point
from foredge.drawing.sheets import Window

OVERLAP = 10.0
"""mm that two tiles have in common."""

_SLACK = 1e-6


@dataclass(frozen=True, slots=True)
class Room:
    """The part of a page that drawings may use, mm."""

    width: float
    height: float

    @property
    def turned(self) -> Room:
        """The same sheet of paper with its long side level, furniture apart."""
        return Room(self.height, self.width)

    def holds(self, width: float, height: float) -> bool:
        """Whether something lies within it unturned."""
        return width <= self.width + _SLACK and height <= self.height + _SLACK


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile: its place in the grid from 0, what it shows, and where it meets others.

    ``right`` and ``foot`` are the lines (in the drawing's mm) up to which the next tiles are
    laid over it; None at the outer edges. Its own first lines are its window's left and top.
    """

    row: int
    column: int
    window: Window
    right: float | None
    foot: float | None

    @property
    def name(self) -> str:
        """``B2``: the row's letter, the column's number."""
        return f"{_letters(self.row)}{self.column + 1}"


@dataclass(frozen=True, slots=True)
class Grid:
    """The tiles of one drawing, row by row."""

    rows: int
    columns: int
    tiles: tuple[Tile, ...]


def grid(part: Window, room: Room) -> Grid:
    """The fewest tiles of ``room`` that cover ``part`` of a drawing."""
    across, down = _spans(part.x, part.width, room.width), _spans(part.y, part.height, room.height)
    tiles = []
    for (row, (top, high)), (column, (left, wide)) in product(enumerate(down), enumerate(across)):
        right = across[column + 1][0] if column + 1 < len(across) else None
        foot = down[row + 1][0] if row + 1 < len(down) else None
        tiles.append(Tile(row, column, Window(left, top, wide, high), right, foot))
    return Grid(len(down), len(across), tuple(tiles))


def crosses(tile: Tile, whole: Grid) -> tuple[Point, ...]:
    """Where registration marks lie on ``tile``, in the drawing's mm.

    Every pair of neighbours has the same ones: two in each common margin.
    """
    found: list[Point] = []
    for other in whole.tiles:
        apart = abs(other.row - tile.row) + abs(other.column - tile.column)
        if apart == 1:
            first, second = sorted((tile, other), key=lambda one: (one.row, one.column))
            found += _shared(first, second)
    return tuple(sorted(found))


def _shared(first: Tile, second: Tile) -> list[Point]:
    """A quarter of the way from each end of the margin, in its middle."""
    one, two = first.window, second.window
    if first.row == second.row:
        x = two.x + OVERLAP / 2
        return [(x, one.y + one.height * share) for share in (0.25, 0.75)]
    y = two.y + OVERLAP / 2
    return [(one.x + one.width * share, y) for share in (0.25, 0.75)]


def _spans(start: float, length: float, room: float) -> list[tuple[float, float]]:
    """Start and length of each stretch of at most ``room`` that together cover ``length``."""
    if room <= OVERLAP:
        raise ValueError(f"tiles of {room} mm leave nothing beside their margin")
    step = room - OVERLAP
    count = max(1, math.ceil((length - OVERLAP - _SLACK) / step))
    return [(start + place * step, min(room, length - place * step)) for place in range(count)]


def _letters(row: int) -> str:
    """A to Z, then AA."""
    text = ""
    while row >= 0:
        text = chr(ord("A") + row % 26) + text
        row = row // 26 - 1
    return text


@dataclass(frozen=True, slots=True)
class Slot:
    """A thing's number in the list given, and its top left corner in the room."""

    which: int
    x: float
    y: float


def shelves(sizes: Sequence[tuple[float, float]], room: Room, gap: float) -> list[list[Slot]]:
    """Things of (width, height) on as few pages as shelves allow; the highest first.

    Each must fit on a page alone (ValueError). A shelf is as high as its first thing; a thing
    goes on the first shelf of the first page where there is room for it.
    """
    order = sorted(range(len(sizes)), key=lambda which: (-sizes[which][1], which))
    pages: list[_Filled] = []
    for which in order:
        width, height = sizes[which]
        if not room.holds(width, height):
            raise ValueError(f"{width} by {height} mm does not fit on a page")
        if not any(page.put(which, width, height) for page in pages):
            pages.append(_Filled(room, gap))
            pages[-1].put(which, width, height)
    return [page.slots for page in pages]


class _Filled:
    """A page being filled."""

    def __init__(self, room: Room, gap: float) -> None:
        self._room, self._gap = room, gap
        self._shelves: list[list[float]] = []  # top, height, used width
        self.slots: list[Slot] = []

    def put(self, which: int, width: float, height: float) -> bool:
        for shelf in self._shelves:
            top, high, used = shelf
            if height <= high + _SLACK and used + self._gap + width <= self._room.width + _SLACK:
                self.slots.append(Slot(which, used + self._gap, top))
                shelf[2] = used + self._gap + width
                return True
        top = sum(high + self._gap for _, high, _ in self._shelves)
        if top + height > self._room.height + _SLACK:
            return False
        self._shelves.append([top, height, width])
        self.slots.append(Slot(which, 0.0, top))
        return True
