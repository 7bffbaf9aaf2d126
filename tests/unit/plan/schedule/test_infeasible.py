"""What cannot be done is said with names and minutes."""

from __future__ import annotations

import pytest

from foredge.plan.schedule import Calendar, Lag, Task, solve
from unit.plan.schedule.exhaustive import solved_by_cp_sat
from unit.plan.schedule.instances import with_maximum_lags

METHODS = ("default", "optimal")
BENCH = Calendar({"bench": [(0, 120), (3000, 3120)], "daylight": [(600, 1000)]})


def bench(name: str, minutes: int, split: bool = False) -> Task:
    return Task(name, minutes, {"hands": 1}, ("bench",), split)


CASES = {
    "capacity": (
        [Task("press", 10, {"press": 3})],
        [],
        "task 'press' needs 3 of 'press', and there are 2",
    ),
    "window": (
        [bench("sew", 150)],
        [],
        "task 'sew' needs 150 minutes in one piece and does not fit 'bench': "
        "its longest window has 120 minutes",
    ),
    "all windows": (
        [bench("sew", 250, split=True)],
        [],
        "task 'sew' needs 250 minutes of 'bench', and all windows together have 240",
    ),
    "no common window": (
        [Task("spray", 10, {}, ("bench", "daylight"))],
        [],
        "task 'spray' needs a window of 'bench' and 'daylight', and there is none",
    ),
    "too much work": (
        [bench("a", 90), bench("b", 90), bench("c", 90)],
        [],
        "the tasks in 'bench' need 270 minutes of 'hands', and its windows offer 240",
    ),
    "no room": (
        [bench("a", 70), bench("b", 70), bench("c", 70)],
        [],
        "no schedule keeps all lags and capacities before the windows end at minute 3120: "
        "every way was ruled out; task 'c' (70 minutes) finds no room in 'bench'",
    ),
    "glue dries": (
        [bench("glue", 90), bench("case", 60)],
        [Lag("glue", "case", 0, 100)],
        "task 'case' (60 minutes) must start at most 100 minutes after task 'glue' "
        "(90 minutes) starts, and the two do not fit together in 'bench'",
    ),
    "circle": (
        [bench("a", 10), bench("b", 10)],
        [Lag("a", "b", 10, 20), Lag("b", "a", -5)],
        "the lags 'b' -> 'a' -> 'b' contradict each other: they ask for 5 minutes too many",
    ),
    "at_most below at_least": (
        [bench("a", 10), bench("b", 10)],
        [Lag("a", "b", 10, 7)],
        "the lags 'b' -> 'a' -> 'b' contradict each other: they ask for 3 minutes too many",
    ),
    "never in time": (
        [bench("a", 60), bench("b", 90)],
        [Lag("a", "b", 200, 2900)],
        "task 'b' (90 minutes) finds no place in 'bench' that keeps its lag to task 'a'",
    ),
}


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("name", CASES)
def test_reason(name: str, method: str) -> None:
    tasks, lags, reason = CASES[name]
    result = solve(tasks, {"hands": 1, "press": 2}, lags, calendar=BENCH, method=method)
    assert result.reason == reason
    assert result.proven
    assert not result.feasible
    assert (result.start, result.finish, result.segments) == ({}, 0, {})


@pytest.mark.parametrize("method", METHODS)
def test_a_near_miss_of_each_kind_is_feasible(method: str) -> None:
    def finish(tasks: list[Task], lags: list[Lag]) -> int:
        result = solve(tasks, {"hands": 1, "press": 2}, lags, calendar=BENCH, method=method)
        assert result.feasible, result.reason
        return result.finish

    assert finish([Task("press", 10, {"press": 2})], []) == 10
    assert finish([bench("sew", 120)], []) == 120
    assert finish([bench("sew", 240, split=True)], []) == 3120
    assert finish([bench("a", 60), bench("b", 60), bench("c", 70)], []) <= 3070
    assert finish([bench("glue", 60), bench("case", 60)], [Lag("glue", "case", 0, 60)]) == 120
    assert (
        finish([bench("a", 10), bench("b", 10)], [Lag("a", "b", 10, 20), Lag("b", "a", -10)]) == 20
    )
    assert finish([bench("a", 60), bench("b", 90)], [Lag("a", "b", 200, 2940)]) == 3090


@pytest.mark.parametrize("seed", [3, 33])
def test_the_exact_method_recognises_lags_that_resources_rule_out(seed: int) -> None:
    """No two tasks clash by themselves here: the whole plan has to be ruled out."""
    tasks, capacity, lags = with_maximum_lags(30, 0.1, seed, (3, 6, 9)[seed // 3 % 3])
    ample = dict.fromkeys(capacity, 10_000)
    assert solve(tasks, ample, lags, method="optimal").feasible
    assert solved_by_cp_sat(tasks, capacity, lags) == ("infeasible", 0)
    result = solve(tasks, capacity, lags, method="optimal")
    assert result.proven
    assert not result.feasible
    assert "every way was ruled out" in result.reason
