"""Glitter: glitter or flake in clear medium. It sheds until a coat holds it down."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class GlitterOptions(FinishOptions, frozen=True, kw_only=True, tag="glitter"):
    """Glitter or flake."""


class Glitter(PaintedFinish):
    """Wants a varnish over it, and a wipe with a dark cloth to prove it."""

    name = "glitter"
    title = "Glitter"
    options = GlitterOptions
    role = "loose"
    row = "glitter"
    lies = "specks"
    shows = "silver"
    verb = "Spread glitter on"
    relief_first = True
    needs_cover = "It sheds on whoever opens the book"
    tools = ("soft brush", "tray", "dark cloth")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """In a tray."""
        return (
            say("Work over a tray, away from anything still wet."),
            brushed(put, "Dab on"),
            say("When it is dry, brush off whatever does not hold."),
        )


PLUGIN = Glitter()
