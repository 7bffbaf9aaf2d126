"""Profiles of solids of revolution, grown by a skin: x outwards, y up, cut at y = 0.

Each is a closed ring of points. Arcs are drawn as chords with their ends on the arc; their
number of steps grows in proportion with ``n`` (segments of a full turn, 8 or a power of two
above it), which is what lets the core extrapolate.
"""

from __future__ import annotations

import math

from foredge.drawing.model import Point

COARSEST = 8
"""The fewest segments of a full turn."""


def steps(n: int, degrees: float) -> int:
    """Chords for an arc of ``degrees`` where a full turn has ``n``."""
    return (n // COARSEST) * max(1, math.ceil(COARSEST * abs(degrees) / 360 - 1e-9))


def arc(middle: Point, radius: float, start: float, end: float, n: int) -> list[Point]:
    """Points of a circle's arc, both ends included; angles in degrees, from x towards y."""
    return oval(middle, (radius, radius), start, end, n)


def oval(middle: Point, axes: tuple[float, float], start: float, end: float, n: int) -> list[Point]:
    """Points of an ellipse's arc by its parameter (degrees), both ends included."""
    count = steps(n, end - start)
    turns = [math.radians(start + (end - start) * step / count) for step in range(count + 1)]
    return [
        (middle[0] + axes[0] * math.cos(turn), middle[1] + axes[1] * math.sin(turn))
        for turn in turns
    ]


def cap(base: float, height: float, skin: float, n: int) -> list[Point]:
    """A spherical cap; its skin is rounded about the rim where the cap meets the board."""
    radius = (base * base + height * height) / (2 * height)
    middle = height - radius
    if middle >= 0:
        foot = math.degrees(math.asin(middle / (radius + skin)))
        points = arc((0.0, middle), radius + skin, -foot, 90.0, n)
    else:
        lean = math.degrees(math.atan2(-middle, base))
        rim = arc((base, 0.0), skin, 0.0, lean, n)[:-1] if skin else []
        points = rim + arc((0.0, middle), radius + skin, lean, 90.0, n)
    return _on_axis(points, height + skin)


def frustum(bottom: float, top: float, height: float, skin: float, n: int) -> list[Point]:
    """A cone, cut off or pointed; its skin is rounded at rim, edge and point."""
    if not skin:
        upper = [(top, height)] if top else []
        return _on_axis([(bottom, 0.0), *upper, (0.0, height)], height)
    lean = math.degrees(math.atan2(bottom - top, height))
    if lean >= 0:
        foot = arc((bottom, 0.0), skin, 0.0, lean, n)
    else:
        out, down = math.cos(math.radians(lean)), math.sin(math.radians(lean))
        foot = [(bottom + skin * out - skin * down * (top - bottom) / height, 0.0)]
    edge = arc((top, height), skin, lean, 90.0, n)
    return _on_axis([*foot, *edge, (0.0, height + skin)], height + skin)


def hemisphere(n: int) -> list[Point]:
    """A quarter circle of radius 1: half a ball."""
    return _on_axis(arc((0.0, 0.0), 1.0, 0.0, 90.0, n), 1.0)


def ring(
    radius: float, width: float, height: float, sunk: float, skin: float, n: int
) -> list[Point]:
    """The oval section of a ring, cut at the board."""
    axes = (width / 2 + skin, height / 2 + skin)
    middle = height / 2 - sunk
    if middle >= axes[1]:
        return oval((radius, middle), axes, -90.0, 270.0, n)[:-1]
    foot = math.degrees(math.asin(middle / axes[1]))
    return _on_board(oval((radius, middle), axes, -foot, 180.0 + foot, n))


def capsule(start: float, end: float, length: float, n: int) -> list[Point]:
    """Two balls, ``length`` apart along y from the first at 0, and the cone that touches both.

    One ball alone where it holds the other.
    """
    if length <= abs(start - end):
        large, middle = (start, 0.0) if start >= end else (end, length)
        return _on_axis(
            [(0.0, middle - large), *arc((0.0, middle), large, -90.0, 90.0, n)[1:]],
            middle + large,
        )
    lean = math.degrees(math.asin((start - end) / length))
    lower = arc((0.0, 0.0), start, -90.0, lean, n)
    upper = arc((0.0, length), end, lean, 90.0, n)
    points = [(0.0, -start), *lower[1:], *upper]
    points[-1] = (0.0, length + end)
    return points


def _on_axis(points: list[Point], height: float) -> list[Point]:
    """``points`` from the rim to the top, closed along the axis; the ends exactly on it."""
    points = points[:-1]
    if points[0][0] > 0:
        points = [(0.0, 0.0), (points[0][0], 0.0), *points[1:]]
    return [*points, (0.0, height)]


def _on_board(points: list[Point]) -> list[Point]:
    """The first and the last point exactly on the board."""
    return [(points[0][0], 0.0), *points[1:-1], (points[-1][0], 0.0)]
