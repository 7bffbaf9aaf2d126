"""The search over orders on projects with maximum lags that are known to have a schedule."""

from __future__ import annotations

from functools import cache
from random import Random
from statistics import mean

import pytest

from foredge.plan.schedule import Lag, Task, solve, verify
from foredge.plan.schedule.distances import distances
from foredge.plan.schedule.instance import compile_instance
from foredge.plan.schedule.orders import Orders, noise
from foredge.plan.schedule.relax import chains
from unit.plan.schedule.exhaustive import best_finish, solved_by_cp_sat
from unit.plan.schedule.instances import Instance, planted

CELLS = [(0.0, 0.2), (0.1, 0.5), (0.25, 0.3), (0.0, 0.5), (0.1, 0.1), (0.25, 0.5)]


@cache
def planted_cases() -> list[Instance]:
    return [planted(20, *CELLS[k % len(CELLS)], seed=100 + k) for k in range(12)]


def searched(case: Instance, finish: int, nodes: int = 20_000) -> tuple[int | None, bool]:
    """The finish of the schedule found by ``finish``, if any, and whether all was tried."""
    instance = compile_instance(*case, None)
    orders = Orders(instance, distances(instance))
    outcome = orders.run(finish, nodes, noise(Random(0), 0.0))
    if outcome.start is None:
        return None, outcome.exhausted
    return max(instance.finishes(outcome.start)), outcome.exhausted


def small(seed: int) -> Instance:
    """Five tasks on two resources with lags of both kinds, some in a circle."""
    rng = Random(f"small {seed}")
    tasks = [
        Task(n, rng.randint(1, 4), {"hands": rng.randint(0, 2), "press": rng.randint(0, 2)})
        for n in "abcde"
    ]
    lags = []
    for before, after in rng.sample(["ab", "ac", "bc", "bd", "cd", "ce", "de", "ae"], 5):
        least = rng.randint(-2, 4)
        lags.append(Lag(before, after, least, least + rng.randint(0, 4)))
    return tasks, {"hands": 2, "press": 2}, lags


@pytest.mark.parametrize("seed", range(25))
def test_the_search_is_complete(seed: int) -> None:
    """It finds the best finish of all, and refutes every one below it."""
    case = small(seed)
    best = best_finish(*case, horizon=18)
    result = solve(*case)
    if best is None:
        assert not result.feasible
        return
    assert result.finish == best
    assert searched(case, best) == (best, False)
    assert searched(case, best - 1) == (None, True)


def test_tight_maximum_lags_that_can_be_kept_are_kept() -> None:
    """Scarce resources and up to half as many maximum lags as links: none goes unsolved."""
    found = []
    for case in planted_cases():
        status, best = solved_by_cp_sat(*case)
        result = solve(*case)
        assert result.feasible
        assert verify(*case, result) == []
        if status == "optimal":
            found.append(100 * (result.finish / best - 1))
    assert len(found) >= 10
    assert min(found) >= 0
    assert mean(found) <= 1.0


@pytest.mark.parametrize("number", range(4))
def test_chains_alone_keep_every_capacity(number: int) -> None:
    """The earliest starts under lags and chains need no more than there is."""
    tasks, capacity, lags = planted_cases()[number]
    lags = [lag for lag in lags if lag.at_most is None]
    instance = compile_instance(tasks, capacity, lags, None)
    result = solve(tasks, capacity, lags)
    start = [result.start[task.id] for task in tasks]
    arcs = chains(instance, start, range(len(tasks)), Random(number))
    chained = [Lag(tasks[i].id, tasks[j].id, tasks[i].duration) for i, j in arcs]
    ample = solve(tasks, dict.fromkeys(capacity, 10_000), lags + chained)
    assert verify(tasks, capacity, lags + chained, ample) == []
    assert ample.finish <= result.finish


def test_what_is_ruled_out_is_said_to_be() -> None:
    """Two clashing tasks inside a circle too short for both, wherever in time it lies."""
    tasks = [Task("a", 5, {"hands": 1}), Task("b", 5, {"hands": 1}), Task("end", 0, {})]
    lags = [Lag("a", "end", 0, 7), Lag("b", "end", 0, 7), Lag("a", "b", -4, 4)]
    result = solve(tasks, {"hands": 1}, lags)
    assert (result.feasible, result.proven) == (False, True)
    eased = [*lags[:2], Lag("a", "b", -4, 5)]
    assert solve(tasks, {"hands": 1}, eased).finish == 10
