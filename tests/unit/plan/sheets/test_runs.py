"""Like cuts follow each other; the plan stays the same plan."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings, strategies as st

from foredge.plan.cutting import CutPlan, Piece, Sheet, UsedSheet, faults, plan_cuts
from foredge.plan.sheets.runs import in_runs, runs_of

SIZES = st.sampled_from([20.0, 24.0, 30.0, 45.0])
PIECES = st.lists(
    st.tuples(SIZES, SIZES, st.integers(1, 12), st.booleans()), min_size=1, max_size=4
)


def laid_out(
    *pieces: tuple[float, float, int, bool], kerf: float = 0.0
) -> tuple[list[Sheet], list[Piece], CutPlan]:
    sheets = [Sheet("s", 215.0, 398.0, 3)]
    wanted = [Piece(f"p{n}", *piece) for n, piece in enumerate(pieces)]
    return sheets, wanted, plan_cuts(sheets, wanted, kerf=kerf, min_off_cut=40.0)


def shapes(used: UsedSheet) -> list[tuple[float, ...]]:
    return sorted((*vars_of(cut.panel), cut.at) for cut in used.cuts)


def vars_of(panel: object) -> tuple[float, ...]:
    return tuple(getattr(panel, name) for name in ("x", "y", "width", "height"))


def test_a_grid_is_two_runs() -> None:
    (used,) = laid_out((24.0, 24.0, 56, True))[2].used
    first, columns, rows = runs_of(in_runs(used))
    assert (first.times, columns.times, rows.times) == (1, 8, 6) or (
        (first.times, columns.times, rows.times) == (1, 7, 7)
    )
    assert rows.even and rows.panels == columns.strips and rows.strips == 56
    assert [cut.order for cut in columns.cuts] == [*range(2, 2 + columns.times)]
    assert (rows.parent, rows.where) == (1, "strips")


@settings(deadline=None, max_examples=60)
@given(PIECES, st.sampled_from([0.0, 1.5]))
def test_every_cut_stands_in_one_run_and_the_plan_is_still_sound(
    pieces: list[tuple[float, float, int, bool]], kerf: float
) -> None:
    sheets, wanted, plan = laid_out(*pieces, kerf=kerf)
    moved = [in_runs(used) for used in plan.used]
    for before, after in zip(plan.used, moved, strict=True):
        assert shapes(before) == shapes(after)
        assert (before.placements, before.off_cuts) == (after.placements, after.off_cuts)
        runs = runs_of(after)
        told = [cut.order for run in runs for cut in run.cuts]
        assert told == [*range(1, len(after.cuts) + 1)]
        for place, run in enumerate(runs):
            assert len(run.cuts) == run.times * run.panels
            assert (run.parent is None) == (place == 0)
            assert run.parent is None or run.parent < place
            assert len({(cut.axis, round(cut.at, 6)) for cut in run.cuts}) == 1
            ways = {
                (round(c.first.panel.width, 6), round(c.first.panel.height, 6)) for c in run.cuts
            }
            assert len(ways) == 1
        assert in_runs(after) == after
    assert faults(replace(plan, used=moved), sheets, wanted, kerf) == []
