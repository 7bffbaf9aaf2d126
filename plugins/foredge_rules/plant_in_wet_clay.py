"""Leaves, flowers and food pressed into wet clay."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class PlantInWetClay:
    """What was alive rots where it is damp."""

    kind: str = "rule"
    name: str = "plant-in-wet-clay"
    title: str = "Plants or food in wet clay"
    severity: Severity = Severity.WARNING
    consequence: str = "They go mouldy before the clay is dry, stain what is near, and draw insects"
    remedy: str = (
        "Press them dry and seal them first, and glue them on when the clay is dry; or cast them"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each inclusion of the kinds plant and food."""
        for relief in reliefs_of(build.book):
            for place, one in enumerate(relief.options.inclusions):
                if one.kind in ("plant", "food"):
                    yield told(
                        self,
                        (*relief.path, "inclusions", place),
                        f"'{one.what}' would be shut in by wet clay",
                    )


PLUGIN = PlantInWetClay()
