"""How much room words take, on the safe side, without a font at hand.

The widths are at least those of Helvetica, Arial, Liberation Sans and DejaVu Sans (the
widest of them), so words that do not touch here do not touch on the page.
"""

from __future__ import annotations

import math
import unicodedata
from dataclasses import dataclass
from itertools import combinations

from foredge.drawing.layout import primitives
from foredge.drawing.model import Drawing, Label, Point

ASCENT, DESCENT = 0.8, 0.25
"""Above and below the line on which the letters stand, in ems."""

_WIDTHS = (
    ("ijlI'|.,:;", 0.38),
    (" !()[]/\\-frt", 0.46),
    ('"*°ºª', 0.52),
    ("csvxyzkJLF?_", 0.60),
    ("abdeghnopquEPSTYZKAVXBCR0123456789$£€{}§", 0.71),
    ("DGHNOQUMw&+=×÷±~≈≤≥^#<>→←↔", 0.92),
    ("mW%@…—–½¼¾⅛⅜⅝⅞", 1.02),
    ("ÆŒæœ", 1.08),
)
_KNOWN = {char: width for chars, width in _WIDTHS for char in chars}
_OTHER, _WIDE = 1.02, 1.05

Corners = tuple[Point, Point, Point, Point]


@dataclass(frozen=True, slots=True)
class TextBox:
    """Words and the four corners of the room they take."""

    text: str
    corners: Corners


def text_width(words: str, size: float) -> float:
    """Width of ``words`` in mm at an em of ``size`` mm; never less than what is printed."""
    return size * math.fsum(map(_char_width, words))


def _char_width(char: str) -> float:
    known = _KNOWN.get(char)
    if known is not None:
        return known
    if unicodedata.combining(char):
        return 0.0
    base = unicodedata.normalize("NFD", char)[0]
    if base in _KNOWN:
        return _KNOWN[base]
    return _WIDE if unicodedata.east_asian_width(char) in "WF" else _OTHER


def label_box(label: Label) -> TextBox:
    """The room a label takes, turned as it is."""
    width = text_width(label.text, label.size)
    left = {"start": 0.0, "middle": -width / 2, "end": -width}[label.anchor]
    top, bottom = -ASCENT * label.size, DESCENT * label.size
    cos, sin = math.cos(math.radians(label.turn)), math.sin(math.radians(label.turn))
    x, y = label.at

    def turned(dx: float, dy: float) -> Point:
        return x + dx * cos - dy * sin, y + dx * sin + dy * cos

    right = left + width
    corners = (turned(left, top), turned(right, top), turned(right, bottom), turned(left, bottom))
    return TextBox(label.text, corners)


def overlaps(drawing: Drawing) -> list[str]:
    """What is wrong with the words of ``drawing``: on top of each other, or off the page."""
    labels = [item for item in primitives(drawing) if isinstance(item, Label) and item.text]
    boxes = [label_box(label) for label in labels]
    found = [
        f"'{box.text}' leaves the page"
        for box in boxes
        if any(
            not (-1e-6 <= x <= drawing.width + 1e-6 and -1e-6 <= y <= drawing.height + 1e-6)
            for x, y in box.corners
        )
    ]
    found += [
        f"'{one.text}' and '{other.text}' overlap"
        for one, other in combinations(boxes, 2)
        if _touch(one.corners, other.corners)
    ]
    return found


def clash(one: Label, other: Label) -> bool:
    """Whether two labels lie on top of each other."""
    return _touch(label_box(one).corners, label_box(other).corners)


def _touch(one: Corners, other: Corners) -> bool:
    """Whether two rectangles share some area: no line along a side separates them."""
    for box in (one, other):
        for (ax, ay), (bx, by) in ((box[0], box[1]), (box[1], box[2])):
            axis = (bx - ax, by - ay)
            low_1, high_1 = _extent(one, axis)
            low_2, high_2 = _extent(other, axis)
            slack = 1e-6 * math.hypot(*axis)
            if high_1 <= low_2 + slack or high_2 <= low_1 + slack:
                return False
    return True


def _extent(box: Corners, axis: Point) -> tuple[float, float]:
    along = [x * axis[0] + y * axis[1] for x, y in box]
    return min(along), max(along)
