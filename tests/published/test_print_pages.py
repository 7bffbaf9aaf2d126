"""Printed templates measured on the file itself, with pypdf and with poppler's rasteriser.

Sizes of paper: ISO 216:2007, table 1 (A4 210 × 297 mm); ASME Y14.1-2020, size A
(8.5 × 11 in). PrintScaling: ISO 32000-1:2008, table 150.
"""

import io
import shutil
import subprocess
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

from demo import DEMOS, compiled
from foredge.drawing.contents import contents
from foredge.drawing.imposition import Laid, pictures, subject, templates
from foredge.drawing.model import Circle, Drawing, Label, Line, Shape
from foredge.drawing.page_frame import FULL_SIZE, framed
from foredge.drawing.paper import PAPERS
from foredge.drawing.pdf import to_pdf
from foredge.drawing.sheets import Page
from foredge.drawing.textbox import overlaps
from foredge.emit.templates_pdf import Templates, template_pages
from pdf_reading import MM, box, drawn

RUNS = pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
PAPER_MM = {"a4": (210.0, 297.0), "letter": (8.5 * 25.4, 11 * 25.4)}
UNPRINTABLE = 5.0
"""mm at the edge that a printer leaves white: common practice."""


@cache
def printed(run) -> tuple[str, bytes]:
    ((name, data),) = Templates().emit(compiled(run)).items()
    return name, data


def on_page(drawing: Drawing) -> Laid:
    return templates([subject(drawing)], PAPERS["a4"])


def big(width: float, height: float) -> Drawing:
    """A frame with a circle in the middle and a line from corner to corner."""
    ring = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    items = (
        Line(ring, "cut", closed=True),
        Circle((width / 2, height / 2), min(width, height) / 3),
        Line((ring[0], ring[2])),
    )
    return Drawing("big", "A big thing", width, height, items, true_scale=True)


def pages_of(drawing: Drawing) -> list[Page]:
    sheets = on_page(drawing).sheets
    return [framed(one, PAPERS["a4"], "A book", n, len(sheets)) for n, one in enumerate(sheets, 1)]


@RUNS
def test_paper_is_the_standards(run) -> None:
    name, data = printed(run)
    build = compiled(run)
    assert name == f"templates-{build.book.print_on}.pdf"
    for page in PdfReader(io.BytesIO(data)).pages:
        size = sorted((float(page.mediabox.width) * MM, float(page.mediabox.height) * MM))
        assert size == pytest.approx(PAPER_MM[build.book.print_on], abs=0.01)
        assert page.cropbox == page.mediabox and page.rotation == 0


@pytest.mark.parametrize("paper", PAPERS)
def test_either_paper_can_be_printed_on(paper: str) -> None:
    build = compiled(DEMOS[0])
    pages = template_pages(build, PAPERS[paper])
    assert {tuple(sorted((page.width, page.height))) for page in pages} == {PAPER_MM[paper]}


@RUNS
def test_every_page_has_both_bars_and_says_100_percent(run) -> None:
    _, data = printed(run)
    pages = PdfReader(io.BytesIO(data)).pages
    assert len(pages) > 3
    for page in pages:
        wide = [box(one) for one in drawn(page) if one.paint == "S" and one.closed == [True]]
        lengths = [right - left for left, top, right, foot in wide if abs(foot - top - 3) < 1e-3]
        assert any(abs(one - 100.0) < 0.001 for one in lengths)
        assert any(abs(one - 101.6) < 0.001 for one in lengths)
        assert FULL_SIZE in page.extract_text()


@RUNS
def test_nothing_lies_where_a_printer_cannot_print(run) -> None:
    """What is drawn, cut down to its clip, keeps off the edge of the paper."""
    for page in PdfReader(io.BytesIO(printed(run)[1])).pages:
        wide, high = float(page.mediabox.width) * MM, float(page.mediabox.height) * MM
        for one in drawn(page):
            left, top, right, foot = box(one)
            if one.clip is not None:
                xs = [x for ring in one.clip for x, _ in ring]
                ys = [y for ring in one.clip for _, y in ring]
                left, right = max(left, min(xs)), min(right, max(xs))
                top, foot = max(top, min(ys)), min(foot, max(ys))
            assert left >= UNPRINTABLE and top >= UNPRINTABLE
            assert right <= wide - UNPRINTABLE and foot <= high - UNPRINTABLE


@RUNS
def test_words_round_the_drawings_keep_clear(run) -> None:
    build = compiled(run)
    long = replace(build, book=replace(build.book, title='</script><b>"& ' + "Wide Word " * 19))
    for one in (build, long):
        for page in template_pages(one, PAPERS["letter"]):
            assert overlaps(Drawing("", "", page.width, page.height, page.under)) == []


@RUNS
def test_every_drawing_is_printed_and_templates_at_their_size(run) -> None:
    build = compiled(run)
    pages = template_pages(build, PAPERS["a4"])
    scales: dict[str, set[float]] = {}
    for page in pages[1:]:
        for placed in page.placed:
            if placed.drawing.title and set(page.marks) != {"What is on which page"}:
                scales.setdefault(placed.drawing.name, set()).add(placed.scale)
    for drawing in build.whole.drawings:
        assert drawing.name in scales
        if drawing.true_scale:
            assert 1.0 in scales[drawing.name]


