"""The last look: rows and columns, few cuts, and no cut between two pieces of waste."""

from __future__ import annotations

from itertools import product

from hypothesis import given, settings, strategies as st

from foredge.plan.cutting import Part, Piece, Rect, Sheet, UsedSheet, plan_cuts

sides = st.integers(10, 60)


def _largest(used: UsedSheet) -> float:
    return max((off.area for off in used.off_cuts), default=0.0)


def test_many_tiles_lie_in_rows_and_columns() -> None:
    """They were laid ragged: 66 cuts, and an off-cut of 71 by 103 mm at best."""
    plan = plan_cuts([Sheet("s", 215, 199, 1)], [Piece("tile", 24, 24, 56, True)], min_off_cut=10)
    (used,) = plan.used
    assert len({placed.x for placed in used.placements}) * 8 == 56
    assert len({placed.y for placed in used.placements}) == 8
    assert len(used.cuts) == 57
    assert _largest(used) == (215 - 7 * 24) * 199


def _plain_grids(sheet: Sheet, piece: Piece) -> list[tuple[int, float]]:
    """Cuts and largest off-cut of every full grid whose rows are cut off a block of their width."""
    found = []
    for columns, rows in product(range(1, piece.count + 1), repeat=2):
        rest = sheet.width - columns * piece.width, sheet.height - rows * piece.height
        if columns * rows == piece.count and min(rest) >= 0:
            beside, behind = rest[0] * sheet.height, rest[1] * columns * piece.width
            cuts = piece.count - 1 + (rest[0] > 0) + (rest[1] > 0)
            found.append((cuts, max(beside, behind)))
    return found


@settings(max_examples=60, deadline=None)
@given(sides, sides, st.integers(2, 24), st.integers(100, 300), st.integers(100, 300))
def test_no_plain_grid_beats_the_plan_in_cuts_and_off_cut(
    width: int, height: int, count: int, wide: int, high: int
) -> None:
    sheet, piece = Sheet("s", wide, high, 1), Piece("p", width, height, count, False)
    plan = plan_cuts([sheet], [piece], effort=0.02)
    if plan.unplaced:
        return
    (used,) = plan.used
    for cuts, off_cut in _plain_grids(sheet, piece):
        assert len(used.cuts) <= cuts or _largest(used) > off_cut


def test_pieces_of_a_kind_keep_together_where_it_costs_nothing() -> None:
    pieces = [
        Piece("label", 90, 50, 13, True),
        Piece("board", 120, 180, 2, False),
        Piece("strip", 30, 200, 3, False),
    ]
    plan = plan_cuts([Sheet("s", 440, 600, 2)], pieces, min_off_cut=20)
    (used,) = plan.used
    assert _largest(used) >= 0.97 * 290 * 450
    assert len(used.cuts) <= 24


def _worth(used: UsedSheet, part: Part) -> bool:
    """Whether a piece or a named off-cut comes out of this part."""
    if part.next_cut is None:
        return part.placement is not None or part.off_cut is not None
    cut = used.cuts[part.next_cut - 1]
    return _worth(used, cut.first) or _worth(used, cut.second)


zones = st.builds(
    Rect, st.integers(0, 180), st.integers(0, 180), st.integers(0, 40), st.integers(0, 40)
)


@settings(max_examples=150, deadline=None)
@given(
    st.lists(zones, max_size=4).map(tuple),
    st.lists(
        st.builds(Piece, st.just("p"), sides, sides, st.integers(1, 3), st.booleans()), max_size=3
    ),
    st.sampled_from([0.0, 15.0, 60.0]),
    st.sampled_from([0.0, 1.0]),
)
def test_no_cut_parts_waste_from_waste(
    spoiled: tuple[Rect, ...], pieces: list[Piece], least: float, kerf: float
) -> None:
    sheets = [Sheet("s", 200, 160, 2, keep_out=spoiled)]
    plan = plan_cuts(sheets, pieces, effort=0.02, min_off_cut=least, kerf=kerf)
    for used in plan.used:
        for cut in used.cuts:
            assert _worth(used, cut.first) or _worth(used, cut.second)
