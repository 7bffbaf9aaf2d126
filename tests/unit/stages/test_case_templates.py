"""Templates of the case are as large as the pieces they are laid on."""

from __future__ import annotations

import pytest

from case_books import CASE, book, finished_block
from foredge.contract import Drawing, Line, Measured, StageResult
from foredge.drawing.textbox import overlaps
from foredge_stages.case import PLUGIN


def run(case: str = CASE, *more: str) -> tuple[StageResult, dict[str, Drawing]]:
    of = book(case, *more)
    result = PLUGIN.run(of, finished_block(of))
    return result, {drawing.name: drawing for drawing in result.drawings}


def cut(drawing: Drawing) -> tuple[tuple[float, float], ...]:
    (line,) = (i for i in drawing.items if isinstance(i, Line) and i.role == "cut")
    assert line.closed
    return line.points


def test_the_spine_piece_is_as_large_as_its_piece() -> None:
    result, drawings = run()
    piece = next(piece for piece in result.pieces if piece.name == "case.spine")
    (left, top), _, (right, foot), _ = cut(drawings["case-spine-piece"])
    assert (right - left, foot - top) == pytest.approx((piece.width.value, piece.height.value))
    assert "case-spine-piece" not in run(f"{CASE}  spine: {{use: none}}\n")[1]


def test_the_jig_is_as_wide_as_the_squares() -> None:
    result, drawings = run(f"{CASE}  square: 5 mm\n")
    board, head, _, inner, _, _ = cut(drawings["case-square-jig-head-and-tail"])
    assert inner[0] - board[0] == pytest.approx(result.quantity("case.square.fore_edge").value)
    assert inner[1] - board[1] == pytest.approx(result.quantity("case.square.head").value)
    assert head[0] - inner[0] > 50


def test_each_end_has_its_own_jig_where_the_squares_differ() -> None:
    result, drawings = run(f"{CASE}  square: 5 mm\n  squares: {{tail: 2 mm}}\n")
    for end in ("head", "tail"):
        board, _, _, inner, _, _ = cut(drawings[f"case-square-jig-{end}"])
        square_mm = result.quantity(f"case.square.{end}").value
        assert inner[1] - board[1] == pytest.approx(square_mm)


@pytest.mark.parametrize("display", ["metric", "imperial", "both"])
def test_dimensions_are_told_in_the_makers_units(display: str) -> None:
    _, drawings = run(CASE, f"display: {display}\n")
    told = [
        item.text
        for drawing in drawings.values()
        for item in drawing.items
        if isinstance(item, Measured)
    ]
    assert len(told) > 10
    assert all((" mm" in text) == (display != "imperial") for text in told)
    assert all((" in" in text) == (display != "metric") for text in told)
    assert {name: overlaps(one) for name, one in drawings.items() if overlaps(one)} == {}
