"""Boron in a clay with white glue."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, figures_of, reliefs_of, skin_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class BoronGelsGlue:
    """Borate ions link the chains of the polymer in white glue."""

    kind: str = "rule"
    name: str = "boron-gels-glue"
    title: str = "Boron compounds gel white glue"
    severity: Severity = Severity.WARNING
    consequence: str = "The clay turns to rubber in the bowl and cannot be spread"
    remedy: str = (
        "Take a filler without boron, or the recipe wood-glue after a test dab; no "
        "borax against mould"
    )
    source: str = (
        "E. Z. Casassa, A. M. Sarquis and C. H. Van Dyke, The gelation of polyvinyl "
        "alcohol with borax, Journal of Chemical Education 63, 1986, p. 57; Ultimate "
        "Paper Mache, on a filler with boron"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each home-made clay with white glue whose filler or preservative holds boron."""
        book = build.book
        for relief in reliefs_of(book):
            skin = skin_of(book, relief)
            holds = {
                "filler": getattr(skin.options, "filler", "") == "with-boron",
                "preservative": getattr(skin.options, "preservative", "") == "borax",
            }
            row = figures_of(book, relief).row
            if "white-glue" not in book.words("clays", row, "parts").split(", "):
                continue
            for key, boron in holds.items():
                if boron:
                    what = "joint filler" if key == "filler" else "preservative"
                    yield told(
                        self,
                        (*skin.path, key),
                        f"the {what} holds boron, and the recipe '{row}' is made with white glue",
                    )


PLUGIN = BoronGelsGlue()
