"""Bought wallpaper paste where children work."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import adhesives_of, told

PASTE = "wallpaper-paste"


@dataclass(frozen=True, slots=True)
class FungicideWithChildren:
    """What keeps mould off the wall is not for small hands."""

    kind: str = "rule"
    name: str = "fungicide-with-children"
    title: str = "Wallpaper paste where children work"
    severity: Severity = Severity.WARNING
    consequence: str = "Many such pastes hold a fungicide, and children put fingers in their mouths"
    remedy: str = "Take wheat paste, starch paste or methyl cellulose; read the packet"
    source: str = "PC Cord, 'My paper mache recipe'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every place where the spec asks for it, at a bench with children."""
        if not build.book.bench.children:
            return
        for path, adhesive in adhesives_of(build):
            if adhesive == PASTE:
                yield told(
                    self, path, "this is bought wallpaper paste, and children work at the bench"
                )


PLUGIN = FungicideWithChildren()
