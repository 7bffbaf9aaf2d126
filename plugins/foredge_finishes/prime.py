"""Prime: gesso, for one even ground that takes paint."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class PrimeOptions(FinishOptions, frozen=True, kw_only=True, tag="prime"):
    """Gesso or another water-based primer."""


class Prime(PaintedFinish):
    """A matte ground with tooth."""

    name = "prime"
    title = "Primer"
    options = PrimeOptions
    role = "ground"
    row = "gesso"
    lies = "all"
    shows = "chalk"
    verb = "Prime"
    relief_first = True
    tools = ("flat brush", "stiff small brush")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Thin coats, crossed."""
        coats = put.amounts.coats.value
        cross = (say("Cross the strokes from coat to coat."),) if coats > 1 else ()
        return (
            brushed(put, "Brush on"),
            *cross,
            say("Stipple it into the hollows; brush out what pools.")
            if put.raised
            else say("Thin and even, out to the edges."),
        )


PLUGIN = Prime()
