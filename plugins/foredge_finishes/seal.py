"""Seal: thinned glue that closes the pores of clay, card or cloth before any paint."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed, thinned


class SealOptions(FinishOptions, frozen=True, kw_only=True, tag="seal"):
    """A coat under the paint."""

    using: Annotated[
        Literal["pva", "decoupage-glue"], Meta(description="White glue and water, or bought glue.")
    ] = "pva"


class Seal(PaintedFinish):
    """Thinned glue, so that paint does not sink in here and stand there."""

    name = "seal"
    title = "Sealer"
    options = SealOptions
    role = "seal"
    row = "seal-pva"
    verb = "Seal"
    relief_first = True
    tools = ("soft brush", "jar")

    def row_of(self, options: Any) -> str:
        """White glue is thinned at home; decoupage glue is used as it comes."""
        return "decoupage-glue" if options.using == "decoupage-glue" else self.row

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Thin, and into every hollow."""
        return (
            *thinned(put, "white glue"),
            brushed(put, "Brush on"),
            say("Work it into every hollow and under every edge; let no puddle stand.")
            if put.raised
            else say("Brush it out to the edges, thin and even; let no puddle stand."),
        )


PLUGIN = Seal()
