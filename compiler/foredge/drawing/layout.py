"""Composite items taken apart into lines, areas, circles and words.

Every writer draws the same primitives, so that one geometry goes to SVG and to PDF.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from foredge.drawing.model import (
    Arc,
    CheckBar,
    Circle,
    Cross,
    Drawing,
    GrainArrow,
    Hatch,
    Item,
    Label,
    Line,
    Measured,
    Point,
    Primitive,
    Shape,
    corners,
)

ARROW = 2.6
"""Length of an arrow's head in mm."""

GAP = 1.0
"""mm left free between the work and what is written about it."""

LIFT = 1.5
"""mm between a dimension line and the words on it: clear of the ends of its help lines."""

FLATNESS = 0.02
"""Most that a polyline may leave its arc, in mm."""

_BLACK = 1.0


def primitives(drawing: Drawing) -> Iterator[Primitive]:
    """Everything on ``drawing`` in drawing order."""
    return expand(drawing.items)


def expand(items: Iterable[Item]) -> Iterator[Primitive]:
    """``items`` as primitives."""
    for item in items:
        match item:
            case Line() | Shape() | Circle() | Label():
                yield item
            case Measured():
                yield from _measured(item)
            case GrainArrow():
                yield from _grain_arrow(item)
            case Arc():
                yield _arc(item)
            case Hatch():
                yield from _hatch(item)
            case Cross():
                yield from _cross(item)
            case CheckBar():
                yield from _check_bar(item)


def _along(origin: Point, direction: Point, far: float, aside: float = 0.0) -> Point:
    """``far`` mm from ``origin`` along ``direction``, then ``aside`` mm to its left."""
    dx, dy = direction
    return origin[0] + far * dx + aside * dy, origin[1] + far * dy - aside * dx


def _unit(start: Point, end: Point) -> tuple[Point, float]:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy)
    return ((dx / length, dy / length), length) if length else ((1.0, 0.0), 0.0)


def _head(tip: Point, direction: Point) -> Shape:
    """A filled arrow's head that points along ``direction``."""
    back = (-direction[0], -direction[1])
    sides = (_along(tip, back, ARROW, ARROW / 5), _along(tip, back, ARROW, -ARROW / 5))
    return Shape(((tip, *sides),), "dimension", _BLACK)


def _measured(item: Measured) -> Iterator[Primitive]:
    direction, length = _unit(item.start, item.end)
    back = (-direction[0], -direction[1])
    side = 1.0 if item.offset >= 0 else -1.0
    for point in (item.start, item.end):
        near = _along(point, direction, 0, side * GAP)
        far = _along(point, direction, 0, item.offset + side * GAP)
        yield Line((near, far), "dimension")
    start = _along(item.start, direction, 0, item.offset)
    end = _along(item.end, direction, 0, item.offset)
    inside = length >= 3 * ARROW
    reach = 0.0 if inside else 2 * ARROW
    yield Line((_along(start, back, reach), _along(end, direction, reach)), "dimension")
    yield _head(start, back if inside else direction)
    yield _head(end, direction if inside else back)
    yield _dimension_text(item, start, direction, length)


def _dimension_text(item: Measured, start: Point, direction: Point, length: float) -> Label:
    turn = math.degrees(math.atan2(direction[1], direction[0]))
    # Read from below or from the right: upright words run from bottom to top.
    upside_down = not -90 <= round(turn, 6) < 90
    turn = turn - math.copysign(180, turn) if upside_down else turn
    # Words stand above the line as they are read, so a turned one goes to the other side;
    # where they are wider than what is measured they keep clear of the help lines.
    above, outer = (-1 if upside_down else 1), (1 if item.offset >= 0 else -1)
    wide = 0.65 * item.size * len(item.text) > length
    lift = outer * (LIFT + 0.75 * item.size) if wide and above != outer else above * LIFT
    return Label(
        _along(start, direction, length / 2, lift), item.text, item.size, turn, "middle", "text"
    )


def _grain_arrow(item: GrainArrow) -> Iterator[Primitive]:
    angle = math.radians(item.turn)
    direction = (math.cos(angle), math.sin(angle))
    start = _along(item.centre, direction, -item.length / 2)
    end = _along(item.centre, direction, item.length / 2)
    yield Line((start, end), "grain")
    for tip, way in ((start, 1.0), (end, -1.0)):
        barbs = [_along(tip, direction, way * ARROW, aside) for aside in (-ARROW / 2, ARROW / 2)]
        yield Line((barbs[0], tip, barbs[1]), "grain")


def _arc(item: Arc) -> Line:
    radius = max(item.radius, FLATNESS)
    step = 2 * math.acos(1 - min(1.0, FLATNESS / radius))
    count = max(2, math.ceil(math.radians(abs(item.sweep)) / step))
    angles = [math.radians(item.start + item.sweep * place / count) for place in range(count + 1)]
    x, y = item.centre
    points = tuple((x + item.radius * math.cos(a), y + item.radius * math.sin(a)) for a in angles)
    return Line(points, item.role)


def _hatch(item: Hatch) -> Iterator[Line]:
    angle = math.radians(item.turn)
    cos, sin = math.cos(angle), math.sin(angle)
    # Turned so that the lines lie level: then each is a scan line through all rings.
    rings = [[(x * cos + y * sin, y * cos - x * sin) for x, y in ring] for ring in item.rings]
    levels = [y for ring in rings for _, y in ring]
    if not levels or item.spacing <= 0:
        return
    place = math.floor(min(levels) / item.spacing) + 0.5
    while place * item.spacing < max(levels):
        y = place * item.spacing
        crossings = sorted(x for ring in rings for x in _crossings(ring, y))
        for left, right in zip(crossings[::2], crossings[1::2], strict=False):
            ends = ((left * cos - y * sin, left * sin + y * cos),)
            yield Line((*ends, (right * cos - y * sin, right * sin + y * cos)), item.role)
        place += 1


def _crossings(ring: list[Point], y: float) -> Iterator[float]:
    for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if (ay <= y) != (by <= y):
            yield ax + (y - ay) / (by - ay) * (bx - ax)


def _cross(item: Cross) -> Iterator[Primitive]:
    x, y = item.at
    half = item.size / 2
    yield Circle(item.at, item.size / 4, "dimension")
    yield Line(((x - half, y), (x + half, y)), "dimension")
    yield Line(((x, y - half), (x, y + half)), "dimension")


def _check_bar(item: CheckBar) -> Iterator[Primitive]:
    x, y = item.at
    count, step = (10, 10.0) if item.unit == "mm" else (4, 25.4)
    height = 3.0
    for place in range(0, count, 2):
        yield Shape((corners(x + place * step, y, step, height),), "fill", _BLACK)
    yield Line(corners(x, y, count * step, height), "dimension", closed=True)
    told = "100 mm" if item.unit == "mm" else "4 in"
    if item.beside:
        yield Label((x + count * step + 2.5, y + height - 0.4), f"{told}: hold a ruler here", 3.0)
        return
    yield Label((x, y + height + 4.2), f"This bar is {told} long: hold a ruler against it.", 3.2)
