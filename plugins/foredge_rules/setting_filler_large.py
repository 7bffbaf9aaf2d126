"""A filler that sets before the layer is on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, figures_of, reliefs_of, skin_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class SettingFillerLarge:
    """Powder filler hardens by itself, wet or dry."""

    kind: str = "rule"
    name: str = "setting-filler-large"
    title: str = "A setting filler under a large layer"
    severity: Severity = Severity.WARNING
    consequence: str = "The clay turns hard in the bowl, and what is half set holds badly"
    remedy: str = (
        "Stir one part of water with two of powder for a handful at a time and use it at once, or "
        "take a ready-mixed filler"
    )
    source: str = (
        "Ultimate Paper Mache, 'Using powdered drywall joint compound'; the time on hand from "
        "memory"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each layer that takes longer to lay than the filler can be worked."""
        steps = {one.id: one for one in build.order}
        for relief in reliefs_of(build.book):
            sets = figures_of(build.book, relief).sets
            first = steps.get(f"sculpt.skin-{relief.options.on}-1")
            if sets is None or first is None or first.hands_on.value <= sets.value:
                continue
            yield told(
                self,
                (*skin_of(build.book, relief).path, "filler"),
                f"one layer on the {relief.options.on} takes about "
                f"{first.hands_on.value / 60:.0f} min to lay, and the filler sets in "
                f"{sets.value / 60:.0f} min",
            )


PLUGIN = SettingFillerLarge()
