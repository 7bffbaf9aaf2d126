"""Metal in a clay that has acid or bleach in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of, skin_of
from foredge_rules.telling import told

CORRODES = {"vinegar": "vinegar", "bleach": "bleach"}
"""Preservatives that eat metal, and what a sentence calls them."""


@dataclass(frozen=True, slots=True)
class MetalInSourClay:
    """Acid and chlorine go on working as long as the clay is damp."""

    kind: str = "rule"
    name: str = "metal-in-sour-clay"
    title: str = "Metal in a clay with acid or bleach"
    severity: Severity = Severity.WARNING
    consequence: str = "Iron rusts and brass and copper turn green, and the stain comes through"
    remedy: str = (
        "Lacquer the metal on all sides first, set it when the clay is dry, or leave the "
        "preservative out"
    )
    source: str = "from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each metal inclusion of a relief whose clay is kept with vinegar or bleach."""
        for relief in reliefs_of(build.book):
            kept = CORRODES.get(getattr(skin_of(build.book, relief).options, "preservative", ""))
            for place, one in enumerate(relief.options.inclusions if kept else ()):
                if one.kind == "metal":
                    yield told(
                        self,
                        (*relief.path, "inclusions", place),
                        f"'{one.what}' is metal, and the clay is kept with {kept}",
                    )


PLUGIN = MetalInSourClay()
