"""Printed sheets as data: what lies where on a page. A writer turns them into PDF."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.drawing.model import Drawing, Item, Point


@dataclass(frozen=True, slots=True)
class Window:
    """A part of a drawing, in the drawing's own mm."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Placed:
    """``window`` of ``drawing`` with its top left corner ``at`` on the page.

    ``scale`` is mm on paper for each mm of the drawing; 1 is true scale. Nothing outside
    the window is printed.
    """

    drawing: Drawing
    at: Point
    window: Window
    scale: float = 1.0

    @property
    def origin(self) -> Point:
        """Where the drawing's own origin lies on the page, mm."""
        return self.at[0] - self.window.x * self.scale, self.at[1] - self.window.y * self.scale


@dataclass(frozen=True, slots=True)
class Page:
    """One printed page of ``width`` by ``height`` mm.

    ``under`` is drawn in the page's own mm: titles, check bars, tile marks. ``marks`` are the
    names by which a reader's table of contents finds it.
    """

    width: float
    height: float
    under: tuple[Item, ...]
    placed: tuple[Placed, ...] = ()
    marks: tuple[str, ...] = ()


def whole(drawing: Drawing, at: Point = (0.0, 0.0), scale: float = 1.0) -> Placed:
    """All of ``drawing`` at a place on the page."""
    return Placed(drawing, at, Window(0.0, 0.0, drawing.width, drawing.height), scale)
