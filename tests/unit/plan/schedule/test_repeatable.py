"""The same problem gives the same schedule in every process."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

CODE = """
from unit.plan.schedule.instances import project, with_maximum_lags
from unit.plan.schedule.test_blocks import CALENDAR, CAPACITY, rounds, tied
from foredge.plan.schedule import solve
method = {method!r}
for case in (project(20, 1.8, 0.75, 0.2, 1), with_maximum_lags(15, 0.5, 2)):
    result = solve(*case, method=method)
    print(sorted(result.start.items()), result.finish, result.proven, sorted(result.slack.items()))
for tasks, lags in (tied(1), rounds(90)):
    result = solve(tasks, CAPACITY, lags, calendar=CALENDAR, method=method)
    print(result.feasible, sorted(result.start.items()), sorted(result.slack.items()))
"""
ROOT = Path(__file__).parents[4]


@pytest.mark.parametrize("method", ["default", "optimal"])
def test_two_processes_with_other_hashes_agree(method: str) -> None:
    outputs = set()
    for seed in ("0", "4711"):
        done = subprocess.run(
            [sys.executable, "-c", CODE.format(method=method)],
            capture_output=True,
            text=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": f"{ROOT / 'compiler'}:{ROOT / 'tests'}"},
        )
        outputs.add(done.stdout)
    assert len(outputs) == 1
    assert "True" in outputs.pop()
