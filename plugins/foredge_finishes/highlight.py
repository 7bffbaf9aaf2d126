"""Highlight: the lightest tone, set by hand on the points that catch the light."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class HighlightOptions(FinishOptions, frozen=True, kw_only=True, tag="highlight"):
    """The last light."""


class Highlight(PaintedFinish):
    """Edges and tips only."""

    name = "highlight"
    title = "Highlights"
    options = HighlightOptions
    row = "highlight"
    lies = "rims"
    shows = "bone"
    verb = "Pick out the lights on"
    relief_first = True
    material = "Acrylic paint"
    tools = ("fine brush",)

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Few and small."""
        return (
            say("Hold the book in the light it will be seen in; note where it catches."),
            brushed(put, "Touch only those edges and tips with"),
        )


PLUGIN = Highlight()
