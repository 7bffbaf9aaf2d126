"""The three kinds of end-paper: pieces, thickness, hinge, what lies in the joint."""

from __future__ import annotations

import pytest

import foredge_end_papers.cloth_jointed
import foredge_end_papers.sewn
import foredge_end_papers.tipped
from foredge.contract import Operation, Piece, StageResult
from foredge.testing import check_plugin
from text_block_books import errors, made, quantity, value

STOCK = {
    "marbled": {
        "kind": "sheet", "width": "500 mm", "height": "700 mm", "grain": "height",
        "thickness": "0.15 mm", "grammage": "110 g/m2", "material": "decorated",
    },
    "shirting": {
        "kind": "cloth", "width": "300 mm", "height": "400 mm", "grain": "height",
        "thickness": "0.25 mm", "material": "cotton",
    },
}  # fmt: skip


def ends(use: str, **options: object) -> StageResult:
    return made(STOCK, end_papers={"use": use, "paper": "marbled", **options})


def piece(result: StageResult, name: str) -> Piece:
    return next(p for p in result.pieces if p.name == f"text_block.{name}")


def operation(result: StageResult, verb: str) -> Operation:
    return next(o for o in result.operations if o.id == f"text-block.{verb}")


@pytest.mark.parametrize(
    "module",
    [foredge_end_papers.tipped, foredge_end_papers.sewn, foredge_end_papers.cloth_jointed],
)
def test_contract(module: object) -> None:
    check_plugin(module.PLUGIN)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("use", "hinge", "sewn"),
    [("tipped", "tipped", 10), ("sewn", "sewn", 12), ("cloth-jointed", "cloth", 12)],
)
def test_hinge_and_what_is_sewn(use: str, hinge: str, sewn: int) -> None:
    result = ends(use)
    assert dict(result.facts)["text_block.hinge"] == hinge
    (step,) = (s for s in operation(result, "punch").steps if "gatherings" in s.values)
    assert next(iter(step.quantities())).value == sewn


@pytest.mark.parametrize("use", ["tipped", "sewn"])
def test_a_folio_at_each_end(use: str) -> None:
    result = ends(use)
    folio = piece(result, "end_paper")
    assert folio.count.value == 2 and folio.grain == "height" and folio.stock == "marbled"
    assert folio.width.value == 2 * value(result, "fold.width")
    assert folio.height.value == value(result, "fold.height")
    assert value(result, "end_papers.thickness") == pytest.approx(4 * 0.15)
    assert value(result, "end_papers.mass") == pytest.approx(4 * 150 * 205 * 110e-6)
    assert value(result, "joint.end_paper_cloth") == 0
    assert value(result, "fly_leaves") == 1


def test_more_folios_in_the_end_gathering() -> None:
    result = ends("sewn", folios=2)
    assert piece(result, "end_paper").count.value == 4
    assert value(result, "fly_leaves") == 3
    assert value(result, "end_papers.thickness") == pytest.approx(8 * 0.15)


def test_a_hooked_end_paper_is_wider_by_its_guard_and_no_gathering() -> None:
    result = ends("sewn", way="hooked")
    hook = value(result, "end_papers.hook")
    assert piece(result, "end_paper").width.value == 2 * value(result, "fold.width") + hook
    assert value(result, "swell") < value(ends("sewn"), "swell")


def test_the_tip_line_is_narrow_and_can_be_set() -> None:
    assert value(ends("tipped"), "end_papers.tip_line") == 6
    narrow = ends("tipped", line="3 mm")
    assert value(narrow, "end_papers.tip_line") == 3
    use = operation(narrow, "tip-end-papers").uses[0]
    # Two lines of 3 mm by 209 mm, PVA at 100 g/m2, and a quarter to spare.
    assert use.amount.value == pytest.approx(2 * 3 * 209 * 100e-6 * 1.25)


def test_cloth_and_paper_make_up_the_folded_leaf() -> None:
    result = ends("cloth-jointed", cloth="shirting")
    strip, overlap = value(result, "joint_strip.width"), value(result, "joint_strip.overlap")
    leaf = piece(result, "end_paper")
    assert leaf.count.value == 4
    assert leaf.width.value + strip / 2 - overlap == pytest.approx(
        value(result, "fold.width"), abs=0.5
    )
    cloth = piece(result, "joint_strip")
    assert (cloth.count.value, cloth.width.value, cloth.stock) == (2, strip, "shirting")
    assert value(result, "joint.end_paper_cloth") == pytest.approx(0.25)
    assert quantity(result, "joint.end_paper_cloth").rule


def test_a_strip_all_under_paper_is_an_error() -> None:
    assert errors(ends("cloth-jointed", strip="12 mm", overlap="6 mm")) == ["cloth-joint-width"]
    assert errors(ends("cloth-jointed", strip="400 mm")) == ["cloth-joint-width"]


def test_made_before_punching_or_tipped_after_sewing() -> None:
    made_first = operation(ends("sewn"), "make-end-papers")
    assert made_first.before_any == ("text-block.punch",)
    assert operation(ends("tipped"), "tip-end-papers").after == ("text-block.sew",)
