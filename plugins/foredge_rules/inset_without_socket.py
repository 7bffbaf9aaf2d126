"""A rigid inset in a socket that shrinks onto it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, figures_of, panel_of, reliefs_of, shapes_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class InsetWithoutSocket:
    """The clay round an inset shrinks; the inset does not."""

    kind: str = "rule"
    name: str = "inset-without-socket"
    title: str = "A rigid inset without room in its socket"
    severity: Severity = Severity.WARNING
    consequence: str = "The ring of clay cracks as it shrinks onto the inset"
    remedy: str = (
        "Leave socket out: it is then made wider by what the clay shrinks; set the "
        "inset when it is dry"
    )
    source: str = "Craft Knowledge, 'Air dry clay'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief with rigid parts whose socket gives less than the clay shrinks."""
        for relief in reliefs_of(build.book):
            socket, skin = relief.options.socket, figures_of(build.book, relief)
            if socket is None or socket.value >= skin.shrinkage.value:
                continue
            panel = panel_of(build.quantity, relief.options.on)
            shaped = shapes_of(build.book, relief, panel)[0]
            rigid = [one.name for one in shaped if one.shape.made == "rigid"]
            if rigid:
                yield told(
                    self,
                    (*relief.path, "socket"),
                    f"the socket of '{rigid[0]}' is made {socket.value * 100:.3g} % wider than the "
                    f"inset, and the {skin.noun} shrinks by {skin.shrinkage.value * 100:.3g} %",
                )


PLUGIN = InsetWithoutSocket()
