"""Quarter cloth: strip, sides, lap."""

from __future__ import annotations

import pytest

from case_books import book, mm
from foredge.contract import CoverJob, CoverResult, Severity
from foredge.testing import check_plugin, check_result
from foredge_coverings.quarter_cloth import PLUGIN


def cover(options: str = "") -> CoverResult:
    of = book(
        "case:\n  boards: {use: bought, stock: grey}\n"
        f"  covering: {{use: quarter-cloth, material: sail, sides: wrap{options}}}\n"
    )
    job = CoverJob(
        of,
        of.sections["case"].covering,
        board_width=mm(148, "width"),
        board_height=mm(211, "height"),
        board=mm(2, "board"),
        joint=mm(8, "joint"),
        spine=mm(14, "spine"),
        has_spine_piece=True,
        boards_cut="case.cut-boards",
    )
    result = PLUGIN.cover(job)
    check_result(result.work)
    return result


def test_contract() -> None:
    check_plugin(PLUGIN)


def test_pieces_cover_the_boards() -> None:
    result = cover()
    pieces = {piece.name: piece for piece in result.work.pieces}
    reach = result.work.quantity("case.cloth_reach").value
    over = result.work.quantity("case.turn_in").value
    assert pieces["case.covering"].width.value == 2 * reach + 14 + 2 * 8
    side = pieces["case.side"]
    assert side.count.value == 2
    # The side reaches from its lap on the cloth to the turn-in at the fore-edge (lap 1/8 in).
    assert side.width.value == pytest.approx(148 - reach + 3 + over)
    assert side.height.value == pieces["case.covering"].height.value == 211 + 2 * over


def test_sides_go_on_after_the_cloth() -> None:
    result = cover()
    operations = {operation.id: operation for operation in result.work.operations}
    assert operations["case.cover"].after == ("case.cover-spine",)
    assert result.covered == "case.cover"


def test_reach() -> None:
    assert cover(", reach: 45 mm").work.quantity("case.cloth_reach").value == 45
    assert not cover(", reach: 45 mm").work.problems
    (found,) = cover(", reach: 90 mm").work.problems
    assert (found.rule, found.severity) == ("quarter-cloth-reach", Severity.NOTE)
    (refused,) = cover(", reach: 150 mm").work.problems
    assert refused.severity is Severity.ERROR


def test_lap() -> None:
    def side(lap: str) -> float:
        pieces = cover(f", lap: {lap}").work.pieces
        return next(piece.width.value for piece in pieces if piece.name == "case.side")

    assert side("5 mm") == pytest.approx(side("2 mm") + 3)
