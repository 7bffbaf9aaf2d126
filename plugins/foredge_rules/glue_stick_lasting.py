"""A glue stick in a book that is meant to last."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import adhesives_of, told

GLUED = {
    "boards": "the layers of the boards",
    "casing_in": "the paste-downs",
    "covering": "the covering",
    "text_block": "the super",
    "end_papers": "the end-papers",
}
"""What the adhesive of a key glues, for a sentence."""


@dataclass(frozen=True, slots=True)
class GlueStickLasting:
    """It warps card least, and holds it shortest."""

    kind: str = "rule"
    name: str = "glue-stick-lasting"
    title: str = "A glue stick in a lasting book"
    severity: Severity = Severity.NOTE
    consequence: str = "It hardens in a few years, and what it holds peels off"
    remedy: str = "Keep it for test pieces; take white glue or a mix for the book"
    source: str = "Bookbinding Team, 'Taking a look at glue', 2008"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every adhesive that the spec names."""
        for path, adhesive in adhesives_of(build):
            if adhesive == "glue-stick":
                what = GLUED.get(str(path[-2]), str(path[-2]).replace("_", " "))
                yield told(self, path, f"{what} would be put on with a glue stick")


PLUGIN = GlueStickLasting()
