"""Where the pieces of a pattern lie, in plain millimetres from the field's top left corner."""

from __future__ import annotations

import math
from dataclasses import dataclass

from foredge.contract import Point

Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Box:
    """A piece before it is trimmed to the field."""

    x: float
    y: float
    width: float
    height: float

    @property
    def ring(self) -> Ring:
        """Its corners."""
        right, bottom = self.x + self.width, self.y + self.height
        return (self.x, self.y), (right, self.y), (right, bottom), (self.x, bottom)


def evenly(room: float, size: float, pitch: float, count: int) -> tuple[float, ...]:
    """Starts of ``count`` pieces ``pitch`` apart, the whole of them in the middle of ``room``."""
    first = (room - (count - 1) * pitch - size) / 2
    return tuple(first + place * pitch for place in range(count))


def band_length(width: float, height: float, degrees: float, strip: float, offset: float) -> float:
    """Length of a strip that fills a field of ``width`` by ``height``, its ends cut to it.

    It runs at ``degrees`` to the width, ``offset`` from the field's middle, ``strip`` wide.
    """
    ring = band(width, height, degrees, strip, offset)
    if not ring:
        return 0.0
    angle = math.radians(degrees)
    along = [x * math.cos(angle) + y * math.sin(angle) for x, y in ring]
    return max(along) - min(along)


def band(width: float, height: float, degrees: float, strip: float, offset: float) -> Ring:
    """That strip as it lies, cut to the field; empty where it misses it."""
    angle = math.radians(degrees)
    normal = (-math.sin(angle), math.cos(angle))
    middle = normal[0] * width / 2 + normal[1] * height / 2 + offset
    ring: Ring = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    ring = _cut(ring, normal, middle + strip / 2)
    return _cut(ring, (-normal[0], -normal[1]), -(middle - strip / 2))


def _cut(ring: Ring, normal: Point, most: float) -> Ring:
    """The part of a convex ring whose distance along ``normal`` is at most ``most``."""
    kept: list[Point] = []
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], *ring[:1]), strict=True):
        a = ax * normal[0] + ay * normal[1] - most
        b = bx * normal[0] + by * normal[1] - most
        if a <= 0:
            kept.append((ax, ay))
        if a * b < 0:
            t = a / (a - b)
            kept.append((ax + t * (bx - ax), ay + t * (by - ay)))
    return tuple(kept)


def within(ring: Ring, width: float) -> Ring:
    """The part of a convex ring between the field's spine side and its fore-edge side."""
    return _cut(_cut(ring, (1.0, 0.0), width), (-1.0, 0.0), 0.0)


def half_span(width: float, height: float, degrees: float) -> float:
    """How far from the field's middle a line at ``degrees`` still crosses it."""
    angle = math.radians(degrees)
    return (width * abs(math.sin(angle)) + height * abs(math.cos(angle))) / 2


def scale_ring(box: Box, tip: str) -> Ring:
    """The outline of a piece whose lower end is ``square``, ``round`` or ``pointed``."""
    if tip == "square":
        return box.ring
    left, right, half = box.x, box.x + box.width, box.width / 2
    shoulder = box.y + box.height - half
    if tip == "pointed":
        end: Ring = ((left + half, box.y + box.height),)
    else:
        angles = [math.pi * step / _ARC for step in range(1, _ARC)]
        end = tuple(
            (left + half + half * math.cos(a), shoulder + half * math.sin(a)) for a in angles
        )
    return (left, box.y), (right, box.y), (right, shoulder), *end, (left, shoulder)


_ARC = 36
"""Chords in a half circle: 0.02 mm off at most up to 40 mm across."""
