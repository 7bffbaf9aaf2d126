"""Sizes of the case: what they rest on, and that its parts add up."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from case_books import CASE, book, finished_block
from foredge.contract import StageResult
from foredge.quantity import band
from foredge.testing import check_plugin, check_stage
from foredge_stages.case import PLUGIN

READ = """\
measured:
  board: 2.1 mm
  joint_cloth: 0.5 mm
  block: {height: 204 mm, width: 149 mm, spine: 13 mm, fore_edge: 11 mm}
"""
SPINES = ("none", "card", "board")


def run(case: str = CASE, *more: str, **block: float) -> StageResult:
    of = book(case, *more)
    return PLUGIN.run(of, finished_block(of, **block))


def with_spine(use: str) -> str:
    return f"{CASE}  spine: {{use: {use}}}\n"


def value(result: StageResult, name: str) -> float:
    return result.quantity(name).value


def test_contract() -> None:
    check_plugin(PLUGIN)


@pytest.mark.parametrize("spine", SPINES)
def test_stage_keeps_the_contract(spine: str) -> None:
    of = book(with_spine(spine))
    check_stage(PLUGIN, of, finished_block(of))


def test_board_width_rests_on_both_gates() -> None:
    width = run().quantity("case.board.width")
    assert width.gates == {"G1", "G2"}
    assert not width.firm


def test_board_width_is_firm_once_everything_is_read() -> None:
    result = run(CASE, READ)
    for name in ("case.board.width", "case.board.height", "case.spacer", "case.covering.width"):
        assert result.quantity(name).firm, name
    assert value(result, "case.board.thickness") == 2.1
    assert band(result.quantity("case.board.width")).exact


def test_one_gate_alone_is_not_enough() -> None:
    result = run(CASE, "measured: {board: 2.1 mm, joint_cloth: 0.5 mm}\n")
    assert result.quantity("case.board.width").gates == {"G2"}
    assert result.quantity("case.joint").firm


@pytest.mark.parametrize(("spine", "extra"), [("none", 0.0), ("card", 2.0), ("board", 4.0)])
def test_spine_and_board_width_follow_the_spine_chosen(spine: str, extra: float) -> None:
    # Block 12 mm, board 2 mm: the spine is 12 + extra, the cloth dips 1 mm + extra / 2.
    result = run(with_spine(spine))
    assert value(result, "case.spine.width") == 12 + extra
    assert value(result, "case.joint.dip") == pytest.approx(1 + extra / 2)
    joint = value(result, "case.joint")
    assert joint == 8.0
    assert value(result, "case.board.width") == pytest.approx(150 + 3 - (joint - 1 - extra / 2))


def test_worked_by_hand() -> None:
    # Board 2.1, cloth 0.5: joint 6 + 2.1 + 2 x 0.1 = 8.3 -> 8.5; spine 13 + 2.1 = 15.1 -> 15;
    # dip 2.1/2 + (15 - 13)/2 = 2.05; width 149 + 3 - (8.5 - 2.05) = 145.55 -> 145.5.
    result = run(CASE, READ)
    assert value(result, "case.joint") == 8.5
    assert value(result, "case.spine.width") == 15
    assert value(result, "case.board.width") == 145.5
    assert value(result, "case.board.height") == 210
    assert value(result, "case.board_distance") == 32
    assert value(result, "case.covering.width") == 2 * 145.5 + 32 + 2 * 19


def test_tapes_widen_the_joint() -> None:
    of = book()
    thin = PLUGIN.run(of, finished_block(of))
    thick = PLUGIN.run(of, finished_block(of, tapes=0.5))
    assert value(thick, "case.joint") == value(thin, "case.joint") + 1


def test_square_follows_the_board() -> None:
    result = run(
        "case:\n  boards: {use: bought, thickness: 4 mm}\n"
        "  covering: {use: full-cloth, material: bought-cloth}\n"
    )
    assert value(result, "case.square.head") == 4


def test_squares_may_differ() -> None:
    result = run(f"{CASE}  square: 5 mm\n  squares: {{tail: 2 mm, fore_edge: 4 mm}}\n")
    squares = [value(result, f"case.square.{edge}") for edge in ("head", "tail", "fore_edge")]
    assert squares == [5, 2, 4]
    assert value(result, "case.board.height") == 205 + 7


def test_unsupported_sewing_gets_a_small_tail_square() -> None:
    of = book()
    result = PLUGIN.run(of, finished_block(of, supported="no"))
    assert value(result, "case.square.tail") == 1.5
    assert value(result, "case.square.head") == 3


@settings(max_examples=25, deadline=None)
@given(
    width=st.floats(60, 300),
    height=st.floats(80, 400),
    spine=st.floats(3, 60),
    board=st.floats(1, 5),
    use=st.sampled_from(SPINES),
)
def test_shown_sizes_add_up(
    width: float, height: float, spine: float, board: float, use: str
) -> None:
    result = run(
        f"case:\n  boards: {{use: bought, thickness: {board:.2f} mm}}\n  spine: {{use: {use}}}\n"
        "  covering: {use: full-cloth, material: bought-cloth}\n",
        width=width,
        height=height,
        spine=spine,
    )
    pieces = {piece.name: piece for piece in result.pieces}
    flat = 2 * pieces["case.board"].width.value + pieces["case.spacer"].width.value
    assert value(result, "case.flat.width") == pytest.approx(flat)
    over = value(result, "case.turn_in")
    assert pieces["case.covering"].width.value == pytest.approx(flat + 2 * over)
    assert pieces["case.covering"].height.value == pytest.approx(
        pieces["case.board"].height.value + 2 * over
    )
    between = value(result, "case.spine.width") + 2 * value(result, "case.joint")
    assert pieces["case.spacer"].width.value == pytest.approx(between)
    for piece in result.pieces:
        for size in (piece.width.value, piece.height.value):
            assert size % 0.5 == pytest.approx(0, abs=1e-9) or size % 0.5 == pytest.approx(0.5)


def test_closed_book() -> None:
    result = run(CASE, READ)
    # Board, closed joint (8.5 - 2.05), card (240 g/m2 x 1.25 = 0.3 mm) and cloth (0.3 mm) behind.
    assert value(result, "case.closed.width") == pytest.approx(145.5 + 6.45 + 0.6, abs=0.01)
    assert value(result, "case.closed.thickness") == pytest.approx(13 + 2 * (2.1 + 0.3))
    assert value(result, "case.mass") == pytest.approx(
        sum(value(result, f"case.{part}.mass") for part in ("boards", "spine", "covering"))
    )


def test_imperial_sizes_fall_on_the_32nd() -> None:
    from case_books import HEAD, TEXT_BLOCK
    from foredge.testing import book_from

    of = book_from(HEAD.replace("stock:", "display: imperial\nstock:", 1) + TEXT_BLOCK + CASE)
    result = PLUGIN.run(of, finished_block(of))
    for piece in result.pieces:
        steps = piece.width.value / (25.4 / 32)
        assert steps == pytest.approx(round(steps), abs=1e-6), piece.name
