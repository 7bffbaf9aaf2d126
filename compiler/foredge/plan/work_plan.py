"""Operations on the calendar of the bench."""

from __future__ import annotations

from foredge.contract import Build, Problem, WorkPlan


def plan_work(build: Build) -> tuple[WorkPlan | None, list[Problem]]:
    """The schedule; None where there is nothing to do."""
    return None, []
