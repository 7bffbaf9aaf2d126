"""Letters out of a font file. Imported only where a spec names one: fontTools is heavy."""

from __future__ import annotations

import logging
import math
from io import BytesIO
from typing import Any

from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont

from foredge.contract import Point
from foredge_lettering.typeface import FontUnreadable, Glyph, Stroke

_STARTS = (b"\x00\x01\x00\x00", b"OTTO", b"true", b"ttcf")
"""How a TrueType, an OpenType, and a collection of them begin (OpenType specification,
'Organization of an OpenType font'). A packed web font is refused: it may unfold to any size."""

_CAP_BY_EM = 0.7

# fontTools remarks on oddities of a font in the log; without a handler they land on stderr.
logging.getLogger("fontTools").addHandler(logging.NullHandler())


class OutlineFont:
    """A TrueType or OpenType font; the first one of a collection.

    ``tolerance`` is how far, in cap heights, a polyline may leave its curve.
    """

    filled = True

    def __init__(self, path: str, data: bytes, tolerance: float) -> None:
        self.citation = f"the font file {path}"
        self._tolerance = tolerance
        self._known: dict[str, Glyph] = {}
        if not data.startswith(_STARTS):
            raise FontUnreadable("it begins like no TrueType or OpenType font")
        try:
            font: Any = TTFont(BytesIO(data), fontNumber=0, lazy=False)
            self._names: dict[int, str] = font.getBestCmap() or {}
            self._drawn: Any = font.getGlyphSet()
            self._cap = _cap_height(font, self._names, self._drawn)
        except Exception as failure:  # a broken font raises whatever its bytes lead to
            raise FontUnreadable(_reason(failure)) from failure
        if not self._names:
            raise FontUnreadable("it does not say which character is which letter")

    def glyph(self, char: str) -> Glyph | None:
        """The letter as closed rings; raises FontUnreadable where its outline is broken."""
        name = self._names.get(ord(char))
        if name is None:
            return None
        if name not in self._known:
            self._known[name] = self._draw(char, name)
        return self._known[name]

    def _draw(self, char: str, name: str) -> Glyph:
        pen = _Flat(self._drawn, self._tolerance * self._cap)
        try:
            self._drawn[name].draw(pen)
            advance = float(self._drawn[name].width)
        except Exception as failure:
            raise FontUnreadable(f"the letter {char!r}: {_reason(failure)}") from failure
        rings = tuple(self._scaled(ring) for ring in pen.rings if len(ring) > 2)
        return Glyph(rings, advance / self._cap)

    def _scaled(self, ring: list[Point]) -> Stroke:
        return tuple((x / self._cap, -y / self._cap) for x, y in ring)


def _reason(failure: Exception) -> str:
    text = " ".join(str(failure).split())
    return f"{type(failure).__name__}: {text}" if text else type(failure).__name__


def _cap_height(font: Any, names: dict[int, str], drawn: Any) -> float:
    """Height of the capitals: as the font says, else its H, else a share of the em."""
    said = getattr(font["OS/2"], "sCapHeight", 0) if "OS/2" in font else 0
    if said and said > 0:
        return float(said)
    name = names.get(ord("H"))
    if name is not None:
        pen = _Flat(drawn, 1.0)
        drawn[name].draw(pen)
        top = max((y for ring in pen.rings for _, y in ring), default=0.0)
        if top > 0:
            return top
    return float(font["head"].unitsPerEm) * _CAP_BY_EM


class _Flat(BasePen):  # type: ignore[misc]
    """Collects outlines as polylines that leave the curve by ``tolerance`` at most."""

    def __init__(self, glyphs: Any, tolerance: float) -> None:
        super().__init__(glyphs)
        self.rings: list[list[Point]] = []
        self._tolerance = tolerance

    def _moveTo(self, pt: Point) -> None:
        self.rings.append([pt])

    def _lineTo(self, pt: Point) -> None:
        if pt != self.rings[-1][-1]:
            self.rings[-1].append(pt)

    def _qCurveToOne(self, pt1: Point, pt2: Point) -> None:
        start = self.rings[-1][-1]
        # Chord error of n equal steps is at most |second derivative| / (8 n^2).
        bend = 2 * _bend(start, pt1, pt2)
        for t in self._steps(bend):
            s = 1 - t
            self._lineTo(
                _mix((s * s, start), (2 * s * t, pt1), (t * t, pt2)),
            )

    def _curveToOne(self, pt1: Point, pt2: Point, pt3: Point) -> None:
        start = self.rings[-1][-1]
        bend = 6 * max(_bend(start, pt1, pt2), _bend(pt1, pt2, pt3))
        for t in self._steps(bend):
            s = 1 - t
            self._lineTo(
                _mix((s**3, start), (3 * s * s * t, pt1), (3 * s * t * t, pt2), (t**3, pt3))
            )

    def _steps(self, bend: float) -> list[float]:
        count = min(1000, max(1, math.ceil(math.sqrt(bend / (8 * self._tolerance)))))
        return [place / count for place in range(1, count + 1)]

    def _closePath(self) -> None:
        ring = self.rings[-1]
        if len(ring) > 1 and ring[0] == ring[-1]:
            ring.pop()


def _bend(a: Point, b: Point, c: Point) -> float:
    return math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1])


def _mix(*parts: tuple[float, Point]) -> Point:
    return math.fsum(k * p[0] for k, p in parts), math.fsum(k * p[1] for k, p in parts)
