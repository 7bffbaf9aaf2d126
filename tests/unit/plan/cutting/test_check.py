"""The checker: it passes what the engine makes and refuses every spoiled plan."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings, strategies as st

from foredge.plan.cutting import (
    CutPlan,
    CuttingBug,
    Piece,
    Placement,
    Rect,
    Sheet,
    UsedSheet,
    faults,
    plan_cuts,
)
from foredge.plan.cutting.check import ensure, separable

sizes = st.integers(5, 120) | st.floats(5, 120).map(lambda value: round(value, 3))
piece_lists = st.lists(
    st.builds(Piece, st.text("abc", min_size=1), sizes, sizes, st.integers(1, 3), st.booleans()),
    min_size=1,
    max_size=6,
)
zones = st.builds(
    Rect, st.integers(0, 120), st.integers(0, 120), st.integers(0, 40), st.integers(0, 40)
)
sheet_lists = st.lists(
    st.builds(
        Sheet,
        st.text("xyz", min_size=1),
        st.integers(30, 200),
        st.integers(30, 200),
        st.integers(0, 3),
        keep_out=st.lists(zones, max_size=2).map(tuple),
    ),
    min_size=1,
    max_size=3,
)


@settings(max_examples=120, deadline=None)
@given(sheet_lists, piece_lists, st.sampled_from([0.0, 0.3, 2.0]))
def test_every_plan_of_the_engine_is_sound(
    sheets: list[Sheet], pieces: list[Piece], kerf: float
) -> None:
    plan = plan_cuts(sheets, pieces, kerf=kerf, effort=0.02)
    assert not faults(plan, sheets, pieces, kerf)


@settings(max_examples=60, deadline=None)
@given(sheet_lists, piece_lists, st.data())
def test_a_moved_piece_is_noticed(
    sheets: list[Sheet], pieces: list[Piece], data: st.DataObject
) -> None:
    plan = plan_cuts(sheets, pieces, kerf=1.0, effort=0.02)
    if not plan.used:
        return
    used = plan.used[0]
    index = data.draw(st.integers(0, len(used.placements) - 1))
    shift = data.draw(st.sampled_from([-7.0, -0.01, 0.01, 3.0]))
    side = data.draw(st.sampled_from(["x", "y"]))
    moved = replace(used.placements[index], **{side: getattr(used.placements[index], side) + shift})
    spoiled = replace(
        used, placements=(*used.placements[:index], moved, *used.placements[index + 1 :])
    )
    assert faults(replace(plan, used=[spoiled, *plan.used[1:]]), sheets, pieces, 1.0)


SHEETS = [Sheet("s", 100, 100, 2)]
PIECES = [Piece("p", 40, 30, 4, False)]


def _spoil(**changes: object) -> list[str]:
    plan = plan_cuts(SHEETS, PIECES)
    used = replace(plan.used[0], **changes)  # type: ignore[arg-type]
    return faults(replace(plan, used=[used, *plan.used[1:]]), SHEETS, PIECES, 0.0)


def test_each_kind_of_fault_is_named() -> None:
    used = plan_cuts(SHEETS, PIECES).used[0]
    first, *rest = used.placements
    assert "accounted for 3 times" in _spoil(placements=tuple(rest))[0]
    assert any(
        "wanted" in f for f in _spoil(placements=(replace(first, width=30, height=40), *rest))
    )
    assert any("edge" in f for f in _spoil(placements=(replace(first, x=-5), *rest)))
    assert any("overlap" in f for f in _spoil(placements=(replace(first, x=1, y=1), *rest)))
    assert any("no cut" in f for f in _spoil(cuts=()))
    assert any("waits" in f or "free" in f for f in _spoil(cuts=used.cuts[:-1]))
    assert any("not on a panel" in f for f in _spoil(cuts=used.cuts[::-1]))
    wrong = replace(used.cuts[0], at=used.cuts[0].at + 1)
    assert any("not what the cut leaves" in f for f in _spoil(cuts=(wrong, *used.cuts[1:])))
    assert any("off-cut" in f for f in _spoil(off_cuts=()))
    spoiled = Sheet("s", 100, 100, 2, keep_out=(Rect(first.x + 1, first.y + 1, 1, 1),))
    assert any("keep-out" in f for f in _spoil(sheet=spoiled))
    assert any("used" in f for f in _spoil(sheet=Sheet("other", 100, 100, 1)))


def test_a_whirl_of_four_cannot_be_cut_edge_to_edge() -> None:
    whirl = [(0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2)]
    placed = [Placement(Piece("p", w, h, 1, True), x, y, w, h) for x, y, w, h in whirl]
    assert not separable(placed, 0.0)
    assert separable(placed[:3], 0.0)


def test_pieces_closer_than_the_kerf_cannot_be_cut() -> None:
    piece = Piece("p", 10, 10, 2, False)
    pair = [Placement(piece, 0, 0, 10, 10), Placement(piece, 12, 0, 10, 10)]
    assert separable(pair, 2.0)
    assert not separable(pair, 2.1)


def test_a_faulty_plan_is_raised_as_our_own_bug() -> None:
    with pytest.raises(CuttingBug, match="accounted for 0 times"):
        ensure(CutPlan([], []), SHEETS, PIECES, 0.0)
    with pytest.raises(CuttingBug, match="holds no piece"):
        ensure(CutPlan([UsedSheet(SHEETS[0], (), ())], []), SHEETS, [], 0.0)
