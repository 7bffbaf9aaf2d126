"""What the drawings of a relief share: the panel, its origin and axes."""

from __future__ import annotations

from collections.abc import Iterable

from foredge.contract import Item, Label, Line, Panel, Point, Rings

LEFT = 24.0
TOP = 24.0
AXIS = 22.0


def board(panel: Panel) -> list[Item]:
    """The outline of the panel."""
    wide, high = panel.width.value, panel.height.value
    corners = ((LEFT, TOP), (LEFT + wide, TOP), (LEFT + wide, TOP + high), (LEFT, TOP + high))
    return [Line(corners, closed=True)]


def axes(panel: Panel) -> list[Item]:
    """Origin and axes: x away from the spine, y from head to tail."""
    edge = "left edge" if panel.name == "spine" else "spine edge"
    tip, off = 2.0, 5.0
    across, down = TOP - off, LEFT - off
    return [
        Line(((LEFT, across), (LEFT + AXIS, across)), "dimension"),
        Line(((LEFT + AXIS - tip, across - 1), (LEFT + AXIS, across),
              (LEFT + AXIS - tip, across + 1)), "dimension"),
        Line(((down, TOP), (down, TOP + AXIS)), "dimension"),
        Line(((down - 1, TOP + AXIS - tip), (down, TOP + AXIS),
              (down + 1, TOP + AXIS - tip)), "dimension"),
        Label((LEFT + AXIS + 1.5, across + 1), "x", 3.5),
        Label((down - 1, TOP + AXIS + 4), "y", 3.5),
        Label((down - 1, across + 1), "0", 3.5),
        Label((LEFT - 7, TOP + panel.height.value / 2), edge, 3.5, turn=-90.0, anchor="middle"),
        Label((LEFT + panel.width.value / 2, TOP - 16), "HEAD", 4.0, anchor="middle"),
    ]  # fmt: skip


def moved(rings: Rings, right: float = LEFT, down: float = TOP) -> Iterable[tuple[Point, ...]]:
    """Rings of the panel where the panel is drawn."""
    return (tuple((x + right, y + down) for x, y in ring) for ring in rings)
