"""Magnets against magnets, and nobody knows which way they pull."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import done_place, told

SUNK = "finishing.sink-closure"


@dataclass(frozen=True, slots=True)
class MagnetPolesUnmarked:
    """Turned over in its pocket one pushes the flap away."""

    kind: str = "rule"
    name: str = "magnet-poles-unmarked"
    title: str = "Magnets whose poles are not marked"
    severity: Severity = Severity.WARNING
    consequence: str = "One put in the wrong way round pushes the flap off for good"
    remedy: str = (
        "Stack them, mark the upper face of each, and write marked: true; or take keeper: steel, "
        "which any pole pulls"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Magnets opposite magnets that will not be marked, or were sunk without a mark."""
        closure = build.book.closure
        if closure is None or closure.plugin.name != "magnets":
            return
        said = closure.options
        if said.keeper != "magnet" or said.marked is True:
            return
        many = 2 * said.count
        if said.marked is False:
            text = f"{many} magnets are set pole against pole, and their poles are not marked"
            yield told(self, (*closure.path, "marked"), text)
        elif SUNK in build.book.done:
            yield told(
                self,
                done_place(build, SUNK),
                f"half of the {many} magnets are sunk in the board, and nobody says that their "
                "poles were marked",
            )


PLUGIN = MagnetPolesUnmarked()
