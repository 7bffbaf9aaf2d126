"""Full cloth: the piece, its backing, its corners."""

from __future__ import annotations

import pytest

from case_books import book, mm
from foredge.contract import CoverJob, CoverResult, Quantity
from foredge.testing import check_plugin, check_result
from foredge_coverings.full_cloth import PLUGIN


def job(options: str, turn_in: Quantity | None = None) -> CoverJob:
    of = book(
        "case:\n  boards: {use: bought, stock: grey}\n"
        f"  covering: {{use: full-cloth, material: {options}}}\n"
    )
    return CoverJob(
        of,
        of.sections["case"].covering,
        board_width=mm(147, "width"),
        board_height=mm(211, "height"),
        board=mm(2, "board"),
        joint=mm(8, "joint"),
        spine=mm(14, "spine"),
        has_spine_piece=True,
        boards_cut="case.cut-boards",
        turn_in=turn_in,
    )


def cover(options: str, turn_in: Quantity | None = None) -> CoverResult:
    result = PLUGIN.cover(job(options, turn_in))
    check_result(result.work)
    return result


def words(result: CoverResult) -> str:
    operation = next(o for o in result.work.operations if o.id == "case.cover")
    return "\n".join(step.template for step in operation.steps)


def test_contract() -> None:
    check_plugin(PLUGIN)


@pytest.mark.parametrize(
    ("material", "turn_in"), [("bought-cloth", 19), ("sail", 22), ("shirt", 20), ("wrap", 19)]
)
def test_turn_in_by_material(material: str, turn_in: float) -> None:
    result = cover(material)
    assert result.work.quantity("case.turn_in").value == turn_in
    piece = next(piece for piece in result.work.pieces if piece.name == "case.covering")
    assert piece.width.value == 2 * 147 + 14 + 2 * 8 + 2 * turn_in
    assert piece.height.value == 211 + 2 * turn_in


def test_turn_in_as_the_spec_says() -> None:
    assert cover("sail", mm(16, "asked")).work.quantity("case.turn_in").value == 16


def test_backing_only_where_the_cloth_needs_it() -> None:
    backed, plain = cover("shirt"), cover("sail")
    assert backed.prepared == ("case.back-cloth",)
    assert plain.prepared == ()
    assert cover("shirt, backing: none").prepared == ()
    assert cover("sail, backing: tissue").prepared == ("case.back-cloth",)


def test_backing_lies_in_the_joint() -> None:
    of = job("shirt")
    without = job("shirt, backing: none")
    extra = (
        PLUGIN.in_joint(of.book, of.part).value - PLUGIN.in_joint(without.book, without.part).value
    )
    assert extra == pytest.approx(0.08)


def test_never_glue_on_unbacked_cloth() -> None:
    assert "never brush glue on the cloth" in words(cover("shirt"))
    assert "Glue the wrong side of the" in words(cover("bought-cloth"))


@pytest.mark.parametrize(
    ("options", "rule"),
    [
        ("shirt, backing: none", "cloth-unbacked"),
        ("mystery", "cloth-unknown"),
    ],
)
def test_problems(options: str, rule: str) -> None:
    assert rule in {problem.rule for problem in cover(options).work.problems}


def test_corners() -> None:
    assert "Cut each corner off" in words(cover("sail"))
    assert "Leave the corners whole" in words(cover("sail, corners: folded"))
    folded = {quantity.name for quantity in cover("sail, corners: folded").work.quantities}
    assert "case.corner" not in folded
    # 1.5 x 2 mm of board, and 0.65 mm of canvas.
    assert cover("sail").work.quantity("case.corner").value == pytest.approx(3.5)


def test_order_of_turning_in() -> None:
    text = words(cover("sail"))
    assert text.index("each corner") < text.index("head and tail, tight") < text.index("fore-edges")


def test_leather_is_pared() -> None:
    assert "Pare" in words(cover("coat"))
    assert "Pare" not in words(cover("sail"))


def test_plastic_back_needs_another_glue() -> None:
    from case_books import HEAD, TEXT_BLOCK
    from foredge.testing import book_from

    shelf = HEAD.replace("material: canvas", "material: imitation-plastic")
    for adhesive, rules in (("pva", {"glue-plastic-back"}), ("contact", set())):
        of = book_from(
            f"{shelf}{TEXT_BLOCK}case:\n  boards: {{use: bought}}\n"
            f"  covering: {{use: full-cloth, material: sail, adhesive: {adhesive}}}\n"
        )
        here = job("sail")
        asked = CoverJob(
            of,
            of.sections["case"].covering,
            here.board_width,
            here.board_height,
            here.board,
            here.joint,
            here.spine,
            True,
            "case.cut-boards",
        )
        found = {problem.rule for problem in PLUGIN.cover(asked).work.problems}
        assert found == rules
