"""A drawing as SVG 1.1 in real millimetres: one user unit is one millimetre.

Words stay words.
"""

from __future__ import annotations

from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from foredge.drawing.layout import primitives
from foredge.drawing.model import Circle, Drawing, Label, Line, Point, Primitive, Shape
from foredge.drawing.style import BLACK, number, paint, pen, words as printable

FONTS = "Helvetica, Arial, 'DejaVu Sans', sans-serif"


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


def text(words: str) -> str:
    """Words for the inside of an element: escaped, without what XML cannot hold."""
    return escape(printable(words))


def _element(item: Primitive) -> str:
    match item:
        case Line():
            return f'<path d="{_path([item.points], item.closed)}" fill="none"{_stroke(item)}/>'
        case Shape():
            return (
                f'<path d="{_path(item.rings, True)}" fill="{paint(item)}" '
                f'fill-rule="evenodd"{_stroke(item)}/>'
            )
        case Circle():
            x, y = map(number, item.centre)
            fill = "#000" if item.filled else "none"
            radius = number(item.radius)
            return f'<circle cx="{x}" cy="{y}" r="{radius}" fill="{fill}"{_stroke(item)}/>'
        case Label():
            return _label(item)


def _path(rings: Iterable[tuple[Point, ...]], closed: bool) -> str:
    parts = []
    for ring in rings:
        points = " L".join(f"{number(x)} {number(y)}" for x, y in ring)
        parts.append(f"M{points}" + (" Z" if closed else ""))
    return " ".join(parts)


def _stroke(item: Line | Shape | Circle) -> str:
    drawn = pen(item)
    if drawn is None:
        return ""
    colour = "#000" if drawn.colour == BLACK else drawn.colour
    words = f' stroke="{colour}" stroke-width="{number(drawn.width)}"'
    words += f' stroke-linejoin="{drawn.join}"'
    if drawn.dashes:
        words += f' stroke-dasharray="{" ".join(map(number, drawn.dashes))}"'
    if drawn.cap != "butt":
        words += f' stroke-linecap="{drawn.cap}"'
    return words


def _label(item: Label) -> str:
    x, y = map(number, item.at)
    turn = number(item.turn)
    turned = f' transform="rotate({turn} {x} {y})"' if turn != "0" else ""
    anchor = f" text-anchor={quoteattr(item.anchor)}" if item.anchor != "start" else ""
    size = number(item.size)
    return f'<text x="{x}" y="{y}" font-size="{size}"{anchor}{turned}>{text(item.text)}</text>'
