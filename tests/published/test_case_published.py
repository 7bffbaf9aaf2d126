"""Sizes of a case against what books, manuals and trade rules print.

Old sources give inches; they are turned into mm here. Where a source stops at another
allowance than ours, the tolerance says how far apart they are.
"""

from __future__ import annotations

import pytest

from case_books import CASE, HEAD, TEXT_BLOCK, book, finished_block, mm
from foredge.contract import Book, Quantity, StageResult, board_figures
from foredge.testing import book_from
from foredge_stages.case import PLUGIN
from foredge_stages.case.geometry import (
    board_distance_of,
    board_height_of,
    board_width_of,
    dip_of,
    flat_width_of,
    joint_by_rule,
)

INCH = 25.4


def inch(value: float, name: str = "given") -> Quantity:
    return mm(value * INCH, name)


def case_of(text: str, **block: float) -> StageResult:
    of = book(text)
    return PLUGIN.run(of, finished_block(of, **block))


def value(result: StageResult, name: str) -> float:
    return result.quantity(name).value


class TestOldHandbooks:
    def test_davidson_booklet(self) -> None:
        # Ben Davidson, Bookbinding Self Taught, 1927, pp. 5-6: a booklet 5 x 3 1/2 in gets boards
        # 5 1/4 x 3 5/8 in, 1/8 in over at head, tail and one side; they reach the back itself.
        square = inch(1 / 8)
        nothing = mm(0.0, "no setback")
        height = board_height_of(inch(5), square, square)
        width = board_width_of(inch(3.5), square, nothing, nothing)
        assert height.value == pytest.approx(5.25 * INCH)
        assert width.value == pytest.approx(3.625 * INCH)

    @pytest.mark.parametrize(
        ("square", "cloth_width", "cloth_height"), [(1 / 8, 14.75, 10.75), (3 / 16, 14.875, 10.875)]
    )
    def test_vaughn_cloth(self, square: float, cloth_width: float, cloth_height: float) -> None:
        # S. J. Vaughn, Printing and Bookbinding for Schools, 1912, pp. 117-118: the board is as
        # wide as the book and shifted forward by a square, which leaves the joint; cloth is two
        # boards, the back, two joints and 1 1/2 in. For a book of 6 x 9 x 1 in, worked by hand.
        joint = inch(square)
        board = board_width_of(inch(6), inch(square), joint, mm(0.0, "no dip"))
        height = board_height_of(inch(9), inch(square), inch(square))
        assert board.value == pytest.approx(6 * INCH)
        turned = inch(1.5)
        flat = flat_width_of(board, board_distance_of(inch(1), joint)) + turned
        assert flat.value == pytest.approx(cloth_width * INCH)
        assert (height + turned).value == pytest.approx(cloth_height * INCH)

    def test_sawyer_boards(self) -> None:
        # Brian Sawyer, 'Build Cover Boards', 2006: with 1/8 in board, height + 1/4 in, and width
        # + 1/8 in less two board thicknesses; the spine board is the block and two boards.
        board, square = inch(1 / 8), inch(1 / 8)
        height = board_height_of(inch(9), square, square)
        width = board_width_of(inch(6), square, 2 * board, mm(0.0, "no dip"))
        assert height.value == pytest.approx(9.25 * INCH)
        assert width.value == pytest.approx((6 - 1 / 8) * INCH)
        stiff = case_of(
            "case:\n  boards: {use: bought, thickness: 1/8 in}\n  spine: {use: board}\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n",
            spine=1 * INCH,
        )
        assert value(stiff, "case.spine.width") == pytest.approx(1.25 * INCH, abs=0.25)

    def test_open_case(self) -> None:
        # 'How to create a casebinding, part II' (hand-binding tutorial): boards 6 3/4 x 5 in and a
        # 1/2 in spine make an open case 11 in wide, so 1/4 in on each side of the spine.
        flat = flat_width_of(inch(5), board_distance_of(inch(1 / 2), inch(1 / 4)))
        assert flat.value == pytest.approx(11 * INCH)

    def test_mitre(self) -> None:
        # Vaughn 1912, p. 119: leave about one board's thickness at the corner.
        result = case_of(
            "case:\n  boards: {use: bought, thickness: 2.5 mm}\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n"
        )
        left = value(result, "case.corner")
        assert 2.5 <= left <= 2 * 2.5

    def test_side_papers(self) -> None:
        # Vaughn 1912, pp. 127, 130: side paper board + 1 1/2 in high, and 7/8 in (3/4 turned in,
        # 1/8 over the leather) wider than what is left bare; the back covers more than a fourth
        # and less than a third of the side.
        result = case_of(
            "case:\n  boards: {use: bought, stock: grey}\n  turn_in: 3/4 in\n"
            "  covering: {use: quarter-cloth, material: bought-cloth, sides: wrap, lap: 1/8 in}\n"
        )
        board, reach = value(result, "case.board.width"), value(result, "case.cloth_reach")
        assert 1 / 4 < reach / board < 1 / 3
        assert value(result, "case.side.width") == pytest.approx(
            board - reach + 7 / 8 * INCH, abs=0.5
        )
        assert value(result, "case.side.height") == pytest.approx(
            value(result, "case.board.height") + 1.5 * INCH, abs=0.3
        )


