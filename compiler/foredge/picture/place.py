"""Putting a face on the sheet: scaled, mirrored, cut off at its edges."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from foredge.contract import Item, Line, Point, Shape

Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Box:
    """What of a face is seen, in mm on the face."""

    left: float
    top: float
    right: float
    foot: float

    def cut(self, ring: Ring) -> Ring:
        """The part of ``ring`` inside (Sutherland and Hodgman, CACM 17, 1974, p. 32)."""
        for axis, limit, sign in (
            (0, self.left, -1.0),
            (0, self.right, 1.0),
            (1, self.top, -1.0),
            (1, self.foot, 1.0),
        ):
            ring = _half(ring, axis, limit, sign)
        return ring

    @property
    def ring(self) -> Ring:
        """Its corners."""
        left, top, right, foot = self.left, self.top, self.right, self.foot
        return (left, top), (right, top), (right, foot), (left, foot)

    def grown(self, by: float) -> Box:
        """The box with ``by`` mm more on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.foot + by)

    def cut_line(self, points: Ring) -> Iterator[Ring]:
        """The pieces of a polyline inside, segment by segment where it leaves."""
        if all(self.holds(point) for point in points):
            yield points
            return
        for a, b in pairwise(points):
            piece = self._cut_segment(a, b)
            if piece is not None:
                yield piece

    def holds(self, point: Point) -> bool:
        """Whether ``point`` lies inside."""
        return self.left <= point[0] <= self.right and self.top <= point[1] <= self.foot

    def _cut_segment(self, a: Point, b: Point) -> tuple[Point, Point] | None:
        low, high = 0.0, 1.0
        for axis, least, most in ((0, self.left, self.right), (1, self.top, self.foot)):
            run = b[axis] - a[axis]
            if run == 0:
                if not least <= a[axis] <= most:
                    return None
                continue
            first, second = sorted(((least - a[axis]) / run, (most - a[axis]) / run))
            low, high = max(low, first), min(high, second)
        if low >= high:
            return None
        return _between(a, b, low), _between(a, b, high)


def _between(a: Point, b: Point, share: float) -> Point:
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])


def _half(ring: Ring, axis: int, limit: float, sign: float) -> Ring:
    kept: list[Point] = []
    for a, b in zip(ring, (*ring[1:], *ring[:1]), strict=True):
        inside_a, inside_b = sign * (a[axis] - limit) <= 0, sign * (b[axis] - limit) <= 0
        if inside_a:
            kept.append(a)
        if inside_a != inside_b:
            kept.append(_between(a, b, (limit - a[axis]) / (b[axis] - a[axis])))
    return tuple(kept)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a face lies on the sheet: its origin there, its scale; ``mirror`` is the width of a
    face that is seen from its other side, 0 otherwise."""

    x: float
    y: float
    scale: float
    mirror: float = 0.0

    def point(self, point: Point) -> Point:
        """A point of the face on the sheet, to a hundredth of a millimetre."""
        across = self.mirror - point[0] if self.mirror else point[0]
        return round(self.x + self.scale * across, 2), round(self.y + self.scale * point[1], 2)

    def items(self, items: Iterable[Item]) -> Iterator[Item]:
        """Areas and lines of the face on the sheet; what is too small to see is left out."""
        for item in items:
            match item:
                case Shape():
                    rings = tuple(ring for one in item.rings if len(ring := self._ring(one)) > 2)
                    if rings:
                        yield Shape(rings, item.role, item.shade, item.colour)
                case Line():
                    points = self._ring(item.points)
                    if len(points) > 1:
                        width = round(self.scale * item.width, 3)
                        yield Line(points, item.role, item.closed, item.colour, width)
                case other:
                    raise TypeError(f"{other} is no part of a face")

    def _ring(self, points: Ring) -> Ring:
        placed: list[Point] = []
        for point in map(self.point, points):
            if not placed or placed[-1] != point:
                placed.append(point)
        return tuple(placed)
