"""Letters in cap heights: the built-in sets, and outlines out of a font file."""

from __future__ import annotations

import math
import warnings
from contextlib import suppress

import pytest
from hypothesis import given, settings, strategies as st

import letter_fonts
from foredge_lettering.hershey import SETS, StrokeSet
from foredge_lettering.outline import OutlineFont
from foredge_lettering.typeface import FontUnreadable, area_of, length_of

TTF, OTF = letter_fonts.ttf(), letter_fonts.otf()


@pytest.mark.parametrize("name", SETS)
def test_every_set_has_all_of_ascii_on_a_baseline_at_nothing(name: str) -> None:
    face = StrokeSet(name)
    for code in range(32, 127):
        glyph = face.glyph(chr(code))
        assert glyph is not None and glyph.advance > 0
    capital = face.glyph("H")
    assert capital is not None
    ys = [y for stroke in capital.strokes for _, y in stroke]
    assert (min(ys), max(ys)) == pytest.approx((-1, 0))


def test_plain_i_is_one_line_as_high_as_a_capital() -> None:
    glyph = StrokeSet("plain").glyph("I")
    assert glyph is not None
    (stroke,) = glyph.strokes
    assert length_of((stroke,), closed=False) == pytest.approx(1)


def test_sets_know_no_more_than_ascii_but_take_typographic_quotes() -> None:
    face = StrokeSet("roman")
    assert face.glyph("é") is None
    assert face.glyph("\x7f") is None
    assert face.glyph("’") == face.glyph("'")


@pytest.mark.parametrize("data", [TTF, OTF], ids=["quadratic", "cubic"])
def test_outlines_are_in_cap_heights_on_the_baseline(data: bytes) -> None:
    face = OutlineFont("prop.ttf", data, 0.001)
    glyph = face.glyph("H")
    assert glyph is not None and glyph.advance == pytest.approx(1)
    ys = [y for ring in glyph.strokes for _, y in ring]
    assert (min(ys), max(ys)) == pytest.approx((-1, 0))
    space = face.glyph(" ")
    assert space is not None and space.strokes == () and space.advance == pytest.approx(3 / 7)
    assert face.glyph("x") is None


def test_a_hole_is_taken_off_the_area() -> None:
    glyph = OutlineFont("prop.otf", OTF, 1e-4).glyph("O")
    assert glyph is not None
    ovals = math.pi * (350 * 330 - 230 * 210) / 700**2
    assert area_of(glyph.strokes) == pytest.approx(ovals, rel=2e-3)


@given(st.floats(0.001, 0.05))
@settings(max_examples=20, deadline=None)
def test_a_polyline_leaves_its_curve_by_no_more_than_asked(tolerance: float) -> None:
    fine = OutlineFont("prop.otf", OTF, 1e-5).glyph("O")
    rough = OutlineFont("prop.otf", OTF, tolerance).glyph("O")
    assert fine is not None and rough is not None
    for curve, chain in zip(fine.strokes, rough.strokes, strict=True):
        chords = list(zip(chain, (*chain[1:], chain[0]), strict=True))
        assert max(min(_off(p, *chord) for chord in chords) for p in curve) <= tolerance + 1e-4


def _off(p: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
    t = min(1.0, max(0.0, t))
    return math.dist(p, (a[0] + t * dx, a[1] + t * dy))


def test_without_a_cap_height_the_h_is_measured() -> None:
    glyph = OutlineFont("prop.ttf", letter_fonts.ttf(cap=0), 0.001).glyph("H")
    assert glyph is not None and glyph.advance == pytest.approx(1)


@pytest.mark.parametrize("data", [b"", b"wOFF" + TTF, b"%PDF-1.7", TTF[:12], TTF[:400]])
def test_what_is_no_font_is_refused_with_a_reason(data: bytes) -> None:
    with pytest.raises(FontUnreadable, match=r"\w"):
        OutlineFont("prop.ttf", data, 0.001).glyph("O")


@given(st.integers(0, len(TTF) - 1), st.integers(0, 255))
@settings(max_examples=150, deadline=None)
def test_a_damaged_font_never_raises_anything_else(place: int, byte: int) -> None:
    damaged = TTF[:place] + bytes([byte]) + TTF[place + 1 :]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        with suppress(FontUnreadable):
            OutlineFont("prop.ttf", damaged, 0.001).glyph("O")
