"""Fresh clay on a board that drinks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ClayOnUnsealedBoard:
    """Bare board takes the water out of the clay on one side only."""

    kind: str = "rule"
    name: str = "clay-on-unsealed-board"
    title: str = "Wet clay on an unsealed board"
    severity: Severity = Severity.WARNING
    consequence: str = "The board bows as it dries, and the clay sheds in one piece"
    remedy: str = (
        "Seal both faces and the edges with two coats, dry between them, before the core is fixed"
    )
    source: str = "Creative Paper Mache, 'Warping'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief on a bare board that is left unsealed."""
        for relief in reliefs_of(build.book):
            said = relief.options
            if said.made_on != "bare-board" or said.seal != "none":
                continue
            water = build.quantity(f"sculpt.water.{said.on}").value
            yield told(
                self,
                (*relief.path, "seal"),
                f"the clay brings {water:.0f} g of water onto a bare board that is not sealed",
            )


PLUGIN = ClayOnUnsealedBoard()
