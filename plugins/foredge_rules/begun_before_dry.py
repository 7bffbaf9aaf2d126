"""A step that was begun before the one under it was dry."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Operation, Problem, Severity
from foredge_rules.telling import between, done_place, hours, told

SOON = 0.6
"""Share of a wait below which nothing is dry. From memory."""

TOLD = ("sculpt.check-dry-", "finishing.rest-")
"""Operations that rules of their own look at."""


@dataclass(frozen=True, slots=True)
class BegunBeforeDry:
    """The sheet's own order waits; only what is done already can break it."""

    kind: str = "rule"
    name: str = "begun-before-dry"
    title: str = "Begun before it was dry"
    severity: Severity = Severity.WARNING
    consequence: str = "Water is shut in, or the work shifts: boards warp, paper cockles, mould"
    remedy: str = (
        "Open it up where it can be, stand it in moving air or between blotters, and wait the "
        "whole time before the next step"
    )
    source: str = "Book_Arts-L, March 2006, on laminating boards; common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each finished step against the finished steps before it that had to dry."""
        known = {one.id: one for one in build.order}
        for operation in build.order:
            if operation.id not in build.book.done or operation.id.startswith(TOLD):
                continue
            early = _earliest(build, operation, known)
            if early is not None:
                before, waited, wanted = early
                yield told(
                    self,
                    done_place(build, operation.id),
                    f"'{operation.id}' was done {hours(waited)} after '{before.id}', which wants "
                    f"{hours(wanted)} ({before.waiting})",
                )


def _earliest(
    build: Build, operation: Operation, known: dict[str, Operation]
) -> tuple[Operation, float, float] | None:
    """The step before it that lacks most of its wait: how long it had, how long it wants."""
    done, found = build.book.done, []
    for name in _before(operation, known):
        step = known[name]
        if step.wait is None or not step.waiting or name not in done:
            continue
        waited = between(done[name], done[operation.id])
        if waited is not None and 0 <= waited < step.wait.value * SOON:
            found.append((step, waited, step.wait.value))
    return max(found, key=lambda one: one[2] - one[1], default=None)


def _before(operation: Operation, known: dict[str, Operation]) -> dict[str, None]:
    """Everything that must come before it, nearest first."""
    seen: dict[str, None] = {}
    queue = list(operation.after)
    while queue:
        name = queue.pop(0)
        if name in known and name not in seen:
            seen[name] = None
            queue += known[name].after
    return seen


PLUGIN = BegunBeforeDry()
