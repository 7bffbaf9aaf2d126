"""Against exact references: exhaustive on small tasks, sets chosen by CP-SAT on medium ones."""

from __future__ import annotations

import random

import pytest
from ortools.sat.python import cp_model

from foredge.plan.cutting import Piece, Sheet, plan_cuts
from foredge.plan.cutting.bounds import least_cost
from foredge.plan.cutting.job import make_job
from unit.plan.cutting import instances
from unit.plan.cutting.exact import least_area


def _task(number: int, items: int) -> instances.Task:
    rng = random.Random(f"optimum {number} {items}")
    pieces = [
        Piece(f"p{i}", rng.randint(15, 70), rng.randint(15, 70), 1, rng.random() < 0.5)
        for i in range(items)
    ]
    sizes = [(rng.randint(70, 120), rng.randint(70, 120)) for _ in range(3)]
    return [Sheet(f"s{i}", w, h, 1 + 2 * (i == 0)) for i, (w, h) in enumerate(sizes)], pieces


@pytest.mark.parametrize("number", range(12))
def test_small_tasks_reach_the_optimum(number: int) -> None:
    sheets, pieces = _task(number, 4 + number % 3)
    best = least_area(sheets, pieces)
    plan = plan_cuts(sheets, pieces)
    assert bool(plan.unplaced) == (best is None)
    if best is not None:
        assert plan.area == best
    job, _ = make_job(sheets, pieces, 0.0)
    assert best is None or least_cost(job) // job.unit <= best


def test_medium_tasks_are_close_to_the_optimum() -> None:
    excess = []
    for number in range(8):
        sheets, pieces = _task(number, 9)
        best = least_area(sheets, pieces)
        plan = plan_cuts(sheets, pieces)
        assert best is None or plan.unplaced or plan.area >= best
        if best is not None:
            assert not plan.unplaced
            excess.append(plan.area / best - 1)
    assert len(excess) >= 4
    assert sum(excess) / len(excess) <= 0.01


@pytest.mark.parametrize("group", range(1, 11))
@pytest.mark.parametrize("turn", [False, True])
def test_no_bound_exceeds_an_exact_optimum(group: int, turn: bool) -> None:
    sheets, pieces = instances.classical(group, 7, 0, turn=turn)
    best = least_area(sheets, pieces)
    job, _ = make_job(sheets, pieces, 0.0)
    assert best is not None
    assert least_cost(job) // job.unit <= best


def test_the_bound_counts_pieces_that_exclude_each_other() -> None:
    pieces = [Piece("p", 51, 51, 5, True)]
    job, _ = make_job([Sheet("s", 100, 100, 9)], pieces, 0.0)
    assert least_cost(job) // job.unit == 50_000


def _least_area_of_equal(sheets: list[Sheet], piece: Piece) -> float:
    """Least sheet area for equal pieces of fixed grain, where a plain grid fills a sheet best."""
    model = cp_model.CpModel()
    used = [model.new_int_var(0, sheet.count, "") for sheet in sheets]
    grid = [int(s.width // piece.width) * int(s.height // piece.height) for s in sheets]
    model.add(sum(n * u for n, u in zip(grid, used, strict=True)) >= piece.count)
    model.minimize(sum(int(s.width * s.height) * u for s, u in zip(sheets, used, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return solver.objective_value


def test_four_hundred_folios_take_the_least_area_and_patches_little_more() -> None:
    sheets, pieces = instances.folio_case()
    best = _least_area_of_equal(sheets, pieces[0])
    assert plan_cuts(sheets, pieces[:1]).area == best
    assert best <= plan_cuts(sheets, pieces).area <= 1.015 * best
