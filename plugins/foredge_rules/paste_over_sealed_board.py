"""A plain paste on a sealed board."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told

PASTES = ("paste", "paste-thick", "methyl-cellulose")
"""Rows of the adhesives table without glue in them."""


@dataclass(frozen=True, slots=True)
class PasteOverSealedBoard:
    """A sealed face drinks nothing, so paste stays on top of it."""

    kind: str = "rule"
    name: str = "paste-over-sealed-board"
    title: str = "Paste over a sealed board"
    severity: Severity = Severity.WARNING
    consequence: str = "The paste-down dries slowly and peels off the sealed board"
    remedy: str = "Case in with white glue or a mix of glue and paste"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """The adhesive of casing-in, where a relief stands on a board sealed inside."""
        sealed = [
            relief.options.on
            for relief in reliefs_of(build.book)
            if relief.options.made_on == "bare-board" and relief.options.seal == "both faces"
        ]
        casing = build.book.sections["case"].casing_in
        adhesive = getattr(casing.options, "adhesive", "") if casing is not None else ""
        if sealed and adhesive in PASTES:
            title = build.book.words("adhesives", adhesive, "title")
            yield told(
                self,
                (*casing.path, "adhesive"),
                f"the inside of the {sealed[0]} board is sealed, and the paste-down is put on "
                f"with {title[:1].lower()}{title[1:]}",
            )


PLUGIN = PasteOverSealedBoard()
