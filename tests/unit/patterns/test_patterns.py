"""Patterns as the stage asks for them: fields, counts, problems, order, thickness."""

from __future__ import annotations

from typing import Any

import pytest

from case_books import HEAD
from foredge.contract import INTO_CASE, Label, Line, OrnamentResult, Severity
from foredge.drawing.textbox import overlaps
from foredge.testing import check_plugin, check_result
from foredge_patterns import net, rows, strips, tiles
from ornament_books import adorn, adorned, cased, quantity

SHELF = HEAD + (
    "  cord: {kind: thread, diameter: 1.2 mm, length: 5 m}\n"
    "  ribbon: {kind: tape, width: 6 mm, thickness: 0.3 mm, length: 5 m}\n"
    "  foil-card: {kind: sheet, thickness: 0.2 mm, width: 300 mm, height: 400 mm}\n"
)
EACH = {
    "tile-pattern": "stock: wrap, width: 20 mm, height: 30 mm, gap: 2 mm",
    "row-pattern": "stock: wrap, width: 18 mm, height: 25 mm",
    "strip-pattern": "stock: wrap, width: 8 mm, gap: 4 mm",
    "net-pattern": "stock: wrap, width: 6 mm, spacing: 20 mm",
}
_BOARDS = ("front", "back")


def laid(use: str, options: str = "", **sizes: float) -> OrnamentResult:
    told = f"{{use: {use}, {options or EACH[use]}}}"
    return adorn(adorned(told, head=SHELF), cased(**sizes))


def rules(result: OrnamentResult) -> list[str]:
    return [problem.rule for problem in result.work.problems]


@pytest.mark.parametrize("module", [net, rows, strips, tiles], ids=lambda one: one.PLUGIN.name)
def test_every_pattern_keeps_its_contract(module: Any) -> None:
    check_plugin(module.PLUGIN)
    assert module.PLUGIN.stage == "finishing"


@pytest.mark.parametrize("on", ["front", "back", "paste-downs"])
@pytest.mark.parametrize("use", EACH)
def test_every_number_explains_itself(use: str, on: str) -> None:
    result = laid(use, f"{EACH[use]}, on: {on}")
    check_result(result.work)
    assert not rules(result)
    (drawing,) = result.work.drawings
    assert drawing.true_scale and not overlaps(drawing)
    assert repr(result.work) == repr(laid(use, f"{EACH[use]}, on: {on}").work)


@pytest.mark.parametrize("use", EACH)
def test_on_paste_downs_it_is_sealed_and_dry_before_casing_in(use: str) -> None:
    result = laid(use)
    cutting, laying, sealing = result.work.operations
    assert laying.after == (cutting.id, "text-block.line-spine")
    assert sealing.after == (laying.id,) and result.done == sealing.id
    assert laying.before_any == sealing.before_any == result.dry_before == INTO_CASE
    assert sealing.wait is not None and sealing.wait.value == result.may_close.value


@pytest.mark.parametrize("use", EACH)
def test_outside_it_waits_for_the_cover_and_for_nothing_inside(use: str) -> None:
    result = laid(use, f"{EACH[use]}, on: front")
    assert "case.cover" in result.work.operations[1].after
    assert all(operation.before_any == () for operation in result.work.operations)
    assert result.dry_before == ()


@pytest.mark.parametrize("use", EACH)
def test_a_clear_strip_stays_at_the_joint(use: str) -> None:
    """8 mm of joint and 6 mm beside it lie between fold and pattern."""
    inside, outside = laid(use), laid(use, f"{EACH[use]}, on: front")
    assert quantity(inside, "clear") == 8 + 6
    assert quantity(outside, "clear") == 6
    for result, panel in ((inside, 146.0), (outside, 147.0)):
        (drawing,) = result.work.drawings
        left = (drawing.width - panel) / 2 + quantity(result, "clear")
        lines = [i for i in drawing.items if isinstance(i, Line) and i.role == "outline"]
        assert min(x for line in lines for x, _ in line.points) >= left - 1e-6
        assert (
            max(x for line in lines for x, _ in line.points)
            <= left + quantity(result, "field.width") + 1e-6
        )


