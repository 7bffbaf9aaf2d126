"""Short ways to ask for a plan, for the tests beside this file."""

from __future__ import annotations

from foredge.contract import Bench, Operation, WorkPlan
from work_books import planned

DAY = 1440
TWO_EVENINGS = Bench(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",))


def plan(*operations: Operation, **more: object) -> WorkPlan:
    made, problems = planned(*operations, **more)
    assert problems == []
    assert made.plan.work is not None
    return made.plan.work


def rules(*operations: Operation, **more: object) -> list[str]:
    return [problem.rule for problem in planned(*operations, **more)[1]]
