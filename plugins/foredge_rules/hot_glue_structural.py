"""Hot glue where a book is held together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import adhesives_of, told


@dataclass(frozen=True, slots=True)
class HotGlueStructural:
    """It tacks a core down; it does not hold a cover."""

    kind: str = "rule"
    name: str = "hot-glue-structural"
    title: str = "Hot glue that holds the book together"
    severity: Severity = Severity.WARNING
    consequence: str = (
        "It sets in ropes before it can be rubbed flat, and lets go in a hot car or in the sun"
    )
    remedy: str = "Take white glue, a mix or, on metal and stone, epoxy"
    source: str = "H&C Hotmelt, on the temperatures of hot-melt sticks; common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every adhesive that the spec names, against the temperature it softens at."""
        softens = build.book.table("adhesives", "hot-glue", "softens_at").value
        for path, adhesive in adhesives_of(build):
            if adhesive == "hot-glue":
                yield told(
                    self,
                    path,
                    f"this is hot glue, and softens at about {softens:.0f} degC",
                )


PLUGIN = HotGlueStructural()
