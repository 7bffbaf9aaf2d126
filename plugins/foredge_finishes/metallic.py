"""Metallic: metallic paint rubbed on the high points."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class MetallicOptions(FinishOptions, frozen=True, kw_only=True, tag="metallic"):
    """Metallic acrylic."""


class Metallic(PaintedFinish):
    """After the lights, so that no matte paint dulls it."""

    name = "metallic"
    title = "Metallic paint"
    options = MetallicOptions
    row = "metallic"
    lies = "heights"
    shows = "gold"
    metal = True
    verb = "Rub metallic paint on"
    relief_first = True
    material = "Metallic acrylic paint"
    tools = ("stiff short brush", "paper towel")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Little, and along the form."""
        return (
            say("Stir it from the bottom: the flakes settle."),
            say("Take up little, on a nearly dry brush or a finger."),
            brushed(put, "Rub on"),
        )


PLUGIN = Metallic()