@pytest.mark.parametrize("use", EACH)
def test_the_sheet_of_the_back_mirrors_that_of_the_front(use: str) -> None:
    """As one faces a book its spine is at the left, and on the back at the right."""
    front, back = (laid(use, f"on: {on}, {EACH[use]}").work.drawings[0] for on in _BOARDS)
    boxes = [
        {(i.role, i.points) for i in drawing.items if isinstance(i, Line)}
        for drawing in (front, back)
    ]
    mirrored = {(role, tuple((front.width - x, y) for x, y in points)) for role, points in boxes[0]}
    assert boxes[1] == mirrored != boxes[0]
    spine = [
        next(i.at[0] for i in drawing.items if isinstance(i, Label) and i.text == "Spine side")
        for drawing in (front, back)
    ]
    assert spine[0] < front.width / 2 < spine[1]


def test_one_sheet_of_two_paste_downs_is_turned_over() -> None:
    (drawing,) = laid("tile-pattern").work.drawings
    assert any("turn one over" in i.text for i in drawing.items if isinstance(i, Label))


@pytest.mark.parametrize("use", EACH)
def test_both_paste_downs_take_twice_the_pieces_of_one_panel(use: str) -> None:
    sizes = {"joint": 0.0, "paste_down__width": 147.0, "paste_down__height": 211.0}
    one = laid(use, f"{EACH[use]}, on: front", **sizes)
    two = laid(use, f"{EACH[use]}, on: paste-downs", **sizes)
    assert quantity(two, "count") == 2 * quantity(one, "count")
    assert two.covers.value == pytest.approx(2 * one.covers.value)
    assert two.thickness.value == pytest.approx(one.thickness.value)


@pytest.mark.parametrize("use", EACH)
def test_the_pieces_are_as_many_as_are_counted(use: str) -> None:
    result = laid(use)
    assert sum(piece.count.value for piece in result.work.pieces) == quantity(result, "count")
    assert all(piece.stock == "wrap" for piece in result.work.pieces)
    cut = result.work.operations[0]
    assert cut.pieces == tuple(piece.name for piece in result.work.pieces)


def test_tiles_are_one_layer_and_a_net_two() -> None:
    film = 0.04
    tile = laid("tile-pattern", "stock: foil-card, width: 20 mm, height: 30 mm")
    crossed = laid("net-pattern", "stock: foil-card, width: 6 mm, spacing: 20 mm")
    assert tile.thickness.value == pytest.approx(0.2 + film)
    assert crossed.thickness.value == pytest.approx(2 * (0.2 + film))


@pytest.mark.parametrize(("overlap", "layers"), [(5, 2), (13, 3), (18, 4)])
def test_rows_lie_as_thick_as_they_overlap(overlap: int, layers: int) -> None:
    """A scale 25 mm high of which 25 - overlap shows lies over as many others as reach there."""
    item = f"stock: foil-card, width: 18 mm, height: 25 mm, overlap: {overlap} mm"
    assert laid("row-pattern", item).thickness.value == pytest.approx(layers * 0.24)


def test_one_row_is_one_layer() -> None:
    item = "stock: foil-card, width: 18 mm, height: 197 mm"
    result = laid("row-pattern", item)
    assert quantity(result, "rows") == 1
    assert result.thickness.value == pytest.approx(0.24)


def test_rows_are_drawn_together_until_they_fill_the_field() -> None:
    result = laid("row-pattern", "stock: wrap, width: 18 mm, height: 25 mm, overlap: 10 mm")
    n, step = quantity(result, "rows"), quantity(result, "step")
    assert step <= 15
    assert 25 + (n - 1) * step == pytest.approx(quantity(result, "field.height"))
    assert 25 + (n - 2) * 15 < quantity(result, "field.height")


