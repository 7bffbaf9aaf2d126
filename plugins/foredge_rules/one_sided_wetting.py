"""One face of a board is wetted, and nothing balances it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class OneSidedWetting:
    """What is wetted on one side curls round the other as it dries."""

    kind: str = "rule"
    name: str = "one-sided-wetting"
    title: str = "A board wetted on one side"
    severity: Severity = Severity.WARNING
    consequence: str = "The board bows round the relief as the clay dries and shrinks"
    remedy: str = "Seal both faces of a bare board; paste a counter-lining inside a covered one"
    source: str = (
        "Skin Deep vol. 10 (J. Hewit & Sons), on paper grain; Creative Paper Mache, 'Warping'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """A bare board sealed on one face, and a covered one without a counter-lining."""
        for relief in reliefs_of(build.book):
            said = relief.options
            if said.made_on == "bare-board" and said.seal == "one face":
                key, why = "seal", "and only that face is sealed"
            elif said.made_on == "covered-case" and said.counter_lining == "none":
                key, why = "counter_lining", "and no counter-lining pulls against it"
            else:
                continue
            if said.on == "spine":
                continue
            water = build.quantity(f"sculpt.water.{said.on}").value
            yield told(
                self,
                (*relief.path, key),
                f"the clay wets one face of the {said.on} board with {water:.0f} g of water, {why}",
            )


PLUGIN = OneSidedWetting()
