"""The schedule as plain data, for ``quantities.json``.

Times are wall-clock times without a zone: ``2026-12-01T19:30``, or, where the bench has no
first day, minutes from the midnight that begins the Monday of the first week.
"""

from __future__ import annotations

from typing import Any

from foredge.contract import Build, Stretch, TimedStep, WorkPlan


def schedule(build: Build) -> dict[str, Any] | None:
    """The plan of the work; None where there is nothing to plan."""
    plan = build.plan.work
    if plan is None:
        return None
    return {
        "shortest": plan.chain.minutes,
        "hands_on": plan.chain.hands_on,
        "chain": list(plan.chain.operations),
        "start": plan.start,
        "proven": plan.proven,
        "close": _maybe(plan, plan.close),
        "post": _maybe(plan, plan.post),
        "finish": _at(plan, plan.finish) if plan.steps else None,
        "taken_as_done": list(plan.taken_as_done),
        "steps": {step.operation: _step(plan, step) for step in plan.steps},
        "evenings": [
            {
                "number": evening.number,
                "begin": _at(plan, evening.begin),
                "end": _at(plan, evening.end),
                "work": [_stretch(plan, one) for one in evening.work],
                "resting": list(evening.resting),
            }
            for evening in plan.evenings
        ],
    }


def _step(plan: WorkPlan, step: TimedStep) -> dict[str, Any]:
    return {
        "begin": _at(plan, step.start),
        "end": _at(plan, step.finish),
        "ready": _at(plan, step.ready),
        "slack": step.slack,
        "critical": step.critical,
    }


def _stretch(plan: WorkPlan, stretch: Stretch) -> dict[str, Any]:
    return {
        "operation": stretch.operation,
        "begin": _at(plan, stretch.begin),
        "end": _at(plan, stretch.end),
        "part": stretch.part,
        "parts": stretch.parts,
    }


def _maybe(plan: WorkPlan, minute: int | None) -> str | int | None:
    return None if minute is None else _at(plan, minute)


def _at(plan: WorkPlan, minute: int) -> str | int:
    return plan.when(minute).isoformat(timespec="minutes") if plan.dated else minute
