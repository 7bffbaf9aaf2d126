"""The way of the thread over the first gatherings, seen from outside: a picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from foredge.contract import Circle, Drawing, Item, Label, Line, Point, Quantity, SewingJob, Shape

MARGIN = 20.0
ROW = 26.0
SHOWN = 3
"""Gatherings in the picture: the third is the first with a kettle under a climb."""

FOOT = 16.0
"""mm below the last station for the words about the kettle."""

LETTERS = 3.0


@dataclass(frozen=True, slots=True)
class ThreadPath:
    """What tells one structure's way of the thread from another's.

    ``outside`` are the stretches between stations, from 0, where the thread lies outside;
    elsewhere it lies in the fold. ``over`` are the stretches where a tape lies under it.
    ``linked``: at every inner station it slips behind the gathering before.
    """

    title: str
    outside: frozenset[int] = frozenset()
    over: frozenset[int] = frozenset()
    linked: bool = False
    words: tuple[str, ...] = ()


def thread_path(job: SewingJob, stations: Sequence[Quantity], path: ThreadPath) -> Drawing:
    """Upright lines are gatherings, head up: the first at the left, sewn from head to tail."""
    rows = min(int(job.gatherings.value), SHOWN)
    lines = (
        "Seen from outside, head up",
        "full line: outside; broken: inside the fold",
        *path.words,
    )
    top = MARGIN + 5 * len(lines) + 8
    ys = [top + at.value - stations[0].value for at in stations]
    xs = [MARGIN + 14 + row * ROW for row in range(rows)]
    items: list[Item] = [
        *(Label((MARGIN, MARGIN + 5 * place), words, 3.4) for place, words in enumerate(lines)),
        *_tapes(path, xs, ys),
        *(item for row, x in enumerate(xs) for item in _row(path, row, x, ys)),
        *(_climb(row, xs, ys) for row in range(rows - 1)),
        *_links(path, xs, ys),
        *_numbers(ys),
        *_kettle(xs, ys),
    ]
    return Drawing(
        "text-block-thread-path",
        path.title,
        max(2 * MARGIN + 20 + rows * ROW, 150.0),
        ys[-1] + FOOT + MARGIN / 2,
        tuple(items),
    )


def _numbers(ys: Sequence[float]) -> list[Item]:
    """The stations' numbers, pushed down where they would touch."""
    found: list[Item] = []
    last = -LETTERS * 2
    for place, y in enumerate(ys, start=1):
        last = max(y, last + 1.1 * LETTERS)
        found.append(Label((MARGIN + 6, last + 1.1), f"{place}", LETTERS, anchor="end"))
    return found


def _tapes(path: ThreadPath, xs: Sequence[float], ys: Sequence[float]) -> list[Item]:
    left, right = xs[0] - 5, xs[-1] + 12
    bands = ((ys[place], ys[place + 1]) for place in sorted(path.over))
    return [
        Shape((((left, top), (right, top), (right, foot), (left, foot)),), "fill", 0.15)
        for top, foot in bands
    ]


def _row(path: ThreadPath, row: int, x: float, ys: Sequence[float]) -> list[Item]:
    """One gathering: its thread from station to station, its holes, and which way it is sewn."""
    down = row % 2 == 0
    items: list[Item] = [Label((x, ys[0] - 5), f"{row + 1}", 4.0, anchor="middle")]
    for place, (first, last) in enumerate(pairwise(ys)):
        ends = ((x, first), (x, last))
        items.append(Line(ends, "outline" if place in path.outside else "hidden"))
    items += [Circle((x, y), 0.8, "outline", filled=True) for y in ys]
    tip = ys[-1] - 3 if down else ys[0] + 3
    back = tip - 4 if down else tip + 4
    return [*items, Line(((x + 2, back), (x + 3.5, tip), (x + 5, back)), "outline")]


def _climb(row: int, xs: Sequence[float], ys: Sequence[float]) -> Item:
    y = ys[-1] if row % 2 == 0 else ys[0]
    return Line(((xs[row], y), (xs[row + 1], y)), "outline")


def _links(path: ThreadPath, xs: Sequence[float], ys: Sequence[float]) -> list[Item]:
    """A loop from each inner hole round the thread of the gathering before."""
    if not path.linked:
        return []
    return [Line(_loop(x, before, y), "outline") for before, x in pairwise(xs) for y in ys[1:-1]]


def _loop(x: float, before: float, y: float) -> tuple[Point, ...]:
    return (x, y), (before + 2, y - 1.6), (before - 1.8, y), (before + 2, y + 1.6), (x, y)


def _kettle(xs: Sequence[float], ys: Sequence[float]) -> list[Item]:
    """Where the third gathering, sewn from head to tail, passes under the first climb."""
    if len(xs) < SHOWN:
        return []
    middle, y = (xs[0] + xs[1]) / 2, ys[-1]
    hook = ((xs[2], y), (xs[2] - 4, y + 4), (middle + 3, y + 4), (middle, y), (middle, y - 3))
    told = "kettle: 3 passes under the climb from 1 to 2"
    return [Line(hook, "outline"), Label((MARGIN, y + 10), told, LETTERS)]
