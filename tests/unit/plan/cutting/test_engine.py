"""The public face: what is placed, what it costs, what is refused."""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path

import pytest

from foredge.plan.cutting import Piece, Rect, Sheet, faults, plan_cuts, too_large
from unit.plan.cutting import instances

ROOT = Path(__file__).parents[4]


@pytest.mark.parametrize("number", range(6))
def test_planted_sheets_without_waste_are_found_again(number: int) -> None:
    sheets, pieces = instances.planted_equal(number, 2, 4, turn=number % 2 == 0)
    plan = plan_cuts(sheets, pieces, seed=number)
    assert not plan.unplaced
    assert len(plan.used) == 2
    assert plan.proven


@pytest.mark.parametrize("number", range(4))
def test_planted_remnants_are_found_again(number: int) -> None:
    sheets, pieces = instances.planted_remnants(number, 2, 3, 4, turn=False)
    plan = plan_cuts(sheets, pieces)
    assert plan.area == pytest.approx(sum(p.width * p.height for p in pieces))


def test_the_kerf_is_lost_at_every_cut() -> None:
    pieces = [Piece("strip", 99, 50, 10, False)]
    assert len(plan_cuts([Sheet("s", 990, 50, 2)], pieces).used) == 1
    assert len(plan_cuts([Sheet("s", 990, 50, 2)], pieces, kerf=0.5).used) == 2
    assert len(plan_cuts([Sheet("s", 994.5, 50, 2)], pieces, kerf=0.5).used) == 1
    assert len(plan_cuts([Sheet("s", 994.4, 50, 2)], pieces, kerf=0.5).used) == 2


def test_a_piece_turns_only_when_it_may() -> None:
    sheets = [Sheet("s", 100, 50, 1)]
    assert plan_cuts(sheets, [Piece("p", 50, 100, 1, False)]).unplaced[0].count == 1
    plan = plan_cuts(sheets, [Piece("p", 50, 100, 1, True)])
    assert plan.used[0].placements[0].turned


def test_thirds_of_a_sheet_make_a_whole() -> None:
    plan = plan_cuts([Sheet("s", 400, 300, 1)], [Piece("p", 400 / 6, 300 / 7, 42, True)])
    assert not plan.unplaced


def test_a_stain_and_a_crease_stay_clear() -> None:
    zones = (Rect(200, 0, 0, 300), Rect(330, 100, 40, 40))
    sheets = [Sheet("s", 400, 300, 2, keep_out=zones)]
    pieces = [Piece("half", 200, 300, 2, False), Piece("bit", 60, 60, 4, True)]
    plan = plan_cuts(sheets, pieces)
    assert not plan.unplaced
    assert not faults(plan, sheets, pieces, 0.0)
    across = [Piece("across", 390, 50, 1, False)]
    assert plan_cuts(sheets, across).unplaced[0].count == 1


def test_a_crease_goes_with_the_kerf() -> None:
    sheets = [Sheet("s", 401, 300, 1, keep_out=(Rect(200.5, 0, 0, 300),))]
    plan = plan_cuts(sheets, [Piece("half", 200, 300, 2, False)], kerf=1)
    assert not plan.unplaced


@pytest.mark.parametrize("x", [0.3, 1.2, 399.5, 399.9])
def test_a_crease_close_to_an_edge_costs_only_the_edge(x: float) -> None:
    sheets = [Sheet("s", 400, 300, 1, keep_out=(Rect(x, 0, 0, 300),))]
    assert not plan_cuts(sheets, [Piece("most", 396, 300, 1, False)], kerf=1).unplaced


def test_priced_stock_is_bought_cheaply_and_one_missing_price_means_area() -> None:
    pieces = [Piece("p", 90, 90, 1, False)]
    large = Sheet("large", 300, 300, 1, price=1.0)
    small = Sheet("small", 100, 100, 1, price=4.0)
    assert plan_cuts([large, small], pieces).used[0].sheet is large
    loose = Sheet("small", 100, 100, 1)
    assert plan_cuts([large, loose], pieces).used[0].sheet is loose


def test_at_equal_area_fewer_sheets_are_used() -> None:
    sheets = [Sheet("half", 50, 100, 2), Sheet("whole", 100, 100, 1)]
    plan = plan_cuts(sheets, [Piece("p", 50, 50, 4, False)])
    assert [used.sheet.name for used in plan.used] == ["whole"]


def test_the_rest_stays_in_one_large_off_cut() -> None:
    plan = plan_cuts([Sheet("s", 300, 200, 1)], [Piece("p", 50, 100, 4, False)])
    assert max(off.area for off in plan.used[0].off_cuts) == 200 * 200
    assert plan.used[0].off_cuts[0].name == "A"


