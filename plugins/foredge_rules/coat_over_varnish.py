"""Paint that is put on over a varnish."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of, overlap
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CoatOverVarnish:
    """A sprayed coat that only fixes what is under it does not count."""

    kind: str = "rule"
    name: str = "coat-over-varnish"
    title: str = "Paint over varnish"
    severity: Severity = Severity.NOTE
    consequence: str = "Paint holds badly on a smooth, hard film and rubs off the high points"
    remedy: str = "Varnish after the last colour, or scuff the varnish before you paint on it"
    source: str = "from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """Colour, ground or sealer with a brushed varnish right under it."""
        coats = coats_of(build.book)
        for place, coat in enumerate(coats):
            if coat.role not in ("seal", "ground", "colour"):
                continue
            under = [one for one in coats[:place] if overlap(coat.regions, one.regions)]
            if under and under[-1].role == "protect" and under[-1].base == "water":
                yield told(self, coat.path, f"'{coat.key}' goes over '{under[-1].key}'")


PLUGIN = CoatOverVarnish()
