"""The page on paper: A4 and Letter, nothing cut off, no controls, boxes to tick with a pencil."""

import io
import itertools

import pytest

from demo import DEMOS, Run, compiled

pypdf = pytest.importorskip("pypdf")

SALTMARSH = Run("saltmarsh-tide-book.yaml")
POINTS_A_MM = 72 / 25.4
PAPER = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
MARGIN_MM = 13.0


def printed(visit, address: str, paper: str) -> tuple[object, "pypdf.PdfReader"]:
    page = visit(address).page
    return page, pypdf.PdfReader(io.BytesIO(page.pdf(format=paper)))


@pytest.mark.parametrize("paper", PAPER)
@pytest.mark.parametrize(
    "run", [one for one in DEMOS if one.variant is None], ids=lambda run: run.spec
)
def test_every_word_stands_on_the_paper(visit, demo_pages, run, paper) -> None:
    _, pdf = printed(visit, demo_pages[run], paper)
    width, height = (side * POINTS_A_MM for side in PAPER[paper])
    margin = MARGIN_MM * POINTS_A_MM
    for sheet in pdf.pages:
        assert float(sheet.mediabox.width) == pytest.approx(width, abs=1.5)
        assert float(sheet.mediabox.height) == pytest.approx(height, abs=1.5)
        places: list[tuple[float, float]] = []

        def seen(text, matrix, text_matrix, font, size, places=places) -> None:
            if text.strip():
                x, y = text_matrix[4], text_matrix[5]
                places.append(
                    (
                        matrix[0] * x + matrix[2] * y + matrix[4],
                        matrix[1] * x + matrix[3] * y + matrix[5],
                    )
                )

        sheet.extract_text(visitor_text=seen)
        assert all(margin - 2 <= x <= width - margin + 2 for x, _ in places)
        assert all(0 <= y <= height for _, y in places)
    text = " ".join(" ".join(sheet.extract_text().split()) for sheet in pdf.pages)
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
    for opened in (False, True):
        page.evaluate(
            f"document.querySelectorAll('.more').forEach(one => {{ one.open = {str(opened).lower()}; }})"
        )
        pdf = pypdf.PdfReader(io.BytesIO(page.pdf(format="A4")))
        text = "".join(itertools.chain.from_iterable(sheet.extract_text() for sheet in pdf.pages))
        counts.append("text_block.leaf.thickness" in text)
    assert counts == [False, True]
