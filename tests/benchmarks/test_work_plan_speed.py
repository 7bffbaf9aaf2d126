"""How long the plan of the work takes for the demo books, and for three copies of one.

The aim is half a second; it is measured here and not asserted.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from demo import DEMOS, Run, compiled
from foredge.plan.evenings.plan import plan_work
from work_books import number


@pytest.mark.benchmark(group="plan of the work")
@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_demo(benchmark: BenchmarkFixture, run: Run) -> None:
    work, _ = benchmark.pedantic(plan_work, (compiled(run),), rounds=5, warmup_rounds=1)
    assert work.steps


@pytest.mark.benchmark(group="plan of the work")
def test_three_copies(benchmark: BenchmarkFixture) -> None:
    build = compiled(Run("saltmarsh-tide-book.yaml"))
    build = replace(build, book=replace(build.book, copies=number(3)))
    work, _ = benchmark.pedantic(plan_work, (build,), rounds=3, warmup_rounds=1)
    assert work.steps
