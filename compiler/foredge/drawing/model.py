"""A drawing as data: millimetres, origin at the top left, y downwards.

Stages and plugins build these; the writers turn one geometry into SVG and PDF. Colours
are roles, not values: a writer decides how ``cut`` or ``grain`` looks. Only a picture of the
work itself has real ones: ``colour`` is sRGB as ``#rrggbb``, and empty means as the role says.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from foredge.quantity import Quantity

Point = tuple[float, float]


def corners(x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    """The four corners of a rectangle, clockwise from its top left (mm)."""
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)


"""x, y in mm."""

Role = Literal[
    "outline", "cut", "fold", "hidden", "grain", "dimension", "text", "fill", "glue", "guide"
]


@dataclass(frozen=True, slots=True)
class Line:
    """A polyline in mm; ``closed`` joins its end to its start.

    ``colour`` and ``width`` (mm) stand for the role's own where they are given; a line of
    its own width is solid, with round ends and corners.
    """

    points: tuple[Point, ...]
    role: Role = "outline"
    closed: bool = False
    colour: str = ""
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Shape:
    """A filled area: closed rings in mm, even-odd; ``shade`` 0 (white) to 1 (black).

    ``colour`` stands for the shade where it is given.
    """

    rings: tuple[tuple[Point, ...], ...]
    role: Role = "fill"
    shade: float = 0.12
    colour: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle in mm."""

    centre: Point
    radius: float
    role: Role = "outline"
    filled: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place. ``size`` is the height of the letters' em in mm, ``turn`` degrees."""

    at: Point
    text: str
    size: float = 3.5
    turn: float = 0.0
    anchor: Literal["start", "middle", "end"] = "start"
    role: Role = "text"


@dataclass(frozen=True, slots=True)
class Measured:
    """A dimension with arrows from ``start`` to ``end``, drawn ``offset`` mm to its left."""

    start: Point
    end: Point
    text: str
    offset: float = 8.0
    size: float = 3.0


@dataclass(frozen=True, slots=True)
class GrainArrow:
    """A double-headed arrow along the grain, ``length`` mm, turned by ``turn`` degrees."""

    centre: Point
    length: float
    turn: float = 0.0


@dataclass(frozen=True, slots=True)
class Arc:
    """A piece of a circle from ``start`` through ``sweep`` degrees (0 to the right, clockwise)."""

    centre: Point
    radius: float
    start: float
    sweep: float
    role: Role = "outline"


@dataclass(frozen=True, slots=True)
class Hatch:
    """An area filled with lines ``spacing`` mm apart, turned by ``turn`` degrees; even-odd."""

    rings: tuple[tuple[Point, ...], ...]
    spacing: float = 2.0
    turn: float = 45.0
    role: Role = "dimension"


@dataclass(frozen=True, slots=True)
class Cross:
    """A registration mark: a cross in a circle, to bring sheets or layers into line."""

    at: Point
    size: float = 6.0


@dataclass(frozen=True, slots=True)
class CheckBar:
    """A bar of 100 mm or 4 in to hold a ruler against; ``at`` is its top left corner.

    What it is stands below it, or ``beside`` it where it must be low.
    """

    at: Point
    unit: Literal["mm", "in"] = "mm"
    beside: bool = False


Item = Line | Shape | Circle | Label | Measured | GrainArrow | Arc | Hatch | Cross | CheckBar

Primitive = Line | Shape | Circle | Label
"""What every writer must be able to draw; ``layout`` turns all other items into these."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """A named picture of ``width`` by ``height`` mm.

    ``sizes`` are the quantities it is drawn from: where one waits for a gate, so does the
    drawing, and it says so. ``true_scale`` marks a template that is laid on the work: it is
    printed at 100 %.
    """

    name: str
    title: str
    width: float
    height: float
    items: tuple[Item, ...]
    true_scale: bool = False
    sizes: tuple[Quantity, ...] = ()
