import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import pytest

from foredge.contract import LENGTH, Drawing
from foredge.drawing.textbox import overlaps
from foredge.emit.svg import Drawings, file_name, marked
from foredge.quantity import Origin, gate, leaf
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


@pytest.mark.parametrize("width", [40.0, 190.0])
def test_a_drawing_of_provisional_sizes_says_so_inside_its_sheet(width: float) -> None:
    estimate = leaf(146, LENGTH, "case.board.width", Origin("spec"))
    open_, read = (gate(estimate, known, "G2", "w", "w") for known in (None, estimate))
    plain = Drawing("template", "Template", width, 60, (), true_scale=True)
    told = marked(replace(plain, sizes=(open_,)))
    (line,) = told.items
    assert line.text == "Provisional, rests on G2: do not cut."
    assert overlaps(told) == []
    assert marked(replace(plain, sizes=(read,))).items == ()
    (line,) = marked(replace(plain, sizes=(open_,), true_scale=False)).items
    assert line.text == "Provisional, rests on G2."
    assert marked(plain) == plain


def test_two_drawings_of_one_name_are_a_fault() -> None:
    build = sample()
    (drawing,) = build.whole.drawings
    twice = replace(build, whole=replace(build.whole, drawings=(drawing, drawing)))
    with pytest.raises(ValueError, match="two drawings"):
        Drawings().emit(twice)
