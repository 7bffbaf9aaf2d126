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
        """Each finished step against the finished steps it had to wait for."""
        known = {one.id: one for one in build.order}
        for operation in build.order:
            if operation.id in build.book.done and not operation.id.startswith(TOLD):
                yield from self._early(build, operation, known)

    def _early(
        self, build: Build, operation: Operation, known: dict[str, Operation]
    ) -> Iterable[Problem]:
        done = build.book.done
        for name in operation.after:
            before = known.get(name)
            if before is None or before.wait is None or name not in done:
                continue
            waited = between(done[name], done[operation.id])
            if waited is not None and 0 <= waited < before.wait.value * SOON:
                yield told(
                    self,
                    done_place(build, operation.id),
                    f"'{operation.id}' was done {hours(waited)} after '{name}', which wants "
                    f"{hours(before.wait.value)} ({before.waiting})",
                )


PLUGIN = BegunBeforeDry()
