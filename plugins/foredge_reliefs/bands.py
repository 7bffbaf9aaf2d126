"""What a ring and an arc have in common: a band of oval section on a circle."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import Length, Quantity, ReliefPartOptions, Ring

Section = Annotated[
    Literal["half-round", "round"],
    Meta(description="half-round lies flat on the board; round touches it along a line."),
]


class BandOptions(ReliefPartOptions, frozen=True, kw_only=True):
    """The band of a ring or an arc."""

    diameter: Annotated[Length, Meta(description="Outside, over the whole circle.")]
    width: Annotated[Length, Meta(description="Of the band.")]
    height: Annotated[Length, Meta(description="How high the band rises above the board.")]
    section: Section = "half-round"


def band(options: BandOptions, start: Quantity, sweep: Quantity) -> Ring[Quantity]:
    """The solid of a band from ``start`` over ``sweep`` degrees."""
    round_about = options.section == "round"
    oval = options.height if round_about else 2 * options.height
    sunk = 0 * options.height if round_about else options.height
    radius = (options.diameter - options.width) / 2
    return Ring(radius, options.width, oval, start, sweep, sunk)
