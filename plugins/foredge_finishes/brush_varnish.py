"""Brush varnish: acrylic varnish, matte or gloss."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class BrushVarnishOptions(FinishOptions, frozen=True, kw_only=True, tag="brush-varnish"):
    """Acrylic varnish from a tin."""

    sheen: Annotated[
        Literal["matte", "gloss"],
        Meta(description="Gloss faces that touch stick sooner than matte ones."),
    ] = "matte"


class BrushVarnish(PaintedFinish):
    """The coat that is handled."""

    name = "brush-varnish"
    title = "Brush varnish"
    options = BrushVarnishOptions
    role = "protect"
    row = "varnish-matte"
    verb = "Varnish"
    follows = True
    tools = ("soft wide brush",)

    def row_of(self, options: Any) -> str:
        """Matte or gloss."""
        return f"varnish-{options.sheen}"

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Thin, and never back into it."""
        stir = (say("Stir, do not shake: bubbles dry in."),)
        return (
            *stir,
            brushed(put, "Brush on"),
            say("Long strokes, and never back into what has begun to dry."),
        )


PLUGIN = BrushVarnish()
