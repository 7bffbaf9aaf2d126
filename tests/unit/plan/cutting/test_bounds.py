"""Lower bounds: never above an exact optimum, and stronger than the area alone."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings, strategies as st

from foredge.plan.cutting import Piece, Sheet
from foredge.plan.cutting.bounds import area_cost, least_cost
from foredge.plan.cutting.job import make_job
from foredge.plan.cutting.scales import scales
from unit.plan.cutting import instances
from unit.plan.cutting.exact import least_area

lengths = st.lists(st.integers(1, 60).map(float), min_size=1, max_size=8)


@settings(max_examples=200, deadline=None)
@given(lengths, st.integers(30, 60).map(float), st.integers(1, 60).map(float), st.randoms())
def test_a_row_of_pieces_never_counts_more_than_the_length_it_lies_on(
    sizes: list[float], whole: float, shorter: float, rng: random.Random
) -> None:
    """Every function on every subset; those for one length only where it is the sheet's."""
    fitting = [size for size in sizes if size <= whole]
    row = [size for size in fitting if rng.random() < 0.6]
    while sum(row) > whole:
        row.pop()
    for f in scales([[size] for size in fitting], whole, alone=True):
        assert sum(map(f, row)) <= f(whole) + 1e-9
    length = min(shorter, whole)
    while sum(row) > length:
        row.pop()
    for f in scales([[size] for size in fitting], whole, alone=False):
        assert sum(map(f, row)) <= f(length) + 1e-9


@pytest.mark.parametrize("group", range(1, 11))
@pytest.mark.parametrize("turn", [False, True])
def test_no_bound_exceeds_an_exact_optimum_on_mixed_sheets(group: int, turn: bool) -> None:
    for number in range(3):
        sheets, pieces = instances.mixed_classes(group, 6, number, turn=turn)
        best = least_area(sheets, pieces)
        job, _ = make_job(sheets, pieces, 0.0)
        assert best is not None
        assert area_cost(job) <= least_cost(job)
        assert least_cost(job) // job.unit <= best


def test_large_pieces_need_more_than_their_area() -> None:
    """Five pieces of 60 by 60: one on each sheet of 100 by 100, whatever their area says."""
    sheets, pieces = [Sheet("s", 100, 100, 9)], [Piece("p", 60, 60, 5, True)]
    job, _ = make_job(sheets, pieces, 0.0)
    assert area_cost(job) // job.unit == 2 * 100 * 100
    assert least_cost(job) // job.unit == 5 * 100 * 100


def test_large_pieces_count_on_mixed_sheets_too() -> None:
    sheets = [Sheet("large", 100, 100, 9), Sheet("small", 70, 70, 2)]
    job, _ = make_job(sheets, [Piece("p", 60, 60, 5, False)], 0.0)
    assert least_cost(job) // job.unit == 3 * 100 * 100 + 2 * 70 * 70


def test_a_large_piece_keeps_medium_ones_out() -> None:
    """Beside a long strip lies one short one, and three alone: the area would do for two sheets."""
    sheets = [Sheet("s", 200, 10, 9)]
    long = [Piece(f"long {i}", 122, 10, 1, False) for i in range(2)]
    short = [Piece(f"short {i}", 51, 10, 1, False) for i in range(3)]
    job, _ = make_job(sheets, long + short, 0.0)
    assert area_cost(job) // job.unit == 2 * 200 * 10
    assert least_cost(job) // job.unit == 3 * 200 * 10
    assert least_area(sheets, long + short) == 3 * 200 * 10
