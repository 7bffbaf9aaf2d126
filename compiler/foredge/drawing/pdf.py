"""Printed sheets as PDF: the same primitives and pens as the SVG writer's.

Inside a drawing the numbers in the file are its own millimetres, y downwards, as in SVG; one
matrix a drawing turns them into points.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from io import BytesIO
from typing import Any

from foredge.drawing.layout import expand
from foredge.drawing.model import Circle, Label, Line, Point, Primitive, Shape
from foredge.drawing.pdf_text import runs, width
from foredge.drawing.sheets import Page, Placed
from foredge.drawing.style import paint, pen

POINT_MM = 25.4 / 72
"""ISO 32000-1:2008, 8.3.2.3: a unit of default user space is 1/72 in."""

_CAPS = {"butt": 0, "round": 1}
_JOINS = {"miter": 0, "round": 1}
_EVEN_ODD = 0


def to_pdf(pages: Sequence[Page], title: str) -> bytes:
    """``pages`` as a PDF file; the same bytes for the same pages.

    It asks the reader not to fit the page to the paper (ISO 32000-1:2008, table 150).
    """
    from reportlab.pdfgen.canvas import Canvas

    held = BytesIO()
    # Not compressed: builds of zlib differ in their bytes, and the output is compared.
    canvas: Any = Canvas(held, invariant=1, pageCompression=0, lang="en")
    canvas.setTitle(title)
    canvas.setAuthor("")
    canvas.setSubject("Templates at true scale: print at 100 %")
    canvas.setCreator("Foredge")
    canvas.setViewerPreference("PrintScaling", "None")
    for place, page in enumerate(pages, start=1):
        canvas.setPageSize((page.width / POINT_MM, page.height / POINT_MM))
        _marks(canvas, page, place)
        for placed in page.placed:
            _place(canvas, page, placed)
        _draw(canvas, page.height, (0.0, 0.0), 1.0, expand(page.under))
        canvas.showPage()
    canvas.save()
    return held.getvalue()


def _marks(canvas: Any, page: Page, place: int) -> None:
    for turn, mark in enumerate(page.marks):
        key = f"page-{place}-{turn}"
        canvas.bookmarkPage(key)
        canvas.addOutlineEntry(mark, key, 0)


def _place(canvas: Any, page: Page, placed: Placed) -> None:
    canvas.saveState()
    scale, window = placed.scale / POINT_MM, placed.window
    path = canvas.beginPath()
    left, top = placed.at[0] / POINT_MM, (page.height - placed.at[1]) / POINT_MM
    path.rect(left, top - window.height * scale, window.width * scale, window.height * scale)
    canvas.clipPath(path, stroke=0, fill=0)
    _draw(canvas, page.height, placed.origin, placed.scale, expand(placed.drawing.items))
    canvas.restoreState()


def _draw(
    canvas: Any, page_height: float, origin: Point, scale: float, items: Iterable[Primitive]
) -> None:
    """``items`` in their own mm, with their origin at ``origin`` on the page."""
    canvas.saveState()
    unit = scale / POINT_MM
    x, y = origin
    canvas.transform(unit, 0, 0, -unit, x / POINT_MM, (page_height - y) / POINT_MM)
    for item in items:
        if isinstance(item, Label):
            _words(canvas, item)
        else:
            _figure(canvas, item)
    canvas.restoreState()


def _figure(canvas: Any, item: Line | Shape | Circle) -> None:
    drawn = pen(item)
    fill = "" if isinstance(item, Line) else paint(item)
    if drawn is None and not fill:
        return
    if drawn is not None:
        canvas.setLineWidth(drawn.width)
        canvas.setDash(list(drawn.dashes))
        canvas.setLineCap(_CAPS[drawn.cap])
        canvas.setLineJoin(_JOINS[drawn.join])
        canvas.setStrokeColorRGB(*_rgb(drawn.colour))
    if fill:
        canvas.setFillColorRGB(*_rgb(fill))
    path = canvas.beginPath()
    match item:
        case Line():
            _ring(path, item.points, item.closed)
        case Shape():
            for ring in item.rings:
                _ring(path, ring, True)
        case Circle():
            path.circle(at(item.centre[0]), at(item.centre[1]), at(item.radius))
    canvas.drawPath(path, stroke=drawn is not None, fill=bool(fill), fillMode=_EVEN_ODD)


def _ring(path: Any, points: Sequence[Point], closed: bool) -> None:
    for place, (x, y) in enumerate(points):
        (path.lineTo if place else path.moveTo)(at(x), at(y))
    if closed:
        path.close()


def at(value: float) -> float:
    """A coordinate to a thousandth of a millimetre, as in SVG; never -0."""
    return round(value, 3) + 0.0


def _words(canvas: Any, item: Label) -> None:
    found = runs(item.text)
    if not found:
        return
    back = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    canvas.saveState()
    canvas.translate(at(item.at[0]), at(item.at[1]))
    canvas.rotate(item.turn)
    canvas.scale(1, -1)  # letters stand upright although y runs downwards
    canvas.setFillColorRGB(0, 0, 0)
    written = canvas.beginText(-back * width(item.text, item.size), 0)
    for font, told in found:
        written.setFont(font, item.size)
        written.textOut(told)
    canvas.drawText(written)
    canvas.restoreState()


def _rgb(colour: str) -> tuple[float, float, float]:
    red, green, blue = (int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5))
    return red, green, blue
