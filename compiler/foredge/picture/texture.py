"""The grain of a covering, just enough of it that cloth, leather and paper differ."""

from __future__ import annotations

import math
from collections.abc import Iterator

from foredge.contract import Item, Line, Point, Shape, Texture
from foredge.picture.colours import FLAT, Colour, lit, written
from foredge.picture.place import Box, Ring

_THREAD_MM = 1.15
_PORES, _MOST_PORES = 0.03, 700
"""Pores on a mm2 of leather."""


def textured(texture: Texture, colour: Colour, ring: Ring, error: float) -> Iterator[Item]:
    """The grain on the rectangle round ``ring``; ``error`` (mm) grows with the book."""
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    box = Box(min(xs), min(ys), max(xs), max(ys))
    coarse = max(1.0, error / 0.08)
    if texture == "cloth":
        yield from _woven(box, colour, _THREAD_MM * coarse)
    elif texture == "leather":
        yield from _pored(box, colour)
    elif texture == "metal":
        yield from _polished(box, colour)


def _woven(box: Box, colour: Colour, pitch: float) -> Iterator[Item]:
    """Warp and weft as two lines to and fro."""
    width, height = box.right - box.left, box.foot - box.top
    if min(width, height) < 3 * pitch:
        return
    warp = [box.left + pitch * (n + 0.5) for n in range(int(width / pitch))]
    weft = [box.top + pitch * (n + 0.5) for n in range(int(height / pitch))]
    down = tuple(p for n, x in enumerate(warp) for p in _turned((x, box.top), (x, box.foot), n))
    over = tuple(p for n, y in enumerate(weft) for p in _turned((box.left, y), (box.right, y), n))
    yield Line(down, "fill", colour=written(lit(colour, FLAT * 0.9)), width=pitch * 0.22)
    yield Line(over, "fill", colour=written(lit(colour, FLAT * 1.05)), width=pitch * 0.2)


def _polished(box: Box, colour: Colour) -> Iterator[Item]:
    """A rounded plate: bright above its middle, dark at its foot."""
    count = 12
    for place in range(count):
        top = box.top + (box.foot - box.top) * place / count
        tone = FLAT + 0.26 * math.sin(math.pi * (0.25 + 1.15 * place / count))
        ring = Box(box.left, top, box.right, box.foot).ring
        yield Shape((ring,), colour=written(lit(colour, min(1.0, tone - 0.06), metal=True)))


def _turned(start: Point, end: Point, place: int) -> tuple[Point, Point]:
    return (end, start) if place % 2 else (start, end)


def _pored(box: Box, colour: Colour) -> Iterator[Item]:
    """Small dents strewn by the golden ratio's sequence, the same ones every time."""
    width, height = box.right - box.left, box.foot - box.top
    count = min(_MOST_PORES, int(width * height * _PORES))
    golden, plastic = (math.sqrt(5) - 1) / 2, 0.7548776662466927
    rings = []
    for place in range(1, count + 1):
        x = box.left + width * ((place * plastic) % 1)
        y = box.top + height * ((place * plastic * plastic + 0.5) % 1)
        long, turn = 0.5 + 0.5 * ((place * golden) % 1), math.tau * ((place * golden * 3) % 1)
        dx, dy = long * math.cos(turn), long * math.sin(turn)
        rings.append(((x - dx, y - dy), (x + dy / 5, y - dx / 5), (x + dx, y + dy)))
    if rings:
        yield Shape(tuple(rings), colour=written(lit(colour, FLAT * 0.7)))
