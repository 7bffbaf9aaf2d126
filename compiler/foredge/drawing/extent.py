"""The part of a drawing that has something on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from foredge.drawing.layout import expand
from foredge.drawing.model import CheckBar, Circle, Drawing, Item, Label, Line, Point, Shape
from foredge.drawing.sheets import Window
from foredge.drawing.textbox import label_box

PAD = 1.0
"""mm left round the outermost points: lines have a width."""


def without_bars(drawing: Drawing) -> Drawing:
    """``drawing`` without its check bars, for a page that has its own."""
    return replace(
        drawing, items=tuple(item for item in drawing.items if not isinstance(item, CheckBar))
    )


def used(drawing: Drawing) -> Window:
    """What of ``drawing`` is used; all of it where it is empty."""
    points = list(_points(drawing.items))
    if not points:
        return Window(0.0, 0.0, drawing.width, drawing.height)
    left, right = min(x for x, _ in points) - PAD, max(x for x, _ in points) + PAD
    top, foot = min(y for _, y in points) - PAD, max(y for _, y in points) + PAD
    return Window(left, top, right - left, foot - top)


def _points(items: Iterable[Item]) -> Iterator[Point]:
    for item in expand(items):
        match item:
            case Line():
                yield from item.points
            case Shape():
                yield from (point for ring in item.rings for point in ring)
            case Circle():
                (x, y), radius = item.centre, item.radius
                yield from ((x - radius, y - radius), (x + radius, y + radius))
            case Label() if item.text:
                yield from label_box(item).corners
