"""Anything at all that is put on over wax."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of, overlap
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CoatOverWax:
    """Wax is always last."""

    kind: str = "rule"
    name: str = "coat-over-wax"
    title: str = "A coat over wax"
    severity: Severity = Severity.WARNING
    consequence: str = "Nothing holds on wax: paint and varnish bead up and peel"
    remedy: str = "Move the wax to the end; where it is on already, take it off with spirit first"
    source: str = "Artful Pursuits, 'Prevent pages from sticking together'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every coat with wax under it."""
        coats = coats_of(build.book)
        for place, coat in enumerate(coats):
            under = [
                one
                for one in coats[:place]
                if one.role == "wax" and overlap(coat.regions, one.regions)
            ]
            if under and coat.role != "wax":
                yield told(self, coat.path, f"'{coat.key}' goes over '{under[-1].key}'")


PLUGIN = CoatOverWax()
