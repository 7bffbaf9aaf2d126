"""Small fonts made here for the tests of lettering: TrueType and OpenType with CFF outlines."""

from __future__ import annotations

from io import BytesIO
from typing import Any

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen

EM = 1000
CAP = 700
NAMES = {32: "space", ord("H"): "H", ord("O"): "O", ord("g"): "g", 0xE9: "eacute"}
LEFT = {"H": 50, "O": 50, "g": 60, "eacute": 60}
ADVANCE = {".notdef": 500, "space": 300, "H": 700, "O": 760, "g": 560, "eacute": 520}


def _box(pen: Any, left: int, bottom: int, right: int, top: int) -> None:
    pen.moveTo((left, bottom))
    pen.lineTo((left, top))
    pen.lineTo((right, top))
    pen.lineTo((right, bottom))
    pen.closePath()


def _h(pen: Any) -> None:
    points = [(50, 0), (50, 700), (150, 700), (150, 400), (550, 400), (550, 700), (650, 700)]
    points += [(650, 0), (550, 0), (550, 300), (150, 300), (150, 0)]
    pen.moveTo(points[0])
    for point in points[1:]:
        pen.lineTo(point)
    pen.closePath()


def _o(pen: Any, cubic: bool) -> None:
    """A ring: the outer oval one way round, the hole the other."""
    for half, wide, way in ((350, 330, 1), (230, 210, -1)):
        _oval(pen, 380, 350, wide, half, way, cubic)


def _oval(pen: Any, x: int, y: int, rx: int, ry: int, way: int, cubic: bool) -> None:
    quarters = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    if way < 0:
        quarters = [quarters[0], *reversed(quarters[1:])]
    at = [(x + rx * a, y + ry * b) for a, b in quarters]
    pen.moveTo(at[0])
    for (a, b), (c, d), (sx, sy), (ex, ey) in zip(
        quarters, quarters[1:] + quarters[:1], at, at[1:] + at[:1], strict=True
    ):
        corner = (x + rx * (a + c), y + ry * (b + d))
        if cubic:
            k = 0.5523
            pen.curveTo(
                (round(sx + k * (corner[0] - sx)), round(sy + k * (corner[1] - sy))),
                (round(ex + k * (corner[0] - ex)), round(ey + k * (corner[1] - ey))),
                (ex, ey),
            )
        else:
            pen.qCurveTo(corner, (ex, ey))
    pen.closePath()


def _draw(name: str, pen: Any, cubic: bool) -> None:
    if name == "H":
        _h(pen)
    elif name == "O":
        _o(pen, cubic)
    elif name == "g":
        _box(pen, 60, -200, 460, 480)
    elif name == "eacute":
        _box(pen, 60, 0, 460, 480)
        _box(pen, 220, 560, 300, 720)


def _built(builder: FontBuilder, cap: int) -> bytes:
    metrics = {name: (width, LEFT.get(name, 0)) for name, width in ADVANCE.items()}
    builder.setupHorizontalMetrics(metrics)
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupOS2(sCapHeight=cap)
    builder.setupNameTable({"familyName": "Prop Table", "styleName": "Regular"})
    builder.setupPost()
    stream = BytesIO()
    builder.font["head"].created = builder.font["head"].modified = 0
    builder.save(stream)
    return stream.getvalue()


def ttf(cap: int = CAP) -> bytes:
    """A TrueType font of quadratic curves: H, O, g, e acute and the space."""
    builder = FontBuilder(EM, isTTF=True)
    builder.setupGlyphOrder(list(ADVANCE))
    builder.setupCharacterMap(NAMES)
    glyphs = {}
    for name in ADVANCE:
        pen = TTGlyphPen(None)
        _draw(name, pen, cubic=False)
        glyphs[name] = pen.glyph()
    builder.setupGlyf(glyphs)
    return _built(builder, cap)


def otf() -> bytes:
    """The same letters as cubic curves in an OpenType font."""
    builder = FontBuilder(EM, isTTF=False)
    builder.setupGlyphOrder(list(ADVANCE))
    builder.setupCharacterMap(NAMES)
    strings = {}
    for name, width in ADVANCE.items():
        pen = T2CharStringPen(width, None)
        _draw(name, pen, cubic=True)
        strings[name] = pen.getCharString()
    builder.setupCFF("PropTable-Regular", {}, strings, {})
    return _built(builder, CAP)
