"""Wash: thin dark colour that runs into the hollows and stays there."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import Book, Coat, FinishOptions, Part, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed, soluble, thinned


class WashOptions(FinishOptions, frozen=True, kw_only=True, tag="wash"):
    """Thinned colour."""

    of: Annotated[
        Literal["acrylic", "ink", "watercolour"],
        Meta(description="What is thinned. Water takes ink and watercolour off again when dry."),
    ] = "acrylic"


class Wash(PaintedFinish):
    """Dark into the depths, wiped off the heights."""

    name = "wash"
    title = "Wash"
    options = WashOptions
    row = "wash"
    lies = "hollows"
    shows = "umber"
    verb = "Run a wash over"
    relief_first = True
    tools = ("soft brush", "lint-free rag", "jar")

    def describe(self, book: Book, part: Part[Any], key: str) -> Coat:
        """Ink and watercolour stay soluble until something fixes them."""
        coat = super().describe(book, part, key)
        return coat if part.options.of == "acrylic" else soluble(coat)

    def material_of(self, put: Put) -> str:
        """What is thinned."""
        return "Acrylic paint" if put.options.of == "acrylic" else put.options.of.capitalize()

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Flood, then wipe."""
        return (
            *thinned(put, _PAINT[put.options.of]),
            brushed(put, "Flood on"),
            say("Wipe the high points with a damp rag before it dries; leave the hollows dark.")
            if put.raised
            else say("Wipe it back with a damp rag before it dries, lightest in the middle."),
        )


_PAINT = {"acrylic": "paint", "ink": "ink", "watercolour": "watercolour"}

PLUGIN = Wash()
