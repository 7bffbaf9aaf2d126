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
        """A bare board sealed on one face, and a covered one without a counter-lining.

        A bare board that is not sealed at all is told by its own rule.
        """
        found = {one.what: one for one in build.plan.moisture.one_sided}
        for relief in reliefs_of(build.book):
            said = relief.options
            one = found.get(f"board-{said.on}")
            if one is None or (said.made_on == "bare-board" and said.seal == "none"):
                continue
            bare = said.made_on == "bare-board"
            why = "only that face is sealed" if bare else "no counter-lining pulls against it"
            yield told(
                self,
                (*relief.path, "seal" if bare else "counter_lining"),
                f"the clay wets one face of the {said.on} board with {one.water.value:.2g} g of "
                f"water, and {why}",
            )


PLUGIN = OneSidedWetting()
