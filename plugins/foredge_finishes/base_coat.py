"""Base coat: the flat colour everything else stands on."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put, brushed


class BaseCoatOptions(FinishOptions, frozen=True, kw_only=True, tag="base-coat"):
    """Acrylic or chalky paint."""

    paint: Annotated[
        Literal["acrylic", "chalky"], Meta(description="Thin acrylic, or thick chalky paint.")
    ] = "acrylic"


class BaseCoat(PaintedFinish):
    """The darkest colour first: the lighter ones come over it."""

    name = "base-coat"
    title = "Base coat"
    options = BaseCoatOptions
    row = "base-coat"
    lies = "all"
    shows = "stone"
    verb = "Lay the base coat on"
    relief_first = True
    tools = ("flat brush", "small brush")

    def row_of(self, options: Any) -> str:
        """Chalky paint goes on twice as thick."""
        return "chalk-paint" if options.paint == "chalky" else self.row

    def material_of(self, put: Put) -> str:
        """By the bottle, so that the coats of one colour add up."""
        return "Chalky paint" if put.options.paint == "chalky" else "Acrylic paint"

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Hollows first, where there are any."""
        first = (say("Hollows first with the small brush, then the rest."),) if put.raised else ()
        return (*first, brushed(put, "Brush on"))


PLUGIN = BaseCoat()
