"""Points whose convex hulls make up a plate or a fin grown by its skin.

The flat faces lie exactly ``skin`` outside the old ones; edges and corners are rounded.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from foredge.drawing.model import Point
from foredge.solids.profiles import steps

Point3 = tuple[float, float, float]
OVERLAP_MM = 1e-3
"""Neighbouring hulls reach this far into each other, so that their union has no seam."""


def plate_hulls(
    outline: Sequence[Point],
    top: Sequence[Point],
    bevel_at: float,
    height: float,
    skin: float,
    n: int,
) -> Iterator[list[Point3]]:
    """What stands round a plate: one hull a side, one a corner that points outwards.

    ``outline`` runs from x towards y; ``top`` is it drawn in by the bevel (equal to it where
    there is none), which begins ``bevel_at`` above the board.
    """
    count = len(outline)
    normals = [_normal(outline[i], outline[(i + 1) % count]) for i in range(count)]
    for i in range(count):
        j = (i + 1) % count
        ends = [(outline[i], top[i]), (outline[j], top[j])]
        yield [
            point
            for low, high in ends
            for point in _side(low, high, normals[i], bevel_at, height, skin, n)
        ]
        if skin and _turn(normals[i], normals[j]) > 1e-9:
            yield _corner(outline[j], top[j], (normals[i], normals[j]), bevel_at, height, skin, n)


def _normal(start: Point, end: Point) -> Point:
    """Outwards from a side of an outline that runs from x towards y."""
    along_x, along_y = end[0] - start[0], end[1] - start[1]
    length = math.hypot(along_x, along_y)
    return along_y / length, -along_x / length


def _turn(before: Point, after: Point) -> float:
    """Sine of the angle from one normal to the next; positive where the corner points out."""
    return before[0] * after[1] - before[1] * after[0]


def _side(
    low: Point, high: Point, normal: Point, bevel_at: float, height: float, skin: float, n: int
) -> Iterator[Point3]:
    """One end of a side: its section, from the board over both edges, and a little inwards."""
    lean = 45.0 if low != high else 0.0
    yield from ((*low, 0.0), _out(low, normal, skin, 0.0))
    if lean:
        yield from _quarter(low, normal, bevel_at, skin, 0.0, lean, n)
    yield from _quarter(high, normal, height, skin, lean, 90.0, n)
    inwards = (high[0] - OVERLAP_MM * normal[0], high[1] - OVERLAP_MM * normal[1])
    yield from ((*inwards, 0.0), (*inwards, height + skin))


def _corner(
    low: Point,
    high: Point,
    normals: tuple[Point, Point],
    bevel_at: float,
    height: float,
    skin: float,
    n: int,
) -> list[Point3]:
    """A corner: the fan between its sides' normals, a little wider so that it overlaps them."""
    start = math.atan2(normals[0][1], normals[0][0])
    swing = math.atan2(normals[1][1], normals[1][0]) - start
    swing += 2 * math.pi if swing < 0 else 0.0
    count = steps(n, math.degrees(swing))
    wider = min(0.02, OVERLAP_MM / skin)
    turns = [start - wider, start + swing + wider]
    turns += [start + swing * step / count for step in range(count + 1)]
    points: list[Point3] = [(*low, 0.0), (*high, 0.0), (*high, height + skin)]
    for turn in turns:
        normal = (math.cos(turn), math.sin(turn))
        points += [
            _out(low, normal, skin, 0.0),
            *_quarter(low, normal, bevel_at, skin, 0.0, 90.0, n),
        ]
        points += _quarter(high, normal, height, skin, 0.0, 90.0, n)
    return points


def _quarter(
    middle: Point, normal: Point, height: float, skin: float, start: float, end: float, n: int
) -> list[Point3]:
    """An upright arc about ``middle`` at ``height``, from ``start`` to ``end`` degrees up."""
    if not skin:
        return [(*middle, height)]
    count = steps(n, end - start)
    ups = [math.radians(start + (end - start) * step / count) for step in range(count + 1)]
    return [_out(middle, normal, skin * math.cos(up), height + skin * math.sin(up)) for up in ups]


def _out(point: Point, normal: Point, distance: float, height: float) -> Point3:
    return point[0] + distance * normal[0], point[1] + distance * normal[1], height


def fin_points(
    length: float, width: float, height: float, skin: float, ball: Sequence[Point3]
) -> list[Point3]:
    """A fin's corners; with a skin, a ``ball`` (of radius 1) about each and its faces moved out."""
    ends = (-length / 2, length / 2)
    corners: list[Point3] = [
        (x, y, z) for x in ends for y, z in ((-width / 2, 0.0), (width / 2, 0.0), (0.0, height))
    ]
    if not skin:
        return corners
    slope = math.hypot(width / 2, height)
    up, out = width / 2 / slope, height / slope
    moved = [(x + math.copysign(skin, x), y, z) for x, y, z in corners]
    moved += [
        (x, y + side * skin * out, z + skin * up)
        for side in (-1.0, 1.0)
        for x, y, z in corners
        if y * side >= 0
    ]
    rounded = [
        (x + skin * dx, y + skin * dy, z + skin * dz) for x, y, z in corners for dx, dy, dz in ball
    ]
    return moved + rounded
