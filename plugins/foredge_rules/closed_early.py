"""A painted book that was closed before its coats were hard."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of
from foredge_rules.telling import between, done_place, hours, told

CLOSING = "finishing.rest-closed"


@dataclass(frozen=True, slots=True)
class ClosedEarly:
    """The sheet's own order waits; only what is done already can break it."""

    kind: str = "rule"
    name: str = "closed-early"
    title: str = "Closed before the coats were hard"
    severity: Severity = Severity.WARNING
    consequence: str = "Faces take the print of what lies on them, stick, and smell for months"
    remedy: str = "Open it now, lay baking parchment between, and start the wait again"
    source: str = (
        "Janice Scott Reeder, on tacky decoupage glue, 2014; Cursa, 'Acrylic painting basics: "
        "varnishing and storage' (course page)"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """The closing, against the latest coat that says when it was done."""
        done = build.book.done
        if CLOSING not in done or not done[CLOSING]:
            return
        times = [done.get(f"finishing.{coat.key}", "") for coat in coats_of(build.book)]
        waits = [between(time, done[CLOSING]) for time in times if time]
        known = [wait for wait in waits if wait is not None]
        wanted = build.quantity("finishing.wait.close")
        if known and min(known) < wanted.value:
            yield told(
                self,
                done_place(build, CLOSING),
                f"the book was closed {hours(max(min(known), 0.0))} after its last coat, which "
                f"wants {hours(wanted.value)}",
            )


PLUGIN = ClosedEarly()
