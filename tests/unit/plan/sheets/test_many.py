"""Very many pieces: shares of the work are planned and repeated, and nothing is lost."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings, strategies as st

from foredge.plan.cutting import CutPlan, Piece, Sheet, plan_cuts
from foredge.plan.sheets.many import MOST, Alike, plan_many


def engine(sheets: list[Sheet], pieces: list[Piece]) -> CutPlan:
    return plan_cuts(sheets, pieces, effort=0.05)


def placed(found: list[Alike]) -> Counter[str]:
    counts: Counter[str] = Counter()
    for same, used in found:
        for placement in used.placements:
            counts[placement.piece.name] += same
    return counts


def test_few_pieces_are_planned_as_they_are() -> None:
    sheets, pieces = [Sheet("s", 100, 100, 9)], [Piece("p", 50, 50, 30, False)]
    found, rest = plan_many(engine, sheets, pieces)
    assert sum(same for same, _ in found) == len(engine(sheets, pieces).used) == 8
    assert rest == []


@pytest.mark.parametrize("count", [MOST + 1, 5_003, 100_000])
def test_repeated_shares_take_no_more_sheets_than_must_be(count: int) -> None:
    found, rest = plan_many(
        engine, [Sheet("s", 100, 100, 100_000)], [Piece("p", 50, 33, count, False)]
    )
    assert rest == []
    assert placed(found) == {"p": count}
    assert sum(same for same, _ in found) == -(-count // 6)


def test_where_the_shelf_runs_out_it_is_used_up_and_the_rest_is_told() -> None:
    sheets = [Sheet("s", 100, 100, 300), Sheet("t", 100, 50, 1)]
    found, (rest,) = plan_many(engine, sheets, [Piece("p", 50, 50, 5_000, True)])
    assert placed(found) == {"p": 1202}
    assert (rest.name, rest.count) == ("p", 5_000 - 1202)


def test_the_work_asked_of_the_engine_stays_small() -> None:
    asked: list[int] = []

    def counting(sheets: list[Sheet], pieces: list[Piece]) -> CutPlan:
        asked.append(sum(piece.count for piece in pieces))
        return engine(sheets, pieces)

    plan_many(counting, [Sheet("s", 100, 100, 100_000)], [Piece("p", 40, 40, 100_000, False)])
    assert max(asked) <= MOST
    assert len(asked) < 6


@settings(deadline=None, max_examples=15)
@given(
    pieces=st.lists(
        st.tuples(st.integers(20, 90), st.integers(20, 90), st.integers(1, 2000)),
        min_size=1,
        max_size=3,
    ),
    shelf=st.lists(
        st.tuples(st.integers(60, 200), st.integers(60, 200), st.integers(1, 900)),
        min_size=1,
        max_size=2,
    ),
)
def test_nothing_is_lost_and_no_sheet_is_cut_twice(
    pieces: list[tuple[int, int, int]], shelf: list[tuple[int, int, int]]
) -> None:
    wanted = [Piece(f"p{i}", w, h, count, False) for i, (w, h, count) in enumerate(pieces)]
    sheets = [Sheet(f"s{i}", w, h, count) for i, (w, h, count) in enumerate(shelf)]
    found, rest = plan_many(engine, sheets, wanted)
    made = placed(found) + Counter({piece.name: piece.count for piece in rest})
    assert made == {piece.name: piece.count for piece in wanted}
    used: Counter[str] = Counter()
    for same, one in found:
        used[one.sheet.name] += same
    assert all(used[sheet.name] <= sheet.count for sheet in sheets)
