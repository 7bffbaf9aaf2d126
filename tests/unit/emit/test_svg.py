import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import pytest

from foredge.contract import Drawing
from foredge.drawing.textbox import overlaps
from foredge.emit.svg import Drawings, file_name
from unit.emit.sample import sample


def test_each_drawing_is_a_file() -> None:
    build = sample()
    files = Drawings().emit(build)
    assert list(files) == ["drawings/case-plan.svg"]
    root = ElementTree.fromstring(files["drawings/case-plan.svg"])
    assert root.attrib["width"] == "190mm"
    assert "board <1>" in [text.text for text in root.iter("{http://www.w3.org/2000/svg}text")]
    assert overlaps(build.whole.drawings[0]) == []


@pytest.mark.parametrize(
    ("name", "file"),
    [("case-plan", "case-plan"), ("../Up & away", "up-away"), ("...", "drawing"), ("A b", "a-b")],
)
def test_names_are_fit_for_files(name: str, file: str) -> None:
    assert file_name(Drawing(name, "x", 1, 1, ())) == file


def test_two_drawings_of_one_name_are_a_fault() -> None:
    build = sample()
    (drawing,) = build.whole.drawings
    twice = replace(build, whole=replace(build.whole, drawings=(drawing, drawing)))
    with pytest.raises(ValueError, match="two drawings"):
        Drawings().emit(twice)
