"""The page on paper: A4 and Letter, nothing cut off, no controls, boxes to tick with a pencil."""

import html
import io
import re
import shutil
import subprocess

import pytest

from browser_help import needed, without
from demo import DEMOS, Run, compiled

pypdf = needed("pypdf")

SALTMARSH = Run("saltmarsh-tide-book.yaml")
POINTS_A_MM = 72 / 25.4
PAPER = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
MARGIN_MM = 13.0
WORD = re.compile(
    r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)</word>'
)


def words_of(pdf: bytes) -> list[list[tuple[str, float, float, float, float]]]:
    """The words of each sheet with their boxes in points, as poppler's pdftotext finds them."""
    found = shutil.which("pdftotext")
    if found is None:
        without("there is no pdftotext; on Debian: apt-get install poppler-utils")
    done = subprocess.run([found, "-bbox", "-", "-"], input=pdf, capture_output=True, check=True)
    sheets: list[list[tuple[str, float, float, float, float]]] = []
    for line in done.stdout.decode().splitlines():
        if "<page " in line:
            sheets.append([])
        elif match := WORD.search(line):
            sheets[-1].append((html.unescape(match[5]), *map(float, match.groups()[:4])))
    return sheets


@pytest.mark.parametrize("paper", PAPER)
@pytest.mark.parametrize(
    "run", [one for one in DEMOS if one.variant is None], ids=lambda run: run.spec
)
def test_every_word_stands_on_the_paper(visit, demo_pages, run, paper) -> None:
    pdf = visit(demo_pages[run]).page.pdf(format=paper)
    width, height = (side * POINTS_A_MM for side in PAPER[paper])
    margin = MARGIN_MM * POINTS_A_MM
    for sheet in pypdf.PdfReader(io.BytesIO(pdf)).pages:
        assert float(sheet.mediabox.width) == pytest.approx(width, abs=1.5)
        assert float(sheet.mediabox.height) == pytest.approx(height, abs=1.5)
    sheets = words_of(pdf)
    beyond = [
        word
        for sheet in sheets
        for word, left, top, right, bottom in sheet
        if left < margin - 2 or right > width - margin + 2 or top < 0 or bottom > height
    ]
    assert beyond == []
    text = " ".join(word for sheet in sheets for word, *_ in sheet)
    for operation in compiled(run).order:
        assert operation.title in text


@pytest.mark.parametrize("paper", PAPER)
@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_nothing_is_wider_than_the_paper_or_higher_than_a_sheet(
    visit, demo_pages, run, paper
) -> None:
    wide, high = ((side - 2 * 14) * 96 / 25.4 for side in PAPER[paper])
    page = visit(demo_pages[run], viewport={"width": int(wide), "height": int(high)}).page
    page.emulate_media(media="print")
    assert page.evaluate("document.documentElement.scrollWidth") <= int(wide)
    sizes = page.evaluate(
        """[...document.querySelectorAll('figure, .stop, .measure, .reading, tr')]
            .filter(one => one.offsetParent).map(one => one.getBoundingClientRect())
            .map(box => [box.right, box.height])"""
    )
    assert sizes and all(right <= wide + 1 and height <= high for right, height in sizes)


def test_controls_stay_off_the_paper_and_boxes_are_boxes(visit, demo_pages) -> None:
    page = visit(demo_pages[SALTMARSH], color_scheme="dark").page
    page.locator(".whole").first.check()
    page.emulate_media(media="print")
    shown = "one => one.offsetParent !== null"
    controls = page.locator("button:not(.n), nav, textarea, .bar, dialog, input[type=radio]")
    assert not any(controls.evaluate_all(f"all => all.map({shown})"))
    box = page.locator(".lines-of-work input").nth(8)
    style = box.evaluate(
        "one => { const s = getComputedStyle(one); return [s.borderTopStyle, "
        "s.borderTopColor, s.backgroundColor, one.offsetWidth]; }"
    )
    assert style[:3] == ["solid", "rgb(0, 0, 0)", "rgb(255, 255, 255)"] and style[3] >= 14
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"


def test_only_open_parts_of_the_numbers_are_printed(visit, demo_pages) -> None:
    page = visit(demo_pages[SALTMARSH]).page
    counts = []
    for opened in ("false", "true"):
        page.evaluate(
            f"document.querySelectorAll('.more').forEach(one => {{ one.open = {opened}; }})"
        )
        words = {word for sheet in words_of(page.pdf(format="A4")) for word, *_ in sheet}
        counts.append("text_block.leaf.thickness" in words)
    assert counts == [False, True]
