"""Bought board: thickness as sold, pieces straight from the shelf."""

from __future__ import annotations

import pytest

from case_books import book, mm
from foredge.contract import BoardsJob, Quantity
from foredge.quantity import band
from foredge.testing import check_plugin, check_result
from foredge_boards.bought import PLUGIN

COVERING = "  covering: {use: full-cloth, material: bought-cloth}\n"


def job(options: str, spine: Quantity | None = None) -> BoardsJob:
    of = book(f"case:\n  boards: {{use: bought{options}}}\n{COVERING}")
    part = of.sections["case"].boards
    thickness = PLUGIN.thickness(of, part)
    return BoardsJob(of, part, mm(147, "width"), mm(211, "height"), thickness, spine)


def test_contract() -> None:
    check_plugin(PLUGIN)


@pytest.mark.parametrize(
    ("options", "thickness"),
    [(", stock: grey", 2.0), (", thickness: 3 mm", 3.0), (", material: millboard", 2.5), ("", 2.0)],
)
def test_thickness(options: str, thickness: float) -> None:
    made = job(options).thickness
    assert made.value == pytest.approx(thickness)
    assert not band(made).exact


def test_pieces_come_from_the_shelf() -> None:
    result = PLUGIN.make(job(", stock: grey"))
    check_result(result.work)
    (board,) = result.work.pieces
    assert (board.name, board.stock, board.count.value) == ("case.board", "grey", 2)
    assert (board.width.value, board.height.value, board.grain) == (147, 211, "height")
    assert not board.blank
    assert result.ready in {operation.id for operation in result.work.operations}


def test_spine_of_the_same_board() -> None:
    result = PLUGIN.make(job(", stock: grey", mm(16, "spine")))
    spine = result.work.pieces[1]
    assert (spine.name, spine.stock, spine.width.value) == ("case.spine", "grey", 16)


def test_mass() -> None:
    # 2 boards of 147 x 211 mm, 2 mm thick, at 0.645 g/cm3.
    result = PLUGIN.make(job(", thickness: 2 mm"))
    assert result.work.quantity("case.boards.mass").value == pytest.approx(
        2 * 14.7 * 21.1 * 0.2 * 0.645
    )
