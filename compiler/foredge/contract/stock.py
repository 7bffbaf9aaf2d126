"""What may lie on the shelf: the items under ``stock:``."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract.measures import (
    Count,
    Grammage,
    Length,
    Mass,
    Ratio,
    ThreadSize,
    Volume,
    table_row,
)
from foredge.problem import Path

Grain = Literal["width", "height", "unknown"]
"""Which side of the sheet the grain (the warp of a cloth) runs along."""


_Name = Meta(description="What it is, as a row of the reference tables; its figures are used.")
_Width = Annotated[Length, Meta(description="From side to side.")]
_Height = Annotated[Length, Meta(description="From head to foot.")]
_Pieces = Annotated[Count, Meta(description="How many there are; as many as wanted when absent.")]
_Colour = Annotated[str, Meta(description="What the sheet calls it by.")]
_Left = Annotated[Length, Meta(description="How much is left; as much as wanted when absent.")]
_GrainSide = Annotated[Grain, Meta(description="The side the grain runs along.")]
_Grammage = Annotated[Grammage, Meta(description="Its mass by area, such as 90 g/m2.")]


class StockItem(
    msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True, tag_field="kind"
):
    """One entry of the shelf."""

    note: Annotated[str, Meta(description="A remark of the maker's.")] | None = None


class Sheet(StockItem, frozen=True, kw_only=True, tag="sheet"):
    """Paper, thin card: anything that is folded or pasted."""

    width: _Width
    height: _Height
    grain: _GrainSide = "unknown"
    count: _Pieces | None = None
    material: Annotated[str, table_row("paper"), _Name] | None = None
    grammage: _Grammage | None = None
    thickness: (
        Annotated[Length, Meta(description="One leaf, measured: a stack of 20 over 20.")] | None
    ) = None
    bulk: (
        Annotated[float, Meta(gt=0, le=10, description="Thickness over grammage, in cm3/g.")] | None
    ) = None
    creases: Annotated[
        tuple[Crease, ...], Meta(description="Folds that are in the sheet already.")
    ] = ()


class Crease(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A fold that is already in the sheet: it runs along one side, ``at`` from the left or head."""

    along: Annotated[Literal["width", "height"], Meta(description="The side that it runs along.")]
    at: Annotated[Length, Meta(description="How far it lies from the left or the head.")]


class Board(StockItem, frozen=True, kw_only=True, tag="board"):
    """Board and packaging card, to be cut flat."""

    width: _Width
    height: _Height
    grain: _GrainSide = "unknown"
    count: _Pieces | None = None
    material: Annotated[str, table_row("board"), _Name] | None = None
    thickness: Annotated[Length, Meta(description="One layer, measured.")] | None = None
    grammage: _Grammage | None = None
    coated: (
        Annotated[
            Literal["none", "one side", "both sides"],
            Meta(description="Which sides are shiny or printed, where glue holds badly."),
        ]
        | None
    ) = None


class Cloth(StockItem, frozen=True, kw_only=True, tag="cloth"):
    """Cloth, leather and covering paper. ``grain`` is the warp (the selvedge side)."""

    width: _Width
    height: _Height
    grain: Annotated[
        Grain, Meta(description="The side the warp runs along, that is the selvedge.")
    ] = "unknown"
    count: _Pieces | None = None
    material: Annotated[str, table_row("cloth"), _Name] | None = None
    thickness: Annotated[Length, Meta(description="With its backing.")] | None = None
    colour: _Colour | None = None


class Thread(StockItem, frozen=True, kw_only=True, tag="thread"):
    """Sewing thread. One of ``size`` or ``diameter``; a row of the tables else."""

    length: _Left | None = None
    material: Annotated[str, table_row("thread"), _Name] | None = None
    size: (
        Annotated[ThreadSize, Meta(description="As the label has it: 25/3, or 200 tex.")] | None
    ) = None
    diameter: (
        Annotated[Length, Meta(description="Ten turns wound tight on a pencil, over 10.")] | None
    ) = None
    colour: _Colour | None = None


class Tape(StockItem, frozen=True, kw_only=True, tag="tape"):
    """Linen tape, ribbon, elastic: anything narrow sold by length."""

    length: _Left | None = None
    width: _Width
    thickness: Annotated[Length, Meta(description="One layer, measured.")] | None = None
    colour: _Colour | None = None


class Supply(StockItem, frozen=True, kw_only=True, tag="supply"):
    """Glue, paint, filler: anything poured or weighed."""

    material: Annotated[str, Meta(description="What it is.")] | None = None
    volume: Annotated[Volume, Meta(description="How much is left.")] | None = None
    mass: Annotated[Mass, Meta(description="How much is left.")] | None = None
    solids: (
        Annotated[Ratio, Meta(description="What stays of it when it is dry, by mass.")] | None
    ) = None


STOCK_KINDS: tuple[type[StockItem], ...] = (Sheet, Board, Cloth, Thread, Tape, Supply)


def stock_path(name: str) -> Path:
    """Where the stock item ``name`` stands in the spec."""
    return ("stock", name)
