"""Real colours in a drawing: checked, and nothing else gets into the file."""

from __future__ import annotations

import pytest

from foredge.contract import Drawing, Line, Shape
from foredge.drawing.style import number
from foredge.drawing.svg import to_svg

RING = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0))


def svg(*items: Line | Shape) -> str:
    return to_svg(Drawing("x", "x", 10, 10, items)).decode()


def test_an_area_and_a_line_have_their_own_colour_and_width() -> None:
    drawn = svg(Shape((RING,), colour="#1f5a4b"), Line(RING, colour="#aa0000", width=0.35))
    assert 'fill="#1f5a4b"' in drawn
    assert 'stroke="#aa0000" stroke-width="0.35"' in drawn


def test_without_a_colour_the_role_decides() -> None:
    drawn = svg(Shape((RING,), shade=1.0), Line(RING, "cut"))
    assert 'fill="#000000"' in drawn and 'stroke="#000" stroke-width="0.8"' in drawn


@pytest.mark.parametrize("colour", ["red", "#FFF", "#12345", '#000000" onload="x', "url(#x)"])
def test_what_is_no_colour_is_refused(colour: str) -> None:
    with pytest.raises(ValueError, match="is no colour"):
        svg(Shape((RING,), colour=colour))
    with pytest.raises(ValueError, match="is no colour"):
        svg(Line(RING, colour=colour))


@pytest.mark.parametrize(
    ("value", "written"),
    [(0.0, "0"), (-0.0, "0"), (12.5, "12.5"), (-3.25, "-3.25"), (100.0, "100"), (0.001, "0.001")],
)
def test_the_short_way_of_writing_a_number_says_the_same(value: float, written: str) -> None:
    assert number(value) == written
    assert number(value + 1e-12) == written
