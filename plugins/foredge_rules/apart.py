"""How far two sets of outlines are apart, or how far one reaches onto the other. Plain mm."""

from __future__ import annotations

import math
from collections.abc import Iterator

from foredge.contract import Point, Rings

Box = tuple[float, float, float, float]
"""Left, upper, right and lower side."""


Segment = tuple[Point, Point]


def gap(one: Rings, other: Rings, within: float) -> float | None:
    """The distance between two areas; None where it is more than ``within``.

    Where they overlap it is negative: how deep a corner of one lies in the other, at the least.
    """
    near = _grown(_box(one), within)
    mine = list(_sides(one))
    sides = [side for side in _sides(other) if _meets(_box((side,)), near)]
    deep = max(_deepest(one, other), _deepest(other, one))
    if deep > 0 or any(_cross(a, b) for a in mine for b in sides):
        return -deep
    free = min((_between(a, b) for a in mine for b in sides), default=math.inf)
    return free if free <= within else None


def _deepest(one: Rings, other: Rings) -> float:
    """How deep the corners of ``one`` lie in ``other``; 0 where none does."""
    room, sides = _box(other), list(_sides(other))
    corners = [
        corner
        for ring in one
        for corner in ring
        if _meets((*corner, *corner), room) and inside(corner, other)
    ]
    return max((min(_from(corner, side) for side in sides) for corner in corners), default=0.0)


def inside(point: Point, rings: Rings) -> bool:
    """Whether ``point`` lies in the area, by the even-odd rule."""
    x, y = point
    odd = False
    for (x0, y0), (x1, y1) in _sides(rings):
        if (y0 > y) != (y1 > y) and x < (x1 - x0) * (y - y0) / (y1 - y0) + x0:
            odd = not odd
    return odd


def _sides(rings: Rings) -> Iterator[Segment]:
    for ring in rings:
        yield from zip(ring, (*ring[1:], ring[0]), strict=True)


def _box(rings: Rings) -> Box:
    xs = [x for ring in rings for x, _ in ring]
    ys = [y for ring in rings for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)


def _grown(box: Box, more: float) -> Box:
    return box[0] - more, box[1] - more, box[2] + more, box[3] + more


def _meets(one: Box, other: Box) -> bool:
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


def _from(point: Point, side: Segment) -> float:
    (x0, y0), (x1, y1) = side
    wide, high = x1 - x0, y1 - y0
    length = wide * wide + high * high
    share = ((point[0] - x0) * wide + (point[1] - y0) * high) / length if length else 0.0
    share = min(1.0, max(0.0, share))
    return math.dist(point, (x0 + share * wide, y0 + share * high))


def _between(one: Segment, other: Segment) -> float:
    return min(
        *(_from(end, other) for end in one),
        *(_from(end, one) for end in other),
    )


def _cross(one: Segment, other: Segment) -> bool:
    def turn(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return (turn(*one, other[0]) > 0) != (turn(*one, other[1]) > 0) and (
        turn(*other, one[0]) > 0
    ) != (turn(*other, one[1]) > 0)
