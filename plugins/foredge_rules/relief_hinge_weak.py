"""A relief heavier than its board on a weak hinge."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, cloth_figures, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ReliefHingeWeak:
    """Tipped end-papers and gauze carry a plain board, no more."""

    kind: str = "rule"
    name: str = "relief-hinge-weak"
    title: str = "A weak hinge under a heavy relief"
    severity: Severity = Severity.WARNING
    consequence: str = "The cover drops off: the end-paper goes first, then the gauze"
    remedy: str = "Take cloth-jointed or sewn end-papers, and muslin for the super"
    source: str = (
        "Indiana University Libraries, Repair and Enclosure Treatments Manual, roll materials; "
        "common practice"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """The heaviest relief against end-papers and super; a note on what a light one hangs on."""
        named = {one.name: one for one in build.whole.quantities}
        boards = named.get("case.boards.mass")
        if boards is None:
            return
        limit = build.book.practice("relief-mass-board").value * boards.value / 2
        dry = [
            (on, named[f"sculpt.mass.{on}.dry"].value)
            for on in (relief.options.on for relief in reliefs_of(build.book))
            if on != "spine"
        ]
        if not dry:
            return
        heavy = max(dry, key=lambda one: one[1])
        tipped = dict(build.whole.facts).get("text_block.hinge") == "tipped"
        if heavy[1] <= limit:
            if tipped:
                text = f"the {heavy[0]} board with its relief hangs on tipped end-papers"
                yield told(self, ("text_block", "end_papers"), text, Severity.NOTE)
            return
        what = f"the relief on the {heavy[0]} board weighs about {heavy[1]:.0f} g, the board "
        what += f"{boards.value / 2:.0f} g"
        if tipped:
            yield told(self, ("text_block", "end_papers"), f"{what}: it hangs on tipped end-papers")
        said = build.book.sections["text_block"].super
        row = cloth_figures(build.book, said.stock, said.material or "muslin").row
        if row == "super":
            yield told(self, ("text_block", "super"), f"{what}: it hangs on a super of gauze")


PLUGIN = ReliefHingeWeak()
