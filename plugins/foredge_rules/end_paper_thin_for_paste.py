"""A thin end-paper that is put down with wet paste."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import end_paper_of, told

WET = 0.8
"""Share of water from which an adhesive counts as wet: plain pastes."""

THIN_GSM = 90.0
"""Lightest end-paper that bears it. Wiltshire Barn, on paper weights by part."""


@dataclass(frozen=True, slots=True)
class EndPaperThinForPaste:
    """Water goes through before the paper lies."""

    kind: str = "rule"
    name: str = "end-paper-thin-for-paste"
    title: str = "A thin end-paper and a wet paste"
    severity: Severity = Severity.WARNING
    consequence: str = "The paste shows through, and the paper cockles and tears while it is wet"
    remedy: str = "Take a heavier end-paper, or white glue or a mix for casing-in"
    source: str = "Wiltshire Barn, 'Bookbinding tips and tricks', paper weights by part"

    def test(self, build: Build) -> Iterable[Problem]:
        """The grammage of the end-paper, and the water in the adhesive of casing-in."""
        paper, casing = end_paper_of(build), build.book.sections["case"].casing_in
        adhesive = getattr(casing.options, "adhesive", "") if casing is not None else ""
        if paper is None or not adhesive or paper.gsm >= THIN_GSM:
            return
        if build.book.table("adhesives", adhesive, "water").value >= WET:
            title = build.book.words("adhesives", adhesive, "title")
            yield told(
                self,
                (*casing.path, "adhesive"),
                f"{paper.called} has {paper.gsm:.0f} g/m2, and is put down with "
                f"{title[:1].lower()}{title[1:]}; {THIN_GSM:.0f} g/m2 or more bear that",
            )


PLUGIN = EndPaperThinForPaste()
