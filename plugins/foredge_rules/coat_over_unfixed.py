"""A wet brush over colour that water takes off again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from foredge.contract import Build, Coat, Problem, Severity, coats_of, overlap
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CoatOverUnfixed:
    """Ink and watercolour, until a sprayed coat has fixed them."""

    kind: str = "rule"
    name: str = "coat-over-unfixed"
    title: str = "A wet coat over soluble colour"
    severity: Severity = Severity.WARNING
    consequence: str = "The colour bleeds and smears under the brush"
    remedy: str = "Fix it with light sprayed coats first, and test on a scrap; or use acrylic"
    source: str = "from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """The first brushed coat over each soluble one."""
        coats = coats_of(build.book)
        for place, coat in enumerate(coats):
            over = _first_over(coat, coats[place + 1 :]) if coat.soluble else None
            if over is not None and over.base == "water":
                yield told(self, over.path, f"'{over.key}' is brushed over '{coat.key}'")


def _first_over(coat: Coat, later: Sequence[Coat]) -> Coat | None:
    return next((one for one in later if overlap(one.regions, coat.regions)), None)


PLUGIN = CoatOverUnfixed()
