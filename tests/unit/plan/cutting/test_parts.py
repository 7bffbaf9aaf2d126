"""The parts of the search: perfect sheets, patterns for many equal pieces, exact small plans."""

from __future__ import annotations

import math
from random import Random

import pytest
from ortools.linear_solver import pywraplp

from foredge.plan.cutting import Piece, Rect, Sheet, faults, plan_cuts
from foredge.plan.cutting.blocks import perfect_bins
from foredge.plan.cutting.columns import Programme, kinds_of
from foredge.plan.cutting.insert import Style, insert_closest
from foredge.plan.cutting.job import Job, make_job
from foredge.plan.cutting.repeats import patterned, repeats
from foredge.plan.cutting.start import fill_all
from foredge.plan.cutting.strips import best_strips, stacks_of
from foredge.plan.cutting.tiny import cheapest, small
from foredge.plan.cutting.tree import FREE, Bin, Node, all_nodes, bin_items, copy_without, nodes_of
from unit.plan.cutting import instances
from unit.plan.cutting.exact import least_area
from unit.plan.cutting.test_optimum import _task


def _job(task: instances.Task) -> Job:
    return make_job(*task, 0.0)[0]


def _assert_whole(job: Job, bin_: Bin) -> None:
    """The panels of a sheet add up on every level, and its notes on itself are true."""
    for node in all_nodes(bin_):
        if node.kids:
            along = [(kid.h if node.axis else kid.w) for kid in node.kids]
            across = {(kid.w if node.axis else kid.h) for kid in node.kids}
            assert sum(along) == (node.h if node.axis else node.w)
            assert across == {node.w if node.axis else node.h}
        elif node.item >= 0:
            assert (node.w, node.h) in job.sides[node.item]
    items = bin_items(bin_)
    assert bin_.mask == sum(1 << item for item in items)
    assert bin_.fill == pytest.approx(sum(job.area[item] for item in items))


@pytest.mark.parametrize("turn", [False, True])
def test_the_planted_sheets_are_among_the_perfect_ones(turn: bool) -> None:
    job = _job(instances.planted_remnants(3, 6, 4, 6, turn=turn))
    bins, work = perfect_bins(job, range(len(job.area)), 2_000_000)
    assert 0 < work <= 2_000_100
    for bin_ in bins:
        _assert_whole(job, bin_)
        assert bin_.fill == job.stocks[bin_.stock].area
    covered = {item for bin_ in bins for item in bin_items(bin_)}
    assert covered == set(range(len(job.area)))


def test_strips_are_worth_what_the_best_grid_is() -> None:
    """One kind: rows times columns by hand; the counts hold within a strip."""
    stacks = stacks_of([((30.0, 20.0),)], [100], 0, 100.0)
    value, strips, _ = best_strips(100.0, 100.0, stacks, [1.0], [100])
    assert value == 15  # three along, five across
    assert sum(stack.number for strip in strips for stack in strip.stacks) == 15


def _bound_by_patterns(job: Job, sheets: list[list[int]]) -> float:
    """The linear programme over these patterns by another solver."""
    solver = pywraplp.Solver.CreateSolver("GLOP")
    times = [solver.NumVar(0, solver.infinity(), "") for _ in sheets]
    for kind, items in enumerate(kinds_of(job).items):
        solver.Add(sum(c[kind] * x for c, x in zip(sheets, times, strict=True)) >= len(items))
    solver.Minimize(sum(times))
    assert solver.Solve() == pywraplp.Solver.OPTIMAL
    return float(solver.Objective().Value())


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize("turn", [False, True])
def test_many_equal_pieces_take_hardly_more_than_the_patterns_allow(
    number: int, turn: bool
) -> None:
    sheets, pieces = instances.many_equal(number, turn=turn)
    job = _job((sheets, pieces))
    assert repeats(job)
    kinds = kinds_of(job)
    programme = Programme(job, kinds, 2_000_000)
    programme.solve()
    bound = _bound_by_patterns(job, [p.counts(len(kinds.items)) for p in programme.known])
    assert programme.value() == pytest.approx(bound)
    plan = plan_cuts(sheets, pieces)
    assert not faults(plan, sheets, pieces, 0.0)
    assert len(plan.used) <= math.ceil(bound) + 1


def test_patterns_use_no_piece_and_no_sheet_twice() -> None:
    sheets, pieces = instances.few(instances.many_equal(4, turn=True), 90)
    job = _job((sheets, pieces))
    bins, left, _ = patterned(job, 2_000_000)
    assert 0 < len(bins) <= 90
    items = [item for bin_ in bins for item in bin_items(bin_)]
    assert sorted(items + left) == list(range(len(job.area)))
    for bin_ in bins:
        _assert_whole(job, bin_)


@pytest.mark.parametrize("number", range(200, 212))
def test_every_small_plan_is_proven_the_cheapest(number: int) -> None:
    sheets, pieces = _task(number, 6)
    best = least_area(sheets, pieces)
    job = _job((sheets, pieces))
    assert small(job)
    bins, _, proven = cheapest(job, 10**18)
    assert proven
    assert (bins is None) == (best is None)
    if bins is not None:
        assert sum(job.stocks[bin_.stock].area for bin_ in bins) / job.scale**2 == best
        for bin_ in bins:
            _assert_whole(job, bin_)
        plan = plan_cuts(sheets, pieces)
        assert (plan.proven, plan.area) == (True, best)


def test_zones_to_cut_round_are_left_to_the_search() -> None:
    sheets = [Sheet("s", 100, 100, 1, keep_out=(Rect(50, 0, 0, 100),))]
    assert not small(_job((sheets, [Piece("p", 20, 20, 2, True)])))


@pytest.mark.parametrize("turn", [False, True])
@pytest.mark.parametrize("group", [1, 4, 6, 10])
def test_a_thinned_copy_is_whole_and_what_was_freed_goes_back_where_it_fits(
    group: int, turn: bool
) -> None:
    job, rng = _job(instances.classical(group, 40, 3, turn=turn)), Random(group)
    for bin_ in fill_all(job, list(range(40)), Style(), rng.random)[0]:
        leaves: list[Node] = []
        removed: list[int] = []
        dropped = {node for node in nodes_of(bin_) if rng.random() < 0.2}
        twin = copy_without(bin_, dropped, leaves, removed, job.area)
        _assert_whole(job, twin)
        free = [node for node in all_nodes(twin) if node.item == FREE]
        assert sorted(map(id, leaves)) == sorted(map(id, free))
        assert sorted(removed + bin_items(twin)) == sorted(bin_items(bin_))
        left, _ = insert_closest(job, leaves, removed, Style(1.2), rng.random)
        _assert_whole(job, twin)
        assert sorted(left + bin_items(twin)) == sorted(bin_items(bin_))
        fits = [w <= p.w and h <= p.h for i in left for w, h in job.sides[i] for p in leaves]
        assert not any(fits)
