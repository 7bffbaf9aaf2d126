"""The PDF holds the geometry of the SVG: both are read back and compared in millimetres."""

import io
import re
import xml.etree.ElementTree as ElementTree

import pytest
from pypdf import PdfReader

from demo import DEMOS, compiled
from foredge.drawing.model import (
    Arc,
    CheckBar,
    Circle,
    Cross,
    Drawing,
    GrainArrow,
    Hatch,
    Item,
    Label,
    Line,
    Measured,
    Shape,
)
from foredge.drawing.pdf import to_pdf
from foredge.drawing.pdf_text import MAIN, runs
from foredge.drawing.sheets import Page, whole
from foredge.drawing.svg import to_svg
from pdf_reading import Drawn, box, drawn

SVG = "{http://www.w3.org/2000/svg}"
NEAR = 0.002
"""mm: both writers round to 0.001 mm, and the PDF's matrix to six decimals."""

SQUARE = ((10.0, 10.0), (50.0, 10.0), (50.0, 50.0), (10.0, 50.0))
HOLE = ((20.0, 20.0), (20.0, 40.0), (40.0, 40.0), (40.0, 20.0))
EVERYTHING: tuple[Item, ...] = (
    Line(((1.25, 2.5), (30.125, 44.4444), (80, 7)), "cut"),
    Line(SQUARE, "fold", closed=True),
    Line(((5, 5), (60, 5)), "glue"),
    Line(((5, 8), (60, 8)), "outline", colour="#336699", width=1.5),
    Shape((SQUARE, HOLE), "outline", 0.3),
    Shape((SQUARE,), colour="#aa5500"),
    Circle((70.3, 60.1), 8.25, "outline"),
    Circle((30, 70), 2, "cut", filled=True),
    Label((20, 90), "Height ≈ 1⅜ in × ½", 3.5, 30, "middle"),
    Measured((10, 100), (90, 100), "80 mm"),
    GrainArrow((50, 50), 30, 90),
    Arc((40, 40), 20, 0, 270),
    Hatch((SQUARE, HOLE), 3, 30),
    Cross((100, 100)),
    CheckBar((5, 110), "in"),
    CheckBar((5, 120), beside=True),
)


def on_a_page(drawing: Drawing) -> Page:
    return Page(drawing.width, drawing.height, (), (whole(drawing),))


def read(drawing: Drawing) -> list[Drawn]:
    (page,) = PdfReader(io.BytesIO(to_pdf([on_a_page(drawing)], "x"))).pages
    return drawn(page)


def compare(drawing: Drawing) -> int:
    """Every path and circle of the SVG against the PDF's; how many there were."""
    root = ElementTree.fromstring(to_svg(drawing))
    shapes = [
        one
        for one in root
        if one.tag in (f"{SVG}path", f"{SVG}circle")
        and (one.get("stroke") or one.get("fill") != "none")
    ]
    in_pdf = read(drawing)
    assert len(in_pdf) == len(shapes)
    for svg, pdf in zip(shapes, in_pdf, strict=True):
        if svg.tag == f"{SVG}circle":
            x, y, r = (float(svg.attrib[key]) for key in ("cx", "cy", "r"))
            assert pdf.curved
            assert box(pdf) == pytest.approx((x - r, y - r, x + r, y + r), abs=NEAR)
        else:
            rings = [
                [tuple(map(float, pair)) for pair in re.findall(r"(-?[\d.]+) (-?[\d.]+)", part)]
                for part in svg.attrib["d"].split("M")[1:]
            ]
            assert [len(ring) for ring in pdf.rings] == [len(ring) for ring in rings]
            flat = [number for ring in rings for point in ring for number in point]
            told = [number for ring in pdf.rings for point in ring for number in point]
            assert told == pytest.approx(flat, abs=NEAR)
            assert all(pdf.closed) == svg.attrib["d"].endswith("Z")
            assert ("*" in pdf.paint) == (svg.get("fill-rule") == "evenodd")
        if svg.get("stroke"):
            assert pdf.width == pytest.approx(float(svg.attrib["stroke-width"]), abs=1e-4)
            dashes = [float(one) for one in svg.get("stroke-dasharray", "").split()]
            assert pdf.dashes == pytest.approx(dashes, abs=1e-4)
    return len(shapes)


def test_every_kind_of_item_is_the_same_in_both() -> None:
    assert compare(Drawing("x", "x", 210, 140, EVERYTHING)) > 30


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_every_drawing_of_a_demo_is_the_same_in_both(run) -> None:
    assert sum(compare(one) for one in compiled(run).whole.drawings) > 100


def test_page_is_as_large_as_its_drawing() -> None:
    data = to_pdf([on_a_page(Drawing("x", "x", 123.4, 45.6, ()))], "x")
    (page,) = PdfReader(io.BytesIO(data)).pages
    size = float(page.mediabox.width) * 25.4 / 72, float(page.mediabox.height) * 25.4 / 72
    assert size == pytest.approx((123.4, 45.6), abs=0.001)


def test_nothing_outside_the_window_is_printed() -> None:
    (shape,) = read(Drawing("x", "x", 50, 50, (Line(((-10, 25), (90, 25))),)))
    assert shape.clip is not None
    left, top, right, foot = box(Drawn(shape.clip, [], False, "", 0, [], None))
    assert (left, top, right, foot) == pytest.approx((0, 0, 50, 50), abs=NEAR)


def test_same_pages_same_bytes() -> None:
    page = on_a_page(Drawing("x", "x", 210, 140, EVERYTHING))
    first = to_pdf([page, page], "A title")
    assert first == to_pdf([page, page], "A title")
    assert b"/CreationDate (D:2000" in first  # fixed: no clock


def test_title_and_no_fitting_to_the_page() -> None:
    hostile = '</script><b>"& (a) \\ Жизнь'
    reader = PdfReader(io.BytesIO(to_pdf([on_a_page(Drawing("x", "x", 9, 9, ()))], hostile)))
    assert reader.metadata is not None and reader.metadata.title == hostile
    assert reader.trailer["/Root"]["/ViewerPreferences"]["/PrintScaling"] == "/None"


def said(text: str) -> str:
    return "".join(words for _, words in runs(text))


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("×≈½¼¾±°–—…‘’“”éüçñßøłžşœÅ", "×≈½¼¾±°–—…‘’“”éüçñßøłžşœÅ"),
        ("1⅜ in", "1 3/8 in"),
        ("⅞ in", "7/8 in"),
        ("a → b", "a -> b"),
        ("e\u0301", "é"),
        ("a\u0000\u001bb", "ab"),
        ("\U00010330", "[U+10330]"),
    ],
)
def test_every_character_is_printed_or_said(text: str, printed: str) -> None:
    assert said(text) == printed


def test_letters_the_main_font_lacks_come_from_another() -> None:
    assert said("Жизнь αβ 漢字") == "Жизнь αβ 漢字"
    assert {font for font, words in runs("Жизнь")} != {MAIN}
    assert [font for font, _ in runs("plain")] == [MAIN]


def test_words_can_be_searched() -> None:
    drawing = Drawing("x", "x", 100, 50, (Label((10, 10), "Height ≈ ½ × é"),))
    (page,) = PdfReader(io.BytesIO(to_pdf([on_a_page(drawing)], "x"))).pages
    assert "Height ≈ ½ × é" in page.extract_text()
