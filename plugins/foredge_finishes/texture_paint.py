"""Texture paint: modelling or texture paste, laid on thick."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class TexturePaintOptions(FinishOptions, frozen=True, kw_only=True, tag="texture-paint"):
    """Paste that keeps the mark of the tool."""


class TexturePaint(PaintedFinish):
    """Before the base coat, so that colour runs over it."""

    name = "texture-paint"
    title = "Texture paste"
    options = TexturePaintOptions
    role = "ground"
    row = "texture-paint"
    lies = "all"
    shows = "chalk"
    verb = "Lay texture on"
    relief_first = True
    tools = ("palette knife", "sponge or comb")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Spread, then mark."""
        return (
            brushed(put, "Spread"),
            say("Mark it with knife, sponge or comb while it is soft; touch nothing as it sets."),
            say("A thick place dries from outside: press a fingernail in before you go on."),
        )


PLUGIN = TexturePaint()
