"""Spines: none, card, board."""

from __future__ import annotations

from typing import Any

import pytest

from case_books import CASE, book, mm
from foredge.contract import SpineJob, SpineResult
from foredge.testing import check_plugin, check_result
from foredge_spines import board, card, none

MODULES = {"none": none, "card": card, "board": board}


def plan(use: str, options: str = "", block: float = 12.0) -> SpineResult:
    of = book(f"{CASE}  spine: {{use: {use}{options}}}\n")
    part: Any = of.sections["case"].spine
    result: SpineResult = MODULES[use].PLUGIN.plan(
        SpineJob(
            of,
            part,
            block_spine=mm(block, "block"),
            board=mm(2, "board"),
            board_height=mm(211, "height"),
            joint_cloth=mm(0.4, "cloth"),
            joint=mm(8, "joint"),
        )
    )
    check_result(result.work)
    return result


@pytest.mark.parametrize("module", MODULES.values(), ids=MODULES)
def test_contract(module: Any) -> None:
    check_plugin(module.PLUGIN)


@pytest.mark.parametrize(("use", "width"), [("none", 12), ("card", 14), ("board", 16)])
def test_width(use: str, width: float) -> None:
    result = plan(use)
    assert result.width.value == width
    assert result.has_piece is (use != "none")
    assert result.width.name == "case.spine.width"


@pytest.mark.parametrize("use", ["card", "board"])
def test_width_as_the_spec_says(use: str) -> None:
    assert plan(use, ", width: 15 mm").width.value == 15


def test_only_a_stiff_spine_widens_the_joint() -> None:
    assert plan("card", block=60).joint.value == 8
    assert plan("board", block=60).joint.value == 15
    assert plan("board", block=12).joint.value == 8


def test_stiff_spine_is_told() -> None:
    (found,) = plan("board").work.problems
    assert found.rule == "spine-rigid" and found.severity.value == "note"


def test_card_thickness() -> None:
    assert plan("card").thickness.value == pytest.approx(0.3)  # 240 g/m2 by 1.25 cm3/g
    assert plan("card", ", thickness: 0.5 mm").thickness.value == 0.5
    assert plan("card", ", stock: cereal").thickness.value == pytest.approx(0.45)


def test_pieces() -> None:
    assert plan("none").work.pieces == ()
    (piece,) = plan("card", ", stock: cereal").work.pieces
    assert (piece.stock, piece.width.value, piece.height.value) == ("cereal", 14, 211)
    assert plan("board").same_board and not plan("board").work.pieces
    own = plan("board", ", stock: grey")
    assert not own.same_board
    assert own.work.pieces[0].stock == "grey"
