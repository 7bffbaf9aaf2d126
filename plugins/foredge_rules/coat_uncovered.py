"""A coat that needs another over it, and gets none: glitter sheds, brass leaf tarnishes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CoatUncovered:
    """What becomes of the coat, the coat itself says."""

    kind: str = "rule"
    name: str = "coat-uncovered"
    title: str = "A coat that wants a varnish over it"
    severity: Severity = Severity.WARNING
    consequence: str = ""
    remedy: str = (
        "Put a varnish over all of it, then wipe it with a dark cloth to see that it holds"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every such coat of which some part stays bare."""
        coats = coats_of(build.book)
        for place, coat in enumerate(coats):
            if not coat.needs_cover:
                continue
            covered = [one.regions for one in coats[place + 1 :] if one.role in ("protect", "seal")]
            if coat.regions - frozenset[object]().union(*covered):
                becomes = coat.needs_cover[:1].lower() + coat.needs_cover[1:]
                text = f"nothing goes over '{coat.key}': {becomes}"
                yield told(self, coat.path, text)


PLUGIN = CoatUncovered()
