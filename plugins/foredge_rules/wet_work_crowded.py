"""Two parts of the book wet in one evening."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from foredge.contract import Build, Evening, Problem, Severity
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class WetWorkCrowded:
    """Glue does not wait, and presses and flat places are soon taken."""

    kind: str = "rule"
    name: str = "wet-work-crowded"
    title: str = "Two wet tasks in one session"
    severity: Severity = Severity.NOTE
    consequence: str = (
        "Glued in a hurry, things sit askew, and one of them has no weight to lie under"
    )
    remedy: str = "Put one of them off, and end the session with a single piece under weight"
    source: str = "Blue Roof Designs, 'Bookbinding: hard lessons', 2008; from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each evening of the plan with wet work on two parts that have nothing in common."""
        work = build.plan.work
        parts = self._wet_parts(build)
        for evening in work.evenings if work is not None else ():
            pair = _pair(evening, parts)
            if pair is not None:
                yield told(
                    self,
                    ("bench", "sessions"),
                    f"in session {evening.number} both '{pair[0]}' and '{pair[1]}' are wet work",
                )

    def _wet_parts(self, build: Build) -> dict[str, frozenset[str]]:
        """Operation -> the parts it wets; coats, of which little is known, left out."""
        return {
            one.operation: frozenset(
                other.what
                for other in build.plan.moisture.wettings
                if other.operation == one.operation
            )
            for one in build.plan.moisture.wettings
            if one.water is not None
        }


def _pair(evening: Evening, parts: dict[str, frozenset[str]]) -> tuple[str, str] | None:
    wet = list(dict.fromkeys(one.operation for one in evening.work if one.operation in parts))
    for first, second in combinations(wet, 2):
        if not parts[first] & parts[second]:
            return first, second
    return None


PLUGIN = WetWorkCrowded()