class TestTradeRules:
    @pytest.mark.parametrize("thickness", ["1.5 mm", "2 mm", "2.5 mm", "3 mm"])
    def test_printing_industry_rule(self, thickness: str) -> None:
        # Chinese printing-industry rule for book cases (translated copy, furnitureren.com 6178):
        # board 1.5 to 3.0 mm -> joint 7 to 10 mm; square 2 to 4; board height = block + 2 squares;
        # board width = block less 2 to 4 mm; the strip in the middle = spine + 2 joints.
        result = case_of(
            f"case:\n  boards: {{use: bought, thickness: {thickness}}}\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n"
        )
        square = value(result, "case.square.head")
        assert 7 <= value(result, "case.joint") <= 10
        assert 2 <= square <= 4
        assert value(result, "case.board.height") == pytest.approx(205 + 2 * square)
        assert 2 <= 150 - value(result, "case.board.width") <= 4
        assert value(result, "case.board_distance") == pytest.approx(
            value(result, "case.spine.width") + 2 * value(result, "case.joint")
        )

    def test_equipment_makers_note(self) -> None:
        # Qingdao equipment firm, note of 2013 (sunsail.com.cn): board = W + spine board + 3 - 8,
        # height H + 6, spine board = T + both boards, cover = 2 boards + 2 x 8 + 2 x 20 + spine.
        # Worked for 210 x 297 x 20 and 2.5 mm board: 207.5 x 303, spine 25, cover 496 x 343.
        # Its cloth dips by a whole board beside a stiff spine, ours by a board and a half: 1.25 mm
        # a board, and a step of 0.5 mm may add a quarter.
        result = case_of(
            "case:\n  boards: {use: bought, thickness: 2.5 mm}\n  spine: {use: board}\n"
            "  square: 3 mm\n  joint: 8 mm\n  turn_in: 20 mm\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n",
            width=210,
            height=297,
            spine=20,
        )
        assert value(result, "case.board.height") == 303
        assert value(result, "case.spine.width") == 25
        assert value(result, "case.board.width") == pytest.approx(207.5, abs=1.5)
        assert value(result, "case.covering.height") == 343
        assert value(result, "case.covering.width") == pytest.approx(496, abs=3)

    def test_hard_cover_size_note(self) -> None:
        # 'How to calculate hard cover size for printing', dingwordinc.blogspot.com, 2012: spine
        # = Y + 2A - 0.5; boards (X - 3.5) x (Z + 6); gap 10; wrap 2 (board + 10) + spine + 34.
        # Worked for X 210, Y 20, Z 297, A 2.5: 24.5; 206.5 x 303; 491.5 x 337.
        result = case_of(
            "case:\n  boards: {use: bought, thickness: 2.5 mm}\n"
            "  spine: {use: board, width: 24.5 mm}\n"
            "  square: 3 mm\n  joint: 10 mm\n  turn_in: 17 mm\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n",
            width=210,
            height=297,
            spine=20,
        )
        assert value(result, "case.board.width") == 206.5
        assert value(result, "case.board.height") == 303
        assert value(result, "case.covering.width") == 491.5
        assert value(result, "case.covering.height") == 337

    def test_covering_is_the_sum_of_its_parts(self) -> None:
        # A trade note (copy at samoanmusicandvideo.com n629327) prints cloth width
        # 2s + d + 2e + 2c + 2f although its board is s - e + c and its middle d + 2e: the printed
        # width counts the joint 2e twice. The sum of the parts is 2s + d + 2c + 2f.
        s, d, e, c, f = (
            mm(v, n) for v, n in ((150, "s"), (12, "d"), (6.5, "e"), (3, "c"), (14, "f"))
        )
        board = board_width_of(s, c, e, mm(0.0, "no dip"))
        parts = flat_width_of(board, board_distance_of(d, e)) + 2 * f
        assert parts.value == pytest.approx((2 * s + d + 2 * c + 2 * f).value)
        printed = 2 * s + d + 2 * e + 2 * c + 2 * f
        assert printed.value - parts.value == pytest.approx(2 * e.value)


