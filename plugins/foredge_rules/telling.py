"""What rules share: a problem in the rule's own words, and the times of what is done."""

from __future__ import annotations

from datetime import datetime

from foredge.contract import Build, Path, Problem, Rule, Severity

DAY = 86_400.0


def told(rule: Rule, path: Path, text: str, severity: Severity | None = None) -> Problem:
    """``text`` at ``path``, with everything else the rule says of itself."""
    return Problem(
        severity or rule.severity,
        path,
        text,
        rule.name,
        consequence=rule.consequence,
        remedy=rule.remedy,
        source=rule.source,
    )


def between(earlier: str, later: str) -> float | None:
    """Seconds from one time under ``done`` to another; None where one is not said.

    A day without a clock is as kind as it can be: early in the day before, late after.
    """
    if not earlier or not later:
        return None
    slack = DAY if len(earlier) <= len("2026-12-01") or len(later) <= len("2026-12-01") else 0.0
    return (datetime.fromisoformat(later) - datetime.fromisoformat(earlier)).total_seconds() + slack


def wait_of(build: Build, operation: str) -> float:
    """How long the work lies still after ``operation``, in seconds; 0 where it does not."""
    for one in build.order:
        if one.id == operation:
            return one.wait.value if one.wait is not None else 0.0
    return 0.0


def done_place(build: Build, operation: str) -> Path:
    """Where ``done`` says that ``operation`` is finished."""
    names = list(build.book.done)
    return ("done", names.index(operation)) if operation in names else ("done",)


def hours(seconds: float) -> str:
    """``36 h`` or ``8 days``, for a problem's text."""
    if seconds >= 3 * DAY:
        return f"{seconds / DAY:.0f} days"
    return f"{seconds / 3600:.0f} h"
