"""Lettering against the outside: written SVG files, drawing pens of fontTools, standards."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Callable
from io import BytesIO, StringIO
from pathlib import Path
from typing import Any

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.perimeterPen import PerimeterPen
from fontTools.pens.transformPen import TransformPen
from fontTools.svgLib.path import parse_path as draw_path
from fontTools.ttLib import TTFont
from svgpathtools import parse_path, svg2paths2

import letter_fonts
from foredge.contract import OrnamentResult
from foredge.drawing.style import STROKES
from foredge.drawing.svg import to_svg
from foredge_lettering.hershey import StrokeSet
from ornament_books import adorn, adorned, jobs, quantity

SVG = "{http://www.w3.org/2000/svg}"
LETTERS = f"{STROKES['outline'].width:g}"
"""The stroke width by which letters are told from guides in the file."""


def sheet(result: OrnamentResult, place: int = 0) -> str:
    return to_svg(result.work.drawings[place]).decode()


def letter_paths(svg: str) -> list[str]:
    return [
        path.attrib["d"]
        for path in ET.fromstring(svg).iter(f"{SVG}path")
        if path.attrib.get("stroke-width") == LETTERS
    ]


TEXTS = [
    "{use: lettering, text: [The Saltmarsh, Tide Book], letters: plain}",
    "{use: lettering, text: 'Tide & 1/4 moon?', letters: script}",
    "{use: lettering, text: Roman, letters: roman, box: {width: 120 mm, height: 60 mm}}",
    "{use: lettering, on: spine, text: TIDES, letters: italic}",
    "{use: lettering, text: of ropes and knots and bells, breaks: to-fit, tracking: 12 %}",
]


@pytest.mark.parametrize("item", TEXTS)
@pytest.mark.parametrize("place", [0, 1], ids=["sheet", "mirrored"])
def test_the_line_is_as_long_as_in_the_written_file(item: str, place: int) -> None:
    """Length of every path of the letters, measured by svgpathtools in the SVG as written."""
    result = adorn(adorned(item))
    paths = letter_paths(sheet(result, place))
    measured = sum(parse_path(d).length() for d in paths)
    # the file holds coordinates to 0.001 mm
    assert measured == pytest.approx(quantity(result, "line"), rel=1e-4)


@pytest.mark.parametrize("item", TEXTS[:2])
def test_two_readers_measure_the_same(item: str, tmp_path: Path) -> None:
    """fontTools draws the file's paths into its PerimeterPen; svgpathtools reads the file."""
    svg = sheet(adorn(adorned(item)))
    file = tmp_path / "trace.svg"
    file.write_text(svg, encoding="utf-8")
    paths, attributes, _ = svg2paths2(str(file))
    read = sum(
        path.length()
        for path, said in zip(paths, attributes, strict=True)
        if said.get("stroke-width") == LETTERS
    )
    pens = []
    for d in letter_paths(svg):
        pen = PerimeterPen(None)
        draw_path(d, _Open(pen))
        pens.append(pen.value)
    assert sum(pens) == pytest.approx(read, rel=1e-9)


class _Open:
    """Passes open paths on to a pen that closes what it gets: there and back is twice."""

    def __init__(self, pen: Any) -> None:
        self._pen = pen
        self.moveTo = self._start
        self._points: list[tuple[float, float]] = []

    def _start(self, at: tuple[float, float]) -> None:
        self._points = [at]

    def lineTo(self, at: tuple[float, float]) -> None:
        self._points.append(at)

    def endPath(self) -> None:
        for a, b in zip(self._points, self._points[1:], strict=False):
            self._pen.value += abs(complex(*a) - complex(*b))


@pytest.mark.parametrize("make", [letter_fonts.ttf, letter_fonts.otf], ids=["ttf", "otf"])
def test_outlines_have_the_length_and_area_that_the_font_itself_has(
    make: Callable[[], bytes], tmp_path: Path
) -> None:
    """The same letters drawn straight from the font into fontTools' own pens."""
    data, height = make(), 20.0
    (tmp_path / "prop.font").write_bytes(data)
    item = f"{{use: lettering, text: HOOg, font: prop.font, height: {height:g} mm}}"
    result = adorn(adorned(item, folder=tmp_path))
    perimeter, area = _by_pens(data, "HOOg", height / letter_fonts.CAP)
    assert quantity(result, "line") == pytest.approx(perimeter, rel=1e-3)
    assert quantity(result, "area") == pytest.approx(area, rel=1e-3)
    drawn = sum(
        parse_path(part + "Z").length()
        for d in letter_paths(sheet(result))
        for part in d.split("Z")
        if part.strip()
    )
    assert drawn == pytest.approx(perimeter, rel=1e-3)


def _by_pens(data: bytes, text: str, scale: float) -> tuple[float, float]:
    font = TTFont(BytesIO(data))
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    perimeter = area = 0.0
    for char in text:
        length, inside = PerimeterPen(glyphs, tolerance=1e-4), AreaPen(glyphs)
        for pen in (length, inside):
            glyphs[names[ord(char)]].draw(TransformPen(pen, (scale, 0, 0, scale, 0, 0)))
        perimeter += length.value
        area += abs(inside.value)
    return perimeter, area


