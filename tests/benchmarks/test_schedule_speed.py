"""How long a schedule takes: 30, 60 and 120 tasks on four resources, and bench plans."""

from __future__ import annotations

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from foredge.plan.schedule import Calendar, Lag, Task, solve
from unit.plan.schedule.instances import project, with_maximum_lags
from unit.plan.schedule.test_blocks import rounds

DAY = 1440
EVENINGS = [(d * DAY + 1170, d * DAY + 1290) for d in range(200) if d % 7 in (1, 3)]


@pytest.mark.parametrize("size", [30, 60, 120])
@pytest.mark.parametrize("strength", [0.2, 0.7])
def test_projects(benchmark: BenchmarkFixture, size: int, strength: float) -> None:
    """Scarce resources use up all steps; ample ones mostly end at a bound."""
    case = project(size, 1.8, 0.75, strength, seed=1)
    result = benchmark.pedantic(solve, case, rounds=3)
    assert result.feasible


def test_maximum_lags(benchmark: BenchmarkFixture) -> None:
    result = benchmark.pedantic(solve, with_maximum_lags(30, 0.2, 16), rounds=3)
    assert result.feasible


def test_bench_plan(benchmark: BenchmarkFixture) -> None:
    """Forty steps, nearly in a row, one pair of hands, two evenings a week."""
    minutes = [20, 45, 90, 10, 30, 60, 15, 25]
    tasks = [Task(f"s{k}", minutes[k % 8], {"hands": 1}, ("bench",)) for k in range(40)]
    lags = [
        Lag(f"s{k - 1 - (k % 5 == 4)}", f"s{k}", (0, 720, 0, 1440)[k % 4], from_finish=True)
        for k in range(1, 40)
    ]
    calendar = Calendar({"bench": EVENINGS})
    result = benchmark.pedantic(
        solve, (tasks, {"hands": 1}, lags), {"calendar": calendar}, rounds=3
    )
    assert result.feasible


@pytest.mark.parametrize("copies", [100, 300, 600])
def test_many_copies(benchmark: BenchmarkFixture, copies: int) -> None:
    """Three tasks a copy, tied by maximum lags: too many to be searched, placed once."""
    tasks, lags = rounds(copies)
    calendar = Calendar({"bench": [(d * DAY + 1170, d * DAY + 1290) for d in range(700)]})
    call = (tasks, {"hands": 1, "press": 1}, lags)
    result = benchmark.pedantic(solve, call, {"calendar": calendar}, rounds=3)
    assert result.feasible
