"""What of the finished book is seen: stages and parts say it, the core paints the picture.

Front, back and spine have the coordinates of an ornament: x away from the spine (on the spine:
from its left edge as you face it), y from head to tail, in mm. ``paste-down`` is the one inside
the front board, x from its fold. ``fore-edge`` is the closed book seen from there: x from the
front board's outer face to the back one's, y from the boards' head.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from foredge.contract.book import Book
from foredge.contract.solid_report import Rings
from foredge.contract.solids import ReliefShape
from foredge.drawing.model import Point, corners
from foredge.quantity import Quantity

Side = Literal["front", "back", "spine", "paste-down", "fore-edge"]
Layer = Literal["covering", "pattern", "letters", "closure"]
"""What lies on what, from below; coats and reliefs come between covering and letters."""

Texture = Literal["", "cloth", "leather", "paper", "metal"]
Lies = Literal["all", "hollows", "heights", "rims", "specks", "clear"]
"""Where a coat stays: all over, in the hollows, on the highest parts, on every rim, in specks,
or nowhere that is seen."""


@dataclass(frozen=True, slots=True)
class Stuff:
    """What something is made of, as far as it is seen.

    ``said`` is what the maker calls its colour by; where no such colour is known, ``row``
    stands for it: a row of a reference table, known to the table of colours too.
    """

    said: str = ""
    row: str = ""
    texture: Texture = ""


@dataclass(frozen=True, slots=True)
class Look:
    """Something on a face: pieces of one stuff, or lines of it ``width`` mm wide.

    Every piece is closed rings, even-odd; one ring without points is the whole face.
    """

    on: Side
    layer: Layer
    stuff: Stuff
    pieces: tuple[Rings, ...] = ()
    lines: tuple[tuple[Point, ...], ...] = ()
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Raised:
    """A relief: its solids under their dry ``skin`` (mm), in clay."""

    on: Side
    shapes: tuple[ReliefShape, ...]
    skin: Quantity


@dataclass(frozen=True, slots=True)
class EdgeLook:
    """A treatment of the block's edges; ``how`` it lies on them."""

    edges: tuple[str, ...]
    stuff: Stuff
    how: Literal["even", "specks", "metal", "burnt"] = "even"


@dataclass(frozen=True, slots=True)
class Inside:
    """What is seen when the cover is opened: a leaf of the ``block``, the ``end-paper``, or the
    cloth in the ``joint``."""

    what: Literal["block", "end-paper", "joint"]
    stuff: Stuff


Seen = Look | Raised | EdgeLook | Inside


def whole_face(on: Side, stuff: Stuff) -> Look:
    """``stuff`` all over a face, as its covering."""
    return Look(on, "covering", stuff, pieces=((),))


def stuff_of(book: Book, stock: str | None, row: str, texture: Texture = "") -> Stuff:
    """The stock item ``stock`` by its colour, else by its material; ``row`` where it has none."""
    item = book.stock.get(stock) if stock else None
    said = getattr(item, "colour", None) or ""
    return Stuff(said, getattr(item, "material", None) or row, texture)


def rectangle(x: float, y: float, width: float, height: float) -> Rings:
    """A piece with four corners."""
    return (corners(x, y, width, height),)
