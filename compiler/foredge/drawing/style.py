"""How lines, areas and words look: one table for every writer.

Lines differ by weight and dashes, never by colour alone, so a black-and-white print says
the same.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from foredge.display_number import decimal, exact
from foredge.drawing.model import Circle, Line, Role, Shape


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line's width and dashes in mm."""

    width: float
    dashes: tuple[float, ...] = ()
    cap: str = "butt"


STROKES: dict[Role, Stroke] = {
    "outline": Stroke(0.5),
    "cut": Stroke(0.8),
    "fold": Stroke(0.35, (6, 1.5, 1, 1.5)),
    "hidden": Stroke(0.35, (2.5, 1.5)),
    "grain": Stroke(0.6),
    "dimension": Stroke(0.18),
    "glue": Stroke(0.6, (0.01, 1.5), "round"),
    "guide": Stroke(0.18, (1, 1)),
    "text": Stroke(0.25),
    "fill": Stroke(0),
}
"""How each role is drawn."""


@dataclass(frozen=True, slots=True)
class Pen:
    """What a line is drawn with: mm, ``#rrggbb``, and the shapes of its ends and corners."""

    width: float
    dashes: tuple[float, ...]
    cap: str
    join: str
    colour: str


def pen(item: Line | Shape | Circle) -> Pen | None:
    """What the edge of ``item`` is drawn with; None where its role has no line.

    A line of its own width or colour is solid, with round ends and corners.
    """
    own = STROKES[item.role]
    if isinstance(item, Line) and (item.colour or item.width):
        colour = sound(item.colour) if item.colour else BLACK
        dashes = () if item.width else own.dashes
        return Pen(item.width or own.width, dashes, "round", "round", colour)
    return Pen(own.width, own.dashes, own.cap, "miter", BLACK) if own.width else None


def paint(item: Shape | Circle) -> str:
    """What ``item`` is filled with, ``#rrggbb``; empty where it is not."""
    if isinstance(item, Circle):
        return BLACK if item.filled else ""
    return sound(item.colour) if item.colour else "#" + f"{grey(item.shade):02x}" * 3


BLACK = "#000000"
_COLOUR = re.compile(r"#[0-9a-f]{6}")


def sound(colour: str) -> str:
    """``colour`` if it is ``#rrggbb``; ValueError otherwise. Nothing else goes into a file."""
    if not _COLOUR.fullmatch(colour):
        raise ValueError(f"{colour!r} is no colour; write it #rrggbb, in small letters")
    return colour


def number(value: float) -> str:
    """A coordinate to a thousandth of a millimetre; never ``-0``."""
    if abs(value) < 1e6 and round(value, 3) == value:  # the many points of a picture: at once
        text = f"{value:.3f}".rstrip("0").rstrip(".")
        return "0" if text == "-0" else text
    amount = exact(value)
    if amount is None:
        raise ValueError(f"{value} is no coordinate")
    return decimal(amount, 3)


def grey(shade: float) -> int:
    """The brightness 0 to 255 of an area of ``shade`` 0 (white) to 1 (black)."""
    return 255 - round(255 * Fraction(max(0.0, min(1.0, shade))))


def words(text: str) -> str:
    """What can be written of a label: without control characters."""
    return "".join(char for char in text if char.isprintable())
