"""The closure as the picture of the finished book shows it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from foredge.contract import (
    ClosureJob,
    Look,
    Point,
    Quantity,
    Rings,
    Side,
    Stuff,
    rectangle,
    stuff_of,
)

FAR = 1000.0
"""mm: beyond any edge of a book; what lies over an edge is not painted."""

BOARDS: tuple[Side, ...] = ("front", "back")


def round_book(job: ClosureJob, stock: str | None, width: Quantity, turns: int) -> tuple[Look, ...]:
    """A strap round the middle of the book, turn beside turn."""
    wide, stuff = width.value, stuff_of(job.book, stock, "sewing-tape", "cloth")
    top = job.board_height.value / 2 - wide * turns / 2
    rows = tuple(rectangle(-FAR, top + place * wide, 2 * FAR, wide) for place in range(turns))
    faces: tuple[Side, ...] = ("front", "back", "spine", "fore-edge")
    return tuple(Look(on, "closure", stuff, rows) for on in faces)


def over_fore_edge(
    job: ClosureJob, stuff: Stuff, reach: Quantity, wide: float, heads: Sequence[float]
) -> tuple[Look, ...]:
    """Strips ``wide`` mm over the fore-edge, ``reach`` far on the front, from the back's slits."""
    inner = job.board_width.value - reach.value
    on_board = tuple(rectangle(inner, head - wide / 2, FAR, wide) for head in heads)
    across = tuple(rectangle(-FAR, head - wide / 2, 2 * FAR, wide) for head in heads)
    return (
        *(Look(on, "closure", stuff, on_board) for on in BOARDS),
        Look("fore-edge", "closure", stuff, across),
    )


def along_fore_edge(
    job: ClosureJob, stock: str | None, width: Quantity, edge: Quantity
) -> tuple[Look, ...]:
    """A band from head to tail on the front, beside the fore-edge."""
    left = job.board_width.value - edge.value - width.value / 2
    band = rectangle(left, -FAR, width.value, 2 * FAR)
    return (Look("front", "closure", stuff_of(job.book, stock, "sewing-tape"), (band,)),)


def bows(job: ClosureJob, stuff: Stuff, wide: float, heads: Sequence[float]) -> Look:
    """A bow at each of ``heads``, on the fore-edge."""
    middle = job.thickness.value / 2
    pieces = tuple(ring for head in heads for ring in _bow(middle, head, wide))
    return Look("fore-edge", "closure", stuff, pieces)


def _bow(x: float, y: float, wide: float) -> list[Rings]:
    """Two loops, two ends and the knot."""
    loops: list[Rings] = []
    for side in (-1, 1):
        loop: tuple[Point, ...] = (
            (x, y),
            (x + side * 1.2 * wide, y - 1.1 * wide),
            (x + side * 2.2 * wide, y - 0.9 * wide),
            (x + side * 2.4 * wide, y - 0.2 * wide),
            (x + side * 1.6 * wide, y + 0.3 * wide),
        )
        end: tuple[Point, ...] = (
            (x, y),
            (x + side * 0.5 * wide, y + 0.1 * wide),
            (x + side * 1.4 * wide, y + 2.6 * wide),
            (x + side * 0.7 * wide, y + 3.0 * wide),
        )
        loops += [(end,), (loop,)]
    return [*loops, (disc(x, y, 0.7 * wide),)]


def disc(x: float, y: float, diameter: float) -> tuple[Point, ...]:
    """A round thing as 48 chords."""
    turns = (2 * math.pi * place / 48 for place in range(48))
    return tuple((x + diameter / 2 * math.cos(a), y + diameter / 2 * math.sin(a)) for a in turns)


def button(job: ClosureJob, across: float, at: float) -> Look:
    """The button on the front, with its two holes."""
    x, y = job.board_width.value - at, job.board_height.value / 2
    holes = (disc(x, y - across / 8, across / 10), disc(x, y + across / 8, across / 10))
    return Look("front", "closure", Stuff(row="button"), ((disc(x, y, across), *holes),))


def cords(job: ClosureJob, stock: str | None, thick: float, at: float, edge: float) -> list[Look]:
    """Both strands of the loop, from its hole in the back round the fore-edge to the button."""
    stuff = stuff_of(job.book, stock, "thread")
    y, wide = job.board_height.value / 2, job.board_width.value
    lines = tuple(((wide - at, y + s * thick), (FAR, y + s * thick)) for s in (-1, 1))
    behind = tuple(((wide - edge, y + s * thick / 2), (FAR, y + s * thick / 2)) for s in (-1, 1))
    across = tuple(((-FAR, y + s * thick), (FAR, y + s * thick)) for s in (-1, 1))
    return [
        Look("front", "closure", stuff, lines=lines, width=thick),
        Look("back", "closure", stuff, lines=behind, width=thick),
        Look("fore-edge", "closure", stuff, lines=across, width=thick),
    ]
