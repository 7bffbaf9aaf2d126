"""Metal leaf: laid on tacky size, leaf by leaf, with laps."""

from __future__ import annotations

from typing import Annotated, Any

from msgspec import Meta

from foredge.contract import (
    FinishOptions,
    Quantity,
    Stuff,
    Text,
    Use,
    ceil,
    cited,
    say,
    table_row,
)
from foredge_finishes.coat import PaintedFinish, Put, brushed

TARNISH = {
    "imitation-gold": "The brass in it turns brown and green",
    "copper": "It turns brown and green",
}
"""Rows of the leaf table that do not stay bright in the air. From memory."""


class MetalLeafOptions(FinishOptions, frozen=True, kw_only=True, tag="metal-leaf"):
    """Leaf from a book of leaves."""

    leaf: Annotated[
        str, table_row("leaf"), Meta(description="Row of the leaf table, by its metal and size.")
    ] = "imitation-gold"


class MetalLeaf(PaintedFinish):
    """Leaves overlap, and some are lost."""

    name = "metal-leaf"
    title = "Metal leaf"
    options = MetalLeafOptions
    role = "leaf"
    row = "leaf-size"
    lies = "heights"
    metal = True
    verb = "Lay metal leaf on"
    relief_first = True
    tools = ("soft brush", "gilder's tip or waxed paper", "soft dry brush")

    def needs_cover_of(self, options: Any) -> str:
        """Brass and copper do not stay bright bare."""
        return TARNISH.get(options.leaf, "")

    def stuff_of(self, options: Any) -> Stuff:
        """Its metal."""
        return Stuff(options.colour or "", options.leaf)

    def more_quantities(self, put: Put) -> tuple[Quantity, ...]:
        """Leaves by the area one covers within its laps."""
        return (self._leaves(put),)

    def more_uses(self, put: Put) -> tuple[Use, ...]:
        """Leaves; the size is the coat itself."""
        title = put.job.book.words("leaf", put.options.leaf, "title")
        return (Use(title, self._leaves(put), note=f"leaves, {put.where}"),)

    def more_time(self, put: Put) -> Quantity:
        """Every leaf takes its time."""
        return self._leaves(put) * put.job.book.practice("hand-leaf")

    def _leaves(self, put: Put) -> Quantity:
        book, row = put.job.book, put.options.leaf
        side, lap = book.table("leaf", row, "side"), book.table("leaf", row, "lap")
        shown = (side - lap) * (side - lap)
        wanted = put.amounts.area / shown * (1 + book.table("leaf", row, "waste"))
        return ceil(wanted).named(
            f"finishing.{put.job.coat.key}.leaves",
            label="leaves of metal",
            rule="area by what a leaf shows between its laps, and what is lost",
            source=cited(side),
        )

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Size, wait for the tack, lay, press, brush off."""
        book = put.job.book
        return (
            say("Close windows and doors: a breath lifts the leaf."),
            brushed(put, "Brush size on thinly:"),
            say("Wait until it is clear and pulls at a knuckle, about {touch}.",
                touch=put.times.touch),
            say("Lay the leaf, each piece {lap} over the last; press it through paper.",
                lap=book.table("leaf", put.options.leaf, "lap")),
            say("Let it dry, then brush the loose bits off with a soft dry brush."),
        )  # fmt: skip


PLUGIN = MetalLeaf()
