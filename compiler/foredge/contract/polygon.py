"""Plane polygons in mm: area, where they cross themselves, drawn in by a bevel.

Plain floats: used to decide about problems, and by the solids behind a relief.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from foredge.drawing.model import Point

Corners = Sequence[Point]
TOUCH_MM = 1e-6
"""Closer than this, two points are one."""


def signed_area(corners: Corners) -> float:
    """Area in mm2; positive where the corners run from x towards y."""
    return 0.5 * math.fsum(
        x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(corners, _next(corners), strict=True)
    )


def faults_of_polygon(corners: Corners) -> list[str]:
    """What keeps ``corners`` from being a simple polygon; they are counted from 1.

    At most five faults are told.
    """
    if len(corners) < 3:
        return [f"it has {len(corners)} corners; an outline needs three or more"]
    faults = [
        f"corners {first + 1} and {after + 1} are the same point"
        for first, after in _sides(corners)
        if math.dist(corners[first], corners[after]) < TOUCH_MM
    ]
    if not faults:
        faults = [
            f"the side from corner {a + 1} to {_after(corners, a) + 1} {word} the side from "
            f"corner {b + 1} to {_after(corners, b) + 1}"
            for a, b, word in _meetings(corners)
        ]
    if not faults and abs(signed_area(corners)) < TOUCH_MM:
        faults = ["its corners lie on one line"]
    return faults[:5]


def inset(corners: Corners, distance: float) -> list[Point] | None:
    """Every side moved inwards by ``distance`` (mm), corner for corner.

    None where a side would vanish or sides would meet: the outline is too narrow for it.
    Corners that run straight on are kept.
    """
    turn = math.copysign(1.0, signed_area(corners))
    moved = [_moved(corners, place, turn * distance) for place in range(len(corners))]
    for first, after in _sides(corners):
        old = _minus(corners[after], corners[first])
        new = _minus(moved[after], moved[first])
        if old[0] * new[0] + old[1] * new[1] <= TOUCH_MM * math.hypot(*old):
            return None
    return None if next(_meetings(moved), None) else moved


def _moved(corners: Corners, place: int, distance: float) -> Point:
    """The corner where both its sides, moved to their left by ``distance``, meet."""
    before, here = corners[place - 1], corners[place]
    after = corners[_after(corners, place)]
    in_x, in_y = _unit(_minus(here, before))
    out_x, out_y = _unit(_minus(after, here))
    scale = distance / max(1.0 + in_x * out_x + in_y * out_y, 1e-9)
    return here[0] - scale * (in_y + out_y), here[1] + scale * (in_x + out_x)


def _meetings(corners: Corners) -> Iterator[tuple[int, int, str]]:
    """Pairs of sides, by their first corners, that cross, touch or fold back."""
    count = len(corners)
    sides = [(corners[a], corners[b]) for a, b in _sides(corners)]
    boxes = [_box(*side) for side in sides]
    for a in range(count):
        if _folds(corners, a):
            yield a, _after(corners, a), "folds back on"
        for b in range(a + 2, count):
            if a == 0 and b == count - 1:
                continue
            if _apart(boxes[a], boxes[b]):
                continue
            if _cross(*sides[a], *sides[b]):
                yield a, b, "crosses"


def _folds(corners: Corners, side: int) -> bool:
    here = _after(corners, side)
    in_x, in_y = _unit(_minus(corners[here], corners[side]))
    out_x, out_y = _unit(_minus(corners[_after(corners, here)], corners[here]))
    return in_x * out_x + in_y * out_y < 0 and abs(in_x * out_y - in_y * out_x) < 1e-9


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the closed segments ab and cd have a point in common."""
    if min(_distance(p, c, d) for p in (a, b)) < TOUCH_MM:
        return True
    if min(_distance(p, a, b) for p in (c, d)) < TOUCH_MM:
        return True
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _distance(point: Point, start: Point, end: Point) -> float:
    """From ``point`` to the segment."""
    along, to = _minus(end, start), _minus(point, start)
    length = along[0] ** 2 + along[1] ** 2
    share = 0.0 if length == 0 else (along[0] * to[0] + along[1] * to[1]) / length
    share = min(1.0, max(0.0, share))
    return math.hypot(to[0] - share * along[0], to[1] - share * along[1])


def _side(a: Point, b: Point, point: Point) -> float:
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _box(a: Point, b: Point) -> tuple[float, float, float, float]:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])


def _apart(one: tuple[float, ...], two: tuple[float, ...]) -> bool:
    return (
        one[2] < two[0] - TOUCH_MM
        or two[2] < one[0] - TOUCH_MM
        or one[3] < two[1] - TOUCH_MM
        or two[3] < one[1] - TOUCH_MM
    )


def _minus(a: Point, b: Point) -> Point:
    return a[0] - b[0], a[1] - b[1]


def _unit(vector: Point) -> Point:
    length = math.hypot(*vector) or 1.0
    return vector[0] / length, vector[1] / length


def _after(corners: Corners, place: int) -> int:
    return (place + 1) % len(corners)


def _next(corners: Corners) -> list[Point]:
    return [*corners[1:], *corners[:1]]


def _sides(corners: Corners) -> list[tuple[int, int]]:
    return [(place, _after(corners, place)) for place in range(len(corners))]
