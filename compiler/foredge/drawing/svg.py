"""A drawing as SVG 1.1 in real millimetres: one user unit is one millimetre.

Lines differ by weight and dashes, never by colour alone, so a black-and-white print says
the same. Words stay words.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from xml.sax.saxutils import escape, quoteattr

from foredge.display_number import decimal, exact
from foredge.drawing.layout import primitives
from foredge.drawing.model import Circle, Drawing, Label, Line, Point, Primitive, Role, Shape

FONTS = "Helvetica, Arial, 'DejaVu Sans', sans-serif"


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


def to_svg(drawing: Drawing) -> bytes:
    """``drawing`` as an SVG file, UTF-8, the same bytes for the same drawing."""
    width, height = number(drawing.width), number(drawing.height)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="{FONTS}">',
        f"<title>{text(drawing.title)}</title>",
        f'<rect width="{width}" height="{height}" fill="#fff"/>',
        *map(_element, primitives(drawing)),
        "</svg>",
    ]
    return ("\n".join(lines) + "\n").encode()


def number(value: float) -> str:
    """A coordinate to a thousandth of a millimetre; never ``-0``."""
    amount = exact(value)
    if amount is None:
        raise ValueError(f"{value} is no coordinate")
    return decimal(amount, 3)


def text(words: str) -> str:
    """Words for the inside of an element: escaped, without what XML cannot hold."""
    kept = (char for char in words if char.isprintable())
    return escape("".join(kept))


def _element(item: Primitive) -> str:
    match item:
        case Line():
            return (
                f'<path d="{_path([item.points], item.closed)}" fill="none"{_stroke(item.role)}/>'
            )
        case Shape():
            return (
                f'<path d="{_path(item.rings, True)}" fill="{_grey(item.shade)}" '
                f'fill-rule="evenodd"{_stroke(item.role)}/>'
            )
        case Circle():
            x, y = map(number, item.centre)
            fill = "#000" if item.filled else "none"
            radius = number(item.radius)
            return f'<circle cx="{x}" cy="{y}" r="{radius}" fill="{fill}"{_stroke(item.role)}/>'
        case Label():
            return _label(item)


def _path(rings: Iterable[tuple[Point, ...]], closed: bool) -> str:
    parts = []
    for ring in rings:
        points = " L".join(f"{number(x)} {number(y)}" for x, y in ring)
        parts.append(f"M{points}" + (" Z" if closed else ""))
    return " ".join(parts)


def _stroke(role: Role) -> str:
    stroke = STROKES[role]
    if not stroke.width:
        return ""
    words = f' stroke="#000" stroke-width="{number(stroke.width)}" stroke-linejoin="miter"'
    if stroke.dashes:
        words += f' stroke-dasharray="{" ".join(map(number, stroke.dashes))}"'
    if stroke.cap != "butt":
        words += f' stroke-linecap="{stroke.cap}"'
    return words


def _grey(shade: float) -> str:
    level = 255 - round(255 * Fraction(max(0.0, min(1.0, shade))))
    return f"#{level:02x}{level:02x}{level:02x}"


def _label(item: Label) -> str:
    x, y = map(number, item.at)
    turn = number(item.turn)
    turned = f' transform="rotate({turn} {x} {y})"' if turn != "0" else ""
    anchor = f" text-anchor={quoteattr(item.anchor)}" if item.anchor != "start" else ""
    size = number(item.size)
    return f'<text x="{x}" y="{y}" font-size="{size}"{anchor}{turned}>{text(item.text)}</text>'