def test_narrow_off_cuts_are_waste() -> None:
    pieces = [Piece("p", 95, 60, 1, False)]
    wide = plan_cuts([Sheet("s", 100, 100, 1)], pieces)
    narrow = plan_cuts([Sheet("s", 100, 100, 1)], pieces, min_off_cut=10)
    assert len(wide.used[0].off_cuts) == 2
    assert [off.height for off in narrow.used[0].off_cuts] == [40]


def test_short_stock_places_as_many_pieces_as_it_can() -> None:
    pieces = [Piece("large", 80, 80, 1, False), Piece("small", 50, 50, 4, False)]
    plan = plan_cuts([Sheet("s", 100, 100, 1)], pieces)
    assert [(rest.piece.name, rest.count) for rest in plan.unplaced] == [("large", 1)]


def test_nothing_to_cut_and_nothing_to_cut_from() -> None:
    assert not plan_cuts([Sheet("s", 10, 10, 1)], []).used
    assert not plan_cuts([Sheet("s", 10, 10, 1)], [Piece("p", 5, 5, 0, True)]).unplaced
    assert plan_cuts([], [Piece("p", 5, 5, 3, True)]).unplaced[0].count == 3
    assert plan_cuts([Sheet("s", 10, 10, 0)], [Piece("p", 5, 5, 3, True)]).unplaced[0].count == 3


def test_too_large_names_the_nearest_sheet_and_the_lack() -> None:
    sheets = [Sheet("a", 100, 200, 1), Sheet("b", 150, 150, 1), Sheet("gone", 999, 999, 0)]
    found = too_large(sheets, Piece("p", 210, 90, 1, True))
    assert found is not None
    assert (found.sheet, found.short_width, found.short_height) == (sheets[0], 0, 10)
    assert "'a' lacks 10 mm in height, even turned" in str(found)
    assert too_large(sheets, Piece("p", 200, 90, 1, True)) is None
    assert too_large(sheets, Piece("p", 200, 90, 1, False)) is not None


@pytest.mark.parametrize("bad", [0, -1, math.nan, math.inf])
def test_impossible_sizes_are_refused(bad: float) -> None:
    for build in (Sheet, lambda *a: Piece(*a, turn=True)):
        with pytest.raises(ValueError, match="must be more than 0 mm"):
            build("x", bad, 10, 1)
        with pytest.raises(ValueError, match="height of"):
            build("x", 10, bad, 1)


def test_impossible_counts_prices_and_kerfs_are_refused() -> None:
    with pytest.raises(ValueError, match="count of piece 'x' is -1"):
        Piece("x", 1, 1, -1, True)
    with pytest.raises(ValueError, match="whole number"):
        Sheet("x", 1, 1, 1.5)  # type: ignore[arg-type]
    for price in (-1.0, math.nan):
        with pytest.raises(ValueError, match="price"):
            Sheet("x", 1, 1, 1, price=price)
    with pytest.raises(ValueError, match="keep-out"):
        Sheet("x", 1, 1, 1, keep_out=(Rect(0, 0, -1, 1),))
    for kerf in (-1.0, math.nan):
        with pytest.raises(ValueError, match="kerf"):
            plan_cuts([], [], kerf=kerf)


def test_the_plan_is_the_same_in_every_process() -> None:
    code = (
        "from unit.plan.cutting import instances as i; from foredge.plan.cutting import plan_cuts;"
        "print(plan_cuts(*i.planted_mixed(3, 3, 4, 6, turn=True), seed=5, kerf=0.3, effort=0.3))"
    )
    plans = []
    for number in ("1", "77"):
        env = {"PYTHONHASHSEED": number, "PYTHONPATH": f"{ROOT / 'compiler'}:{ROOT / 'tests'}"}
        run = [sys.executable, "-c", code]
        plans.append(subprocess.run(run, env=env, capture_output=True, check=True).stdout)
    assert plans[0] == plans[1]
    assert b"Placement" in plans[0]


def test_four_hundred_folios_use_the_closed_pattern() -> None:
    plan = plan_cuts([Sheet("s", 440, 600, 250)], [Piece("folio", 300, 205, 400, False)])
    assert len(plan.used) == 200  # one across, two down: by hand
    turned = plan_cuts([Sheet("s", 500, 500, 100)], [Piece("folio", 300, 200, 8, True)])
    assert len(turned.used) == 3  # a whirl would hold 4 on a sheet; edge-to-edge cuts free 3


@pytest.mark.parametrize("turn", [False, True])
def test_two_thousand_strips_side_by_side_are_laid_out_and_numbered(turn: bool) -> None:
    plan = plan_cuts([Sheet("s", 10_000, 100, 1)], [Piece("strip", 5, 100, 2000, turn)])
    assert not plan.unplaced
    assert len(plan.used[0].cuts) == 1999


def test_a_long_row_of_different_strips_is_laid_out() -> None:
    strips = [Piece(f"strip {i}", 5 + i / 1000, 100, 1, False) for i in range(1200)]
    plan = plan_cuts([Sheet("s", 9000, 100, 1)], strips, effort=0.05)
    assert not plan.unplaced
