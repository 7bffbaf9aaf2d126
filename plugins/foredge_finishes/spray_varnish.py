"""Spray varnish: several light passes from a can, outdoors."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put


class SprayVarnishOptions(FinishOptions, frozen=True, kw_only=True, tag="spray-varnish"):
    """Varnish from a can; it also fixes what water would take off."""


class SprayVarnish(PaintedFinish):
    """No brush touches what could smear."""

    name = "spray-varnish"
    title = "Spray varnish"
    options = SprayVarnishOptions
    role = "protect"
    row = "spray-varnish"
    verb = "Spray varnish on"
    outdoors = True
    follows = True
    tools = ("card to spray against",)

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Light passes."""
        made = put.amounts
        passes = (
            say("Give {coats} light coats, {next} apart: {whole} in all.",
                coats=made.coats, next=put.times.next, whole=made.whole)
            if made.coats.value > 1
            else say("Give one light coat: {whole}.", whole=made.whole)
        )  # fmt: skip
        return (
            say("Stand the book up, its covers a little apart."),
            say("Start each pass beside the book and end it beyond the other side."),
            passes,
            say("One heavy coat runs and clouds; a light one looks like too little."),
        )


PLUGIN = SprayVarnish()
