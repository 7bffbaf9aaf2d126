"""Metal in a clay that has acid or bleach in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from foredge.contract import Build, Part, Problem, Severity, Supply, reliefs_of, skin_of
from foredge_rules.telling import told

CORRODES = {"vinegar": "vinegar", "bleach": "bleach", "salt": "salt"}
"""Preservatives that eat metal, and what a sentence calls them."""

SOUR = ("school", "wood")
"""White glues that are more acid than those for books, by what they are made for."""


@dataclass(frozen=True, slots=True)
class MetalInSourClay:
    """Acid and chlorine go on working as long as the clay is damp."""

    kind: str = "rule"
    name: str = "metal-in-sour-clay"
    title: str = "Metal in a clay with acid, salt or bleach"
    severity: Severity = Severity.WARNING
    consequence: str = "Iron rusts and brass and copper turn green, and the stain comes through"
    remedy: str = (
        "Lacquer the metal on all sides first, set it when the clay is dry, or leave the "
        "preservative out"
    )
    source: str = (
        "from memory; on acid in white glue r/bookbinding, 'How long will a book last if I don't "
        "use...'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each metal inclusion of a relief whose clay holds vinegar, salt, bleach or sour glue."""
        for relief in reliefs_of(build.book):
            holds = _sour(build, relief)
            for place, one in enumerate(relief.options.inclusions if holds else ()):
                if one.kind == "metal":
                    yield told(
                        self,
                        (*relief.path, "inclusions", place),
                        f"'{one.what}' is metal, and the clay is {holds}",
                    )


def _sour(build: Build, relief: Part[Any]) -> str:
    """What eats metal in the clay of ``relief``, as the end of a sentence."""
    kept = CORRODES.get(getattr(skin_of(build.book, relief).options, "preservative", ""))
    if kept:
        return f"kept with {kept}"
    for line in build.plan.ledger.lines:
        item = build.book.stock.get(line.stock or "")
        mixed = any(step.startswith("sculpt.mix-clay") for step in line.steps)
        if mixed and isinstance(item, Supply) and item.made_for in SOUR:
            return f"mixed with {item.made_for} glue, '{line.stock}'"
    return ""


PLUGIN = MetalInSourClay()