@pytest.mark.parametrize("item", [*TEXTS, "{use: lettering, on: back, text: Tide}"])
def test_coordinates_are_millimetres_at_a_hundred_per_cent(item: str) -> None:
    """SVG 1.1, 7.2 and 7.7: with width="Nmm" and viewBox="0 0 N ..." a user unit is 1 mm."""
    result = adorn(adorned(item))
    for place in (0, 1):
        root = ET.parse(StringIO(sheet(result, place))).getroot()
        _, _, wide, high = root.attrib["viewBox"].split()
        assert (root.attrib["width"], root.attrib["height"]) == (f"{wide}mm", f"{high}mm")
    panel = (20.0, 211.0) if "spine" in item else (147.0, 211.0)
    assert panel in [_extent(d) for d in _paths(root)]
    bar = [_extent(d) for d in _paths(root)]
    assert (100.0, 3.0) in bar


def _paths(root: ET.Element) -> list[str]:
    return [path.attrib["d"] for path in root.iter(f"{SVG}path")]


def _extent(d: str) -> tuple[float, float]:
    left, right, top, bottom = parse_path(d).bbox()
    return round(right - left, 3), round(bottom - top, 3)


def test_capitals_in_the_file_are_as_high_as_the_sheet_says() -> None:
    result = adorn(adorned("{use: lettering, text: HIH, height: 17.5 mm}"))
    extents = [parse_path(d).bbox() for d in letter_paths(sheet(result))]
    assert max(b for *_, b in extents) - min(t for *_, t, _ in extents) == pytest.approx(17.5)


def test_spine_titles_descend_and_keep_the_tail_free() -> None:
    """ISO 6357:1985: the title on a spine runs from head to tail, and at least 30 mm are kept
    free at the tail (after an encyclopaedia's account of the standard).
    """
    book = adorned("{use: lettering, on: spine, text: THE SALTMARSH TIDE BOOK}")
    (job,) = jobs(book)
    assert job.part.options.direction == "down"
    svg = sheet(adorn(book))
    ends = [parse_path(d) for d in letter_paths(svg)]
    root = ET.fromstring(svg)
    spine = next(d for d in _paths(root) if _extent(d) == (20.0, 211.0))
    _, _, _, tail = parse_path(spine).bbox()
    lowest = max(path.bbox()[3] for path in ends)
    assert tail - lowest >= 30.0
    # The T that comes first stands above the K that comes last, and lies on its side: its
    # stem, the longer stroke, runs across the spine from right (the letters' top) to left.
    assert ends[0].bbox()[2] < ends[-1].bbox()[2]
    stem = ends[0]
    assert stem.start.imag == pytest.approx(stem.end.imag)
    assert stem.start.real > stem.end.real


def test_a_capital_i_is_one_straight_line() -> None:
    """Simplex roman I of the Hershey sets: one stroke, 21 units from cap line to base line
    (A. V. Hershey, Calligraphy for Computers, 1967; National Bureau of Standards, A
    Contribution to Computer Typesetting Techniques, 1976, gives the same tables). From memory.
    """
    glyph = StrokeSet("plain").glyph("I")
    assert glyph is not None
    ((top, foot),) = glyph.strokes
    assert top[0] == foot[0]
    assert foot[1] - top[1] == pytest.approx(21 / 21)


def test_lines_of_letters_stand_as_far_apart_as_on_signs() -> None:
    """ADA and ABA Accessibility Standards, 2010, 703.5.9: 135 to 170 per cent of the height."""
    result = adorn(adorned("{use: lettering, text: [H, H], height: 10 mm}"))
    apart = quantity(result, "depth") - quantity(result, "stroke") - 10
    assert 13.5 <= apart <= 17


@pytest.mark.parametrize(("stroke", "thin"), [(0.9, True), (1.0, False)])
def test_a_line_thinner_than_on_signs_is_noted(stroke: float, thin: bool) -> None:
    """The same, 703.5.7: the stroke is 10 per cent of the height at least."""
    item = f"{{use: lettering, text: H, height: 10 mm, stroke: {stroke} mm, tool: fine-brush}}"
    rules = [problem.rule for problem in adorn(adorned(item)).work.problems]
    assert ("letter-thin" in rules) is thin


@pytest.mark.parametrize(("width", "narrow"), [(15.5, True), (16.0, False)])
def test_a_narrow_spine_takes_no_word_across(width: float, narrow: bool) -> None:
    """Douglas Cockerell, Bookbinding, and the Care of Books, 1901, p. 219: a back of 5/8 in
    is too narrow for a long word across it."""
    from ornament_books import cased

    book = adorned("{use: lettering, on: spine, text: T, direction: across}")
    rules = [p.rule for p in adorn(book, cased(spine__width=width)).work.problems]
    assert ("spine-title-across" in rules) is narrow