def test_tape_and_cord_are_used_by_length_and_cut_from_nothing() -> None:
    for stock in ("cord", "ribbon"):
        result = laid("net-pattern", f"stock: {stock}, spacing: 30 mm")
        assert result.work.pieces == ()
        (use,) = result.work.operations[0].uses
        assert use.stock == stock
        assert use.amount.value == pytest.approx(quantity(result, "run") * 1.1)


@pytest.mark.parametrize(
    ("use", "options", "rule"),
    [
        ("tile-pattern", "stock: wrap, width: 130 mm, height: 30 mm", "pattern-piece-too-large"),
        ("tile-pattern", "stock: wrap, width: 1 mm, height: 1 mm", "pattern-too-many"),
        ("tile-pattern", f"{EACH['tile-pattern']}, margin: 110 mm", "pattern-no-room"),
        ("row-pattern", "stock: wrap, width: 18 mm, height: 199 mm", "pattern-piece-too-large"),
        ("row-pattern", f"{EACH['row-pattern']}, overlap: 25 mm", "pattern-overlap"),
        ("row-pattern", f"{EACH['row-pattern']}, side_lap: 18 mm", "pattern-overlap"),
        ("row-pattern", "stock: wrap, width: 60 mm, height: 25 mm", "pattern-tip"),
        ("row-pattern", "stock: wrap, width: 2 mm, height: 2 mm", "pattern-too-many"),
        ("strip-pattern", "stock: wrap, gap: 4 mm", "pattern-strip-width"),
        ("strip-pattern", "stock: ribbon, width: 5 mm, gap: 4 mm", "pattern-strip-width"),
        ("strip-pattern", "stock: wrap, width: 150 mm, gap: 4 mm", "pattern-piece-too-large"),
        ("net-pattern", "stock: wrap, spacing: 20 mm", "pattern-strip-width"),
        ("net-pattern", "stock: wrap, width: 6 mm, spacing: 6 mm", "net-spacing"),
        ("net-pattern", f"{EACH['net-pattern']}, angle: 85 deg", "net-angle"),
        ("net-pattern", "stock: wrap, width: 0.1 mm, spacing: 0.15 mm", "pattern-too-many"),
    ],
)
def test_what_cannot_be_laid_is_an_error_and_nothing_else(
    use: str, options: str, rule: str
) -> None:
    result = laid(use, options)
    assert rules(result) == [rule]
    assert result.work.problems[0].severity is Severity.ERROR
    assert result.done == "" and not result.work.operations and not result.work.pieces


@pytest.mark.parametrize(
    ("use", "options"),
    [
        ("tile-pattern", "stock: wrap, width: 128 mm, height: 30 mm"),
        ("row-pattern", f"{EACH['row-pattern']}, overlap: 24 mm, on: front"),
        ("row-pattern", "stock: wrap, width: 50 mm, height: 25 mm"),
        ("net-pattern", f"{EACH['net-pattern']}, angle: 80 deg"),
    ],
)
def test_what_can_just_be_laid_is(use: str, options: str) -> None:
    assert not [p for p in laid(use, options).work.problems if p.severity is Severity.ERROR]


def test_a_pattern_near_the_joint_is_warned_of() -> None:
    near = laid("tile-pattern", f"{EACH['tile-pattern']}, clear: 5 mm")
    assert rules(near) == ["pattern-near-joint"]
    assert not rules(laid("tile-pattern", f"{EACH['tile-pattern']}, clear: 6 mm"))


def test_thick_patterns_on_paste_downs_are_told_of() -> None:
    thick = laid("tile-pattern", "stock: grey, width: 20 mm, height: 30 mm")
    assert rules(thick) == ["pattern-gapes"]
    assert quantity(thick, "inside") == pytest.approx(2 * (2 + 0.04))
    assert not rules(laid("tile-pattern", "stock: grey, width: 20 mm, height: 30 mm, on: front"))
