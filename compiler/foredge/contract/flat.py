"""What sheets, boards and cloth have in common: sides, grain, spoiled places, other sizes."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract.measures import Count, Length, LengthOrZero
from foredge.contract.money import Money

Side = Literal["width", "height"]

PieceCount = Annotated[
    Count, Meta(description="How many there are; as many as wanted when absent.")
]


class Crease(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A fold that is already in the sheet: it runs along one side, ``at`` from the left or head."""

    along: Annotated[Side, Meta(description="The side that it runs along.")]
    at: Annotated[Length, Meta(description="How far it lies from the left or the head.")]


class KeepOut(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A place no piece may be cut from: a stain, a hole, a glued seam, print."""

    x: Annotated[LengthOrZero, Meta(description="Its left side, from the left of the sheet.")]
    y: Annotated[LengthOrZero, Meta(description="Its upper side, from the head of the sheet.")]
    width: Annotated[Length, Meta(description="From side to side.")]
    height: Annotated[Length, Meta(description="From head to foot.")]
    why: Annotated[str, Meta(description="What is there: a stain, a seam, print.")] = ""


class Size(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Sheets of the same stuff in another size; the grain runs along the same side.

    ``price`` and ``sold_by`` are its own: those of the item are for the item's own size.
    """

    width: Annotated[Length, Meta(description="From side to side.")]
    height: Annotated[Length, Meta(description="From head to foot.")]
    count: PieceCount | None = None
    keep_out: Annotated[
        tuple[KeepOut, ...], Meta(description="Places no piece may be cut from.")
    ] = ()
    creases: Annotated[tuple[Crease, ...], Meta(description="Folds that are in it already.")] = ()
    price: (
        Annotated[Money, Meta(description="What one of sold_by costs in this size: 0.40 EUR.")]
        | None
    ) = None
    sold_by: (
        Annotated[
            Count, Meta(description="How many of this size are sold together; one when absent.")
        ]
        | None
    ) = None
