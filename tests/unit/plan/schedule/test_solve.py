"""Both methods against an exhaustive search, on cases small enough for it."""

from __future__ import annotations

from random import Random

import pytest

from foredge.plan.schedule import Calendar, Lag, Task, solve
from unit.plan.schedule.exhaustive import best_finish

METHODS = ("default", "optimal")
HORIZON = 26


def small_case(seed: int) -> tuple[list[Task], dict[str, int], list[Lag], Calendar | None]:
    """Four tasks, two resources, lags of every sign; on every other seed two calendars."""
    rng = Random(seed)
    calendar = None
    within: list[tuple[str, ...]] = [()]
    if seed % 2:
        bench = [(rng.randint(0, 3), 6), (8, rng.randint(11, 14)), (17, rng.randint(18, 23))]
        calendar = Calendar({"bench": bench, "daylight": [(2, 12), (15, 21)]})
        within = [(), ("bench",), ("bench",), ("bench", "daylight")]
    tasks = []
    for name in "abcd":
        demand = {"hands": rng.randint(0, 1), "press": rng.randint(0, 2)}
        held = ("press",) if rng.random() < 0.5 else ()
        where = rng.choice(within)
        split = rng.random() < 0.5
        tasks.append(Task(name, rng.randint(0, 5), demand, where, split, held))
    lags = []
    for before, after in rng.sample(["ab", "ac", "bc", "bd", "cd", "ad"], 4):
        least = rng.randint(-3, 6)
        most = least + rng.randint(0, 6) if rng.random() < 0.4 else None
        lags.append(Lag(before, after, least, most, from_finish=rng.random() < 0.4))
    return tasks, {"hands": 1, "press": 2}, lags, calendar


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("seed", range(40))
def test_finish_is_the_best_of_all(seed: int, method: str) -> None:
    tasks, capacity, lags, calendar = small_case(seed)
    best = best_finish(tasks, capacity, lags, HORIZON, calendar)
    result = solve(tasks, capacity, lags, calendar=calendar, method=method)
    if best is None:
        assert not result.feasible or result.finish > HORIZON
        assert result.feasible or result.reason
    else:
        assert result.feasible
        assert result.finish == best
        assert result.proven or method == "default"


@pytest.mark.parametrize("method", METHODS)
def test_a_start_can_lie_before_its_forerunner(method: str) -> None:
    tasks = [Task("a", 4, {}), Task("b", 2, {})]
    late = solve(tasks, {}, [Lag("a", "b", -1), Lag("b", "a", 1, 1)], method=method)
    assert late.start == {"a": 1, "b": 0}
    assert late.finish == 5


def test_a_lag_may_be_longer_than_the_task() -> None:
    tasks = [Task("coat", 10, {"hands": 1}), Task("sand", 5, {"hands": 1})]
    result = solve(tasks, {"hands": 1}, [Lag("coat", "sand", 130)])
    assert result.start == {"coat": 0, "sand": 130}
    assert result.proven


def test_nothing_to_do() -> None:
    empty = solve([], {}, [])
    assert (empty.start, empty.finish, empty.proven, empty.feasible) == ({}, 0, True, True)
    milestone = solve([Task("start", 0, {"hands": 9})], {"hands": 1}, [])
    assert milestone.start == {"start": 0}
    assert milestone.segments == {"start": [(0, 0)]}


def test_slack_and_critical_tasks() -> None:
    tasks = [Task("a", 10, {}), Task("b", 4, {}), Task("c", 3, {}), Task("end", 0, {})]
    lags = [Lag("a", "end", 10), Lag("b", "c", 4), Lag("c", "end", 3)]
    result = solve(tasks, {}, lags)
    assert result.slack == {"a": 0, "b": 3, "c": 3, "end": 0}
    assert result.critical == ("a", "end")


def test_slack_respects_windows_and_maximum_lags() -> None:
    tasks = [
        Task("mix", 10, {"hands": 1}, ("bench",)),
        Task("use", 10, {"hands": 1}, ("bench",)),
        Task("cure", 500, {}),
    ]
    calendar = Calendar({"bench": [(0, 100), (300, 400)]})
    result = solve(tasks, {"hands": 1}, [Lag("mix", "use", 10, 30)], calendar=calendar)
    assert result.finish == 500
    assert result.slack == {"mix": 380, "use": 380, "cure": 0}
    assert result.critical == ("cure",)


def test_the_seed_changes_only_the_search() -> None:
    tasks, capacity, lags, calendar = small_case(3)
    first = solve(tasks, capacity, lags, calendar=calendar, seed=1)
    second = solve(tasks, capacity, lags, calendar=calendar, seed=2)
    assert first.finish == second.finish
