"""Dry brush: lights dragged over the high points with a brush that is nearly dry."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import SEEN, PaintedFinish, Put


class DryBrushOptions(FinishOptions, frozen=True, kw_only=True, tag="dry-brush"):
    """Lights over a dark ground."""


class DryBrush(PaintedFinish):
    """From dark to light, a lighter tone each time."""

    name = "dry-brush"
    title = "Dry brush"
    options = DryBrushOptions
    row = "dry-brush"
    lies = "rims"
    shows = "bone"
    verb = "Dry-brush"
    relief_first = True
    material = "Acrylic paint"
    tools = ("stiff flat brush", "paper towel")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Nearly dry, one direction."""
        made = put.amounts
        drop = made.coat.value < SEEN
        light = (
            say("Go over it {coats} times, {next} apart, each time lighter and with less.",
                coats=made.coats, next=put.times.next)
            if made.coats.value > 1 and drop
            else say("Go over it once.")
            if drop
            else say("Go over it {coats} times, {next} apart, each time lighter and with less; "
                "{coat} each.", coats=made.coats, next=put.times.next, coat=made.coat)
            if made.coats.value > 1
            else say("Go over it once with {coat}.", coat=made.coat)
        )  # fmt: skip
        return (
            say("Take up paint and wipe the brush until it hardly marks the towel."),
            say("Drag it across the high points, always in one direction."),
            light,
        )


PLUGIN = DryBrush()
