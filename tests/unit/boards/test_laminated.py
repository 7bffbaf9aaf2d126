"""Laminated boards: layers, thickness, blanks, glue, and what is wrong with a stack."""

from __future__ import annotations

from dataclasses import replace

import pytest

from case_books import book, mm
from foredge.contract import BoardsJob, BoardsResult, Book
from foredge.quantity import band
from foredge.testing import check_plugin, check_result
from foredge_boards.laminated import PLUGIN

COVERING = "  covering: {use: full-cloth, material: bought-cloth}\n"


def boards(options: str) -> tuple[Book, BoardsJob]:
    of = book(f"case:\n  boards: {{use: laminated, {options}}}\n{COVERING}")
    part = of.sections["case"].boards
    thickness = PLUGIN.thickness(of, part)
    return of, BoardsJob(of, part, mm(147, "width"), mm(211, "height"), thickness)


def make(options: str) -> BoardsResult:
    result = PLUGIN.make(boards(options)[1])
    check_result(result.work)
    return result


def rules(options: str) -> set[str]:
    return {problem.rule for problem in make(options).work.problems}


def layers(*names: str) -> str:
    return "layers: [" + ", ".join(f"{{stock: {name}}}" for name in names) + "]"


def test_contract() -> None:
    check_plugin(PLUGIN)


@pytest.mark.parametrize(("wanted", "count"), [("2 mm", 5), ("1.8 mm", 4), ("3 mm", 7)])
def test_count_of_layers(wanted: str, count: int) -> None:
    # Cereal carton 0.45 mm: the count is the thickness wanted over one card, rounded up.
    result = make(f"card: cereal, thickness: {wanted}")
    assert result.work.quantity("case.layers").value == count
    (blank,) = [piece for piece in result.work.pieces if piece.blank]
    assert blank.count.value == 2 * count


def test_thickness_is_layers_and_glue() -> None:
    of, job = boards(layers("cereal", "cereal"))
    thickness = PLUGIN.thickness(of, job.part)
    # Two layers of 0.45 mm and one film of glue of 0.04 mm.
    assert thickness.value == pytest.approx(2 * 0.45 + 0.04)
    wide = band(thickness)
    assert wide.low < 0.9 and wide.high > 1.0


def test_a_board_once_cut_keeps_its_count() -> None:
    of, job = boards("card: cereal, thickness: 3 mm")
    wide = band(PLUGIN.thickness(of, job.part))
    # Seven layers of 0.38 to 0.55 mm: were the count to follow, the band would be far narrower.
    assert wide.high > 7 * 0.52


def test_corrugated_core_is_crushed() -> None:
    of, job = boards(layers("cereal", "flute", "cereal"))
    # B flute 3 mm, 15 % lost in the press; two cartons of 0.45 mm, two films of 0.04 mm.
    assert PLUGIN.thickness(of, job.part).value == pytest.approx(3 * 0.85 + 0.9 + 0.08)


def test_corrugated_edges_are_wrapped() -> None:
    result = make(layers("cereal", "flute", "cereal"))
    assert result.dressed == "case.wrap-edges"
    strips = [piece for piece in result.work.pieces if piece.name.startswith("case.edge_wrap")]
    assert [piece.count.value for piece in strips] == [4, 4]
    assert [piece.height.value for piece in strips] == [211, 147]
    assert strips[0].width.value == pytest.approx(3.53 + 2 * 15, abs=0.5)
    assert make(layers("cereal", "cereal")).dressed == ""


def test_blanks_are_larger_than_the_board() -> None:
    result = make(layers("cereal", "shoe-lid", "cereal"))
    blanks = {piece.stock: piece for piece in result.work.pieces if piece.blank}
    assert blanks["cereal"].count.value == 4
    assert blanks["shoe-lid"].count.value == 2
    for blank in blanks.values():
        assert (blank.width.value, blank.height.value) == (152, 216)
        assert blank.trimmed_to == "case.board"
        assert blank.grain == "height"


def test_a_crossing_layer_turns_its_piece() -> None:
    result = make("layers: [{stock: cereal}, {stock: shoe-lid, grain: across}, {stock: cereal}]")
    blanks = {piece.stock: piece for piece in result.work.pieces if piece.blank}
    assert blanks["shoe-lid"].grain == "width"
    assert blanks["cereal"].grain == "height"
    assert "board-cross-grain-even" not in {p.rule for p in result.work.problems}


def test_spine_strip_of_the_same_board() -> None:
    _, job = boards(layers("cereal", "cereal"))
    result = PLUGIN.make(replace(job, spine=mm(19, "spine")))
    pieces = {piece.name: piece for piece in result.work.pieces}
    assert pieces["case.spine"].width.value == 19
    assert pieces["case.spine_layer"].trimmed_to == "case.spine"
    assert pieces["case.spine_layer"].count.value == 2


def test_glue_on_both_meeting_faces() -> None:
    result = make(layers("cereal", "cereal", "cereal"))
    operation = next(o for o in result.work.operations if o.id == "case.laminate-boards")
    # 2 boards, 2 joins, 2 faces of 152 x 216 mm at 100 g/m2, and a quarter to spare.
    (use,) = operation.uses
    assert use.amount.value == pytest.approx(2 * 2 * 2 * 0.152 * 0.216 * 100 * 1.25)
    assert {wetting.side for wetting in operation.wettings} == {"both"}


def test_curing_takes_longer_with_more_layers() -> None:
    def waits(options: str) -> float:
        return sum(o.wait.value for o in make(options).work.operations if o.wait is not None)

    assert waits(layers("cereal", "cereal")) == 60 * 3600
    assert waits(layers("cereal", "shoe-lid", "cereal")) == 132 * 3600


@pytest.mark.parametrize(
    ("options", "rule"),
    [
        (layers("cereal", "cereal", "shoe-lid"), "board-not-symmetric"),
        (
            "layers: [{stock: cereal}, {stock: cereal, grain: across}]",
            "board-cross-grain-even",
        ),
        (layers("cereal", "cereal", "cereal"), "board-coat-unpaired"),
        (
            "layers: [{stock: cereal, coated: outside}, {stock: cereal, coated: outside}]",
            "board-coat-outward",
        ),
        (layers("cereal"), "board-single-layer"),
        ("card: cereal, layers: [{stock: cereal}, {stock: cereal}]", "boards-twice-said"),
    ],
)
def test_what_is_wrong_with_a_stack(options: str, rule: str) -> None:
    assert rule in rules(options)


@pytest.mark.parametrize(
    "options",
    [
        layers("cereal", "cereal"),
        layers("cereal", "shoe-lid", "shoe-lid", "cereal"),
        "card: cereal, thickness: 1.8 mm",
        layers("grey", "flute", "grey"),
    ],
)
def test_a_good_stack_is_clean(options: str) -> None:
    assert rules(options) == set()


def test_only_geometry_is_an_error() -> None:
    found = make(layers("cereal", "cereal", "shoe-lid")).work.problems
    assert {problem.severity.value for problem in found} == {"warning"}


def test_default_card_is_carton() -> None:
    assert "case.layers" in {q.name for q in make("thickness: 2 mm").work.quantities}


def test_the_stack_is_drawn() -> None:
    (drawing,) = make(layers("cereal", "flute", "cereal")).work.drawings
    words = [item.text for item in drawing.items if hasattr(item, "text")]
    assert any("flute" in word and "flutes along" in word for word in words)
