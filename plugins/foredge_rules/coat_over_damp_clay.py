"""A coat that is done before the clay under it was dry through."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of
from foredge_rules.telling import between, done_place, told


@dataclass(frozen=True, slots=True)
class CoatOverDampClay:
    """The sheet's own order waits; only what is done already can break it."""

    kind: str = "rule"
    name: str = "coat-over-damp-clay"
    title: str = "A coat on damp clay"
    severity: Severity = Severity.WARNING
    consequence: str = "Water is shut in: mould months later, blisters and cracks"
    remedy: str = (
        "Let the book stand open in moving air until the clay weighs the same two days "
        "running, before anything else goes on"
    )
    source: str = (
        "Ultimate Paper Mache, 'How to keep mold from ruining your paper mache'; from memory"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each finished coat on a relief, against the test that says the clay is dry through."""
        dry = dict(build.whole.facts).get("sculpt.dry", "")
        done = build.book.done
        for coat in coats_of(build.book) if dry else ():
            operation = f"finishing.{coat.key}"
            relief = any(region.kind == "relief" for region in coat.regions)
            if operation not in done or not relief:
                continue
            place = done_place(build, operation)
            if dry not in done:
                yield told(self, place, f"'{coat.key}' is done, and '{dry}' is not")
                continue
            waited = between(done[dry], done[operation])
            if waited is not None and waited < 0:
                yield told(self, place, f"'{coat.key}' was put on before '{dry}'")


PLUGIN = CoatOverDampClay()
