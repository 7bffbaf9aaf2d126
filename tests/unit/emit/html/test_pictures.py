"""Only what draws gets from a drawing into the page."""

import pytest

from demo import Run, compiled
from foredge.contract import CheckBar, Drawing, Label, Line
from foredge.emit.html.pictures import inline, picture, pictures

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9">'


@pytest.mark.parametrize(
    "inner",
    [
        "<script>alert(1)</script>",
        '<image href="http://example.org/x.png"/>',
        '<path d="M0 0" onload="alert(1)"/>',
        '<path d="M0 0" style="fill:red"/>',
        "<style>*{}</style>",
        "<foreignObject/>",
        '<use href="#x"/>',
    ],
)
def test_what_acts_loads_or_styles_is_refused(inner: str) -> None:
    with pytest.raises(ValueError, match="the page takes no"):
        inline(f"{HEAD}{inner}</svg>".encode())


def test_the_size_is_left_to_the_page_and_words_stay_words() -> None:
    made = picture(
        Drawing("a", "A <b>", 90, 40, (Label((1, 1), "</svg><script>&"), Line(((0, 0), (9, 9)))))
    )
    assert 'viewBox="0 0 90 40"' in made.svg and "mm" not in made.svg
    assert "&lt;/svg&gt;&lt;script&gt;&amp;" in made.svg
    assert made.svg.count("<svg") == made.svg.count("</svg>") == 1
    assert made.title == "A <b>"


def test_a_bar_to_measure_by_does_not_stand_where_nothing_is_at_scale() -> None:
    plain = Drawing("a", "A", 200, 40, (Line(((0, 0), (9, 9))),), true_scale=True)
    barred = Drawing("a", "A", 200, 40, (*plain.items, CheckBar((5, 30))), true_scale=True)
    assert picture(barred).svg == picture(plain).svg


def test_every_drawing_of_a_demo_is_there_once() -> None:
    made = pictures(compiled(Run("saltmarsh-tide-book.yaml")))
    names = [one.name for one in made]
    assert len(names) == len(set(names)) > 10
    assert all("style=" not in one.svg and "xmlns" not in one.svg for one in made)
