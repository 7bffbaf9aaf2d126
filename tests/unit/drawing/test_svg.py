import xml.etree.ElementTree as ElementTree
from itertools import combinations
from typing import get_args

import pytest

from foredge.drawing.model import Circle, Drawing, Item, Label, Line, Role, Shape
from foredge.drawing.style import STROKES, number
from foredge.drawing.svg import to_svg

SVG = "{http://www.w3.org/2000/svg}"


def drawn(*items: Item, title: str = "A title") -> ElementTree.Element:
    return ElementTree.fromstring(to_svg(Drawing("x", title, 120.5, 80, items)))


def test_one_user_unit_is_one_millimetre() -> None:
    root = drawn()
    assert root.attrib["width"] == "120.5mm"
    assert root.attrib["height"] == "80mm"
    assert root.attrib["viewBox"] == "0 0 120.5 80"


def test_text_stays_text_and_cannot_become_markup() -> None:
    hostile = '</text><script>"&\u0000\u001b'
    root = drawn(Label((1, 2), hostile, 4, -90, "middle"), title=hostile)
    assert root.findall(f".//{SVG}script") == []
    label = root.find(f"{SVG}text")
    assert label is not None
    assert label.text == '</text><script>"&'
    assert label.attrib["transform"] == "rotate(-90 1 2)"
    assert label.attrib["text-anchor"] == "middle"


def test_every_kind_of_line_can_be_told_apart_in_black_and_white() -> None:
    assert set(STROKES) == set(get_args(Role))
    lines = {role: stroke for role, stroke in STROKES.items() if role not in ("text", "fill")}
    for (_, one), (_, other) in combinations(lines.items(), 2):
        assert one != other
    colours = set()
    for role in lines:
        path = drawn(Line(((0, 0), (1, 1)), role)).find(f"{SVG}path")
        assert path is not None
        colours.add(path.attrib["stroke"])
    assert colours == {"#000"}


def test_geometry() -> None:
    root = drawn(
        Line(((0, 0), (10, 0), (10, 5)), closed=True),
        Shape((((0, 0), (4, 0), (4, 4)), ((1, 1), (2, 1), (2, 2))), shade=0.5),
        Circle((3, 4), 1.5, filled=True),
    )
    line, shape = root.findall(f"{SVG}path")
    assert line.attrib["d"] == "M0 0 L10 0 L10 5 Z"
    assert shape.attrib["d"] == "M0 0 L4 0 L4 4 Z M1 1 L2 1 L2 2 Z"
    assert shape.attrib["fill-rule"] == "evenodd"
    circle = root.find(f"{SVG}circle")
    assert circle is not None and circle.attrib["r"] == "1.5"


@pytest.mark.parametrize(
    ("value", "text"),
    [(-0.0001, "0"), (1 / 3, "0.333"), (12.0, "12"), (0.1 + 0.2, "0.3"), (-2.5, "-2.5")],
)
def test_coordinates(value: float, text: str) -> None:
    assert number(value) == text


def test_a_coordinate_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="no coordinate"):
        to_svg(Drawing("x", "x", 10, 10, (Line(((0, 0), (float("nan"), 1))),)))
