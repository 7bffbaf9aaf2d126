"""Clay with filler in it, sanded dry."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, figures_of, reliefs_of
from foredge_rules.telling import told

DUSTY = "dust-talc"
"""The caution of a clay with filler in it."""


@dataclass(frozen=True, slots=True)
class SandingDust:
    """What is too fine to see goes deepest."""

    kind: str = "rule"
    name: str = "sanding-dust"
    title: str = "Filler clay sanded dry"
    severity: Severity = Severity.WARNING
    consequence: str = "The dust is breathed in deep, and some filler holds silica"
    remedy: str = "Smooth it with water while it is wet; else sand outdoors, with a dust mask"
    source: str = (
        "CPWR Construction Solutions, 'Low-dust drywall joint compounds'; NIOSH, 1988 OSHA PEL "
        "project documentation: talc"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief that is to be sanded and whose clay makes such dust."""
        for relief in reliefs_of(build.book):
            skin = figures_of(build.book, relief)
            if relief.options.smoothing != "sanding" or DUSTY not in skin.cautions:
                continue
            area = build.quantity(f"sculpt.{relief.options.on}.surface").value / 100
            yield told(
                self,
                (*relief.path, "smoothing"),
                f"{area:.0f} cm2 of {skin.noun} with filler in it are sanded dry",
            )


PLUGIN = SandingDust()