def test_templates_of_the_demos_are_drawn_in_millimetres() -> None:
    """The punching strip's height on the page is the folded leaf's."""
    build = compiled(DEMOS[-1])
    height = build.quantity("text_block.folio.height").value
    page = next(
        page
        for page, told in zip(
            PdfReader(io.BytesIO(printed(DEMOS[-1])[1])).pages,
            template_pages(build, PAPERS["a4"]),
            strict=True,
        )
        if "Punching template" in told.marks
    )
    boxes = [box(one) for one in drawn(page)]
    assert any(
        abs(foot - top - height) < 0.002 and abs(right - left - 60) < 0.002
        for left, top, right, foot in boxes
    )


@pytest.mark.parametrize(("width", "height"), [(300, 200), (200, 560), (620, 480)])
def test_a_large_drawing_is_tiled_and_the_tiles_come_together(width: float, height: float) -> None:
    """Laid together by their crosses, the pages as printed show the whole drawing once over."""
    pages = pages_of(big(width, height))
    reader = PdfReader(io.BytesIO(to_pdf(pages, "x")))
    places: dict[tuple[float, float], int] = {}
    covered: set[tuple[int, int]] = set()
    for page, told in zip(reader.pages, pages, strict=True):
        shapes = drawn(page)
        (frame,) = (
            one for one in shapes if one.clip and len(one.rings[0]) == 4 and one.closed == [True]
        )
        left, top, right, foot = box(frame)
        assert (right - left, foot - top) == pytest.approx((width, height), abs=0.002)
        circles = [one for one in shapes if one.curved and not one.clip]
        for mark in circles:
            x0, y0, x1, y1 = box(mark)
            at = (round((x0 + x1) / 2 - left, 2), round((y0 + y1) / 2 - top, 2))
            places[at] = places.get(at, 0) + 1
        (clip,) = frame.clip or []
        xs, ys = [x - left for x, _ in clip], [y - top for _, y in clip]
        covered |= {
            (x, y)
            for x in range(0, int(width), 5)
            for y in range(0, int(height), 5)
            if min(xs) <= x <= max(xs) and min(ys) <= y <= max(ys)
        }
        assert f"of {len(pages)}: A big thing" in page.extract_text()
        assert told.placed[0].scale == 1.0
    assert len(pages) > 1
    assert len(covered) == len(range(0, int(width), 5)) * len(range(0, int(height), 5))
    assert places and all(count == 2 for count in places.values())


def test_a_drawing_that_fits_is_not_tiled() -> None:
    assert len(pages_of(big(186, 246))) == 1
    assert len(pages_of(big(270, 150))) == 1
    assert len(pages_of(big(270, 246))) == 2


def test_maps_of_tiles_name_every_tile() -> None:
    laid = on_page(big(620, 480))
    sheets = contents("A book", PAPERS["a4"], laid, Laid((), ()))
    words = {
        item.text
        for sheet in sheets
        for placed in sheet.placed
        for item in placed.drawing.items
        if isinstance(item, Label)
    }
    names = {sheet.tile.name for sheet in laid.sheets if sheet.tile}
    assert len(names) == len(laid.sheets) > 4 and names <= words
    assert f"pages {len(sheets) + 1} to {len(sheets) + len(laid.sheets)}" in words


def test_pictures_say_that_they_are_not_to_scale() -> None:
    drawing = replace(big(900, 400), true_scale=False)
    (sheet,) = pictures([subject(drawing)], PAPERS["a4"]).sheets
    assert sheet.placed[0].scale < 0.5
    assert "not to scale, reduced to " in sheet.title


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="needs poppler-utils")
@pytest.mark.parametrize("paper", PAPERS)
def test_check_bars_are_as_long_as_they_say_when_rasterised(paper: str, tmp_path: Path) -> None:
    """At 254 dpi a pixel is 0.1 mm: 100 mm are 1000 pixels, 4 in are 1016."""
    pages = template_pages(compiled(DEMOS[-1]), PAPERS[paper])[:3]
    (tmp_path / "x.pdf").write_bytes(to_pdf(pages, "x"))
    command = ["pdftoppm", "-r", "254", "-gray", "-aa", "no", "x.pdf", "x"]
    subprocess.run(command, cwd=tmp_path, check=True)
    files = sorted(tmp_path.glob("x-*.pgm"))
    assert len(files) == 3
    for file, page in zip(files, pages, strict=True):
        width, height, rows = pgm(file)
        assert abs(width - page.width * 10) <= 1 and abs(height - page.height * 10) <= 1
        bars = [item for item in page.under if type(item).__name__ == "CheckBar"]
        lengths = []
        for bar in bars:
            # From where the frame's left line starts to where its right one does: the last
            # field of each bar is white.
            row = rows[round((bar.at[1] + 1.5) * 10)]
            start = round(bar.at[0] * 10) - 5
            dark = [x for x in range(start, start + 1030) if row[x] < 128 <= row[x - 1]]
            lengths.append(dark[-1] - dark[0])
        assert lengths == [pytest.approx(1000, abs=1), pytest.approx(1016, abs=1)]


def pgm(file: Path) -> tuple[int, int, list[bytes]]:
    """Width, height and rows of a binary grey picture (netpbm's P5)."""
    kind, width, height, most, data = file.read_bytes().split(maxsplit=4)
    assert (kind, most) == (b"P5", b"255")
    wide, high = int(width), int(height)
    return wide, high, [data[row * wide : (row + 1) * wide] for row in range(high)]


def test_shapes_keep_their_holes() -> None:
    ring = ((0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0))
    hole = ((10.0, 10.0), (30.0, 10.0), (30.0, 30.0), (10.0, 30.0))
    pages = pages_of(Drawing("x", "x", 40, 40, (Shape((ring, hole)),), true_scale=True))
    (page,) = PdfReader(io.BytesIO(to_pdf(pages, "x"))).pages
    assert any("*" in one.paint and len(one.rings) == 2 for one in drawn(page))
