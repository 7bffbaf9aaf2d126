"""Handmade paper for a paste-down."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import end_paper_of, told


@dataclass(frozen=True, slots=True)
class PasteDownHandmade:
    """It has hardly any grain, so it grows both ways."""

    kind: str = "rule"
    name: str = "paste-down-handmade"
    title: str = "Handmade paper as a paste-down"
    severity: Severity = Severity.WARNING
    consequence: str = "Wet, it grows in height too: it laps over the board's edge or puckers"
    remedy: str = (
        "Try a strip first; cut the paste-down 1 to 2 mm short in height as well, and put it down "
        "at once"
    )
    source: str = "Skin Deep vol. 10 (J. Hewit & Sons), on paper grain; common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """The paper of the end-papers, by its row of the paper table."""
        paper = end_paper_of(build)
        if paper is not None and paper.row == "handmade":
            yield told(self, paper.path, f"{paper.called} is handmade, and will be a paste-down")


PLUGIN = PasteDownHandmade()