class TestMakers:
    @pytest.mark.parametrize(
        ("board", "least", "most"), [(1.5, 7, 8), (2.0, 7.5, 8.5), (3.0, 9, 9.5)]
    )
    def test_joint_rules_of_thumb(self, board: float, least: float, most: float) -> None:
        # A. W. Johnson, Skin Deep vol. 15: 9 mm is the standard of a flat-back case; makers'
        # threads quote 6 mm + board, 7 to 10 mm, and 8 mm for 2 mm board where 5 mm bound.
        joint = joint_by_rule(book(), mm(board, "board"), mm(0.35, "bought book cloth"))
        assert least <= joint.value <= most
        assert joint.value == pytest.approx(6 + board)
        assert joint.value >= 2 * board

    def test_soft_cover_put_in_boards(self) -> None:
        # A maker's page on putting a soft-cover book in boards: joint 7.5, squares 3 -> height
        # H + 6, width W - 3 mm (board not stated, taken as 2 mm).
        square = mm(3, "square")
        board, spine = mm(2, "board"), mm(14, "spine")
        dip = dip_of(board, spine, mm(12, "block spine"))
        width = board_width_of(mm(150, "W"), square, mm(7.5, "joint"), dip)
        assert board_height_of(mm(205, "H"), square, square).value == 211
        assert width.value - 150 == pytest.approx(-3, abs=0.5)

    def test_half_binding(self) -> None:
        # A maker's page on a half binding: joint 6.35 mm, board 2.5, square 3.2 -> board width = W.
        dip = dip_of(mm(2.5, "board"), mm(14.5, "spine"), mm(12, "block spine"))
        width = board_width_of(mm(150, "W"), mm(3.2, "square"), mm(6.35, "joint"), dip)
        assert width.value - 150 == pytest.approx(0, abs=0.7)

    def test_small_hardcover_journal(self) -> None:
        # A small hardcover journal: letter sheets folded to 5 1/2 x 8 1/2 in, 2 mm board,
        # 9.5 mm joint, 19 mm turn-in: board stock 222 x 305 at the least, cloth 356 x 267.
        result = case_of(
            "case:\n  boards: {use: bought, thickness: 2 mm}\n  square: 3.2 mm\n  joint: 9.5 mm\n"
            "  turn_in: 19 mm\n  covering: {use: full-cloth, material: bought-cloth}\n",
            width=139.7,
            height=215.9,
            spine=13,
        )
        assert value(result, "case.board.height") == pytest.approx(222, abs=0.5)
        assert 2 * value(result, "case.board.width") <= 305
        assert 0 <= 356 - value(result, "case.covering.width") <= 15
        assert 0 <= 267 - value(result, "case.covering.height") <= 10

    def test_rigid_spine_joint(self) -> None:
        # Quarter-joint binding (temperproductions.com, step 6): board = (L + 1/16) x (W - T/4 +
        # 1/16 in); the joint beside a stiff spine is a quarter of the block's thickness.
        result = case_of(
            "case:\n  boards: {use: bought, thickness: 2 mm}\n  spine: {use: board}\n"
            "  covering: {use: full-cloth, material: bought-cloth}\n",
            spine=60,
        )
        assert value(result, "case.joint") == 15
        setback = mm(60 / 4, "T/4")
        width = board_width_of(inch(6), inch(1 / 16), setback, mm(0.0, "no dip"))
        assert width.value == pytest.approx(6 * INCH - 15 + INCH / 16)


class TestBoard:
    @pytest.mark.parametrize(
        ("grammage", "thickness"),
        [(615, 1.0), (775, 1.2), (970, 1.5), (1160, 1.8), (1290, 2.0), (1420, 2.2), (1645, 2.5)],
    )
    def test_greyboard(self, grammage: float, thickness: float) -> None:
        # 'Conversion between the greyboard thickness and grammage', deprintedbox.com: 1290 g/m2 x
        # 1.55 / 1000 = 2 mm, and its table. From 3 mm up its table leaves its own formula (1845
        # g/m2 would be 2.86), so it is held against the table only up to 2.5 mm.
        of = book_with_grey(grammage)
        assert board_figures(of, "grey", "greyboard").thickness.value == pytest.approx(
            thickness, abs=0.06
        )

    def test_greyboard_table_departs(self) -> None:
        # Same page: 3.0 mm is printed beside 1845 g/m2; its own factor gives 2.86.
        of = book_with_grey(1845)
        thickness = board_figures(of, "grey", "greyboard").thickness.value
        assert thickness == pytest.approx(2.86, abs=0.01)
        assert thickness < 3.0 - 0.1


def book_with_grey(grammage: float) -> Book:
    shelf = HEAD.replace("thickness: 2 mm", f"grammage: {grammage:g} g/m2")
    return book_from(shelf + TEXT_BLOCK + CASE)
