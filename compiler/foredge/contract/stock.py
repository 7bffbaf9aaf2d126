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


class StockItem(
    msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True, tag_field="kind"
):
    """One entry of the shelf. ``name`` and ``path`` are filled in by the compiler."""

    note: str | None = None


class Sheet(StockItem, frozen=True, kw_only=True, tag="sheet"):
    """Paper, thin card: anything that is folded or pasted."""

    width: Length
    height: Length
    grain: Grain = "unknown"
    count: Count | None = None
    material: Annotated[str, table_row("paper")] | None = None
    grammage: Grammage | None = None
    thickness: (
        Annotated[Length, Meta(description="One leaf, measured: a stack of 20 over 20.")] | None
    ) = None
    bulk: Annotated[float, Meta(gt=0, le=10, description="cm3/g")] | None = None
    creases: tuple[Crease, ...] = ()


class Crease(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A fold that is already in the sheet: it runs along one side, ``at`` from the left or head."""

    along: Literal["width", "height"]
    at: Length


class Board(StockItem, frozen=True, kw_only=True, tag="board"):
    """Board and packaging card, to be cut flat."""

    width: Length
    height: Length
    grain: Grain = "unknown"
    count: Count | None = None
    material: Annotated[str, table_row("board")] | None = None
    thickness: Length | None = None
    grammage: Grammage | None = None
    coated: Literal["none", "one side", "both sides"] | None = None


class Cloth(StockItem, frozen=True, kw_only=True, tag="cloth"):
    """Cloth, leather and covering paper. ``grain`` is the warp (the selvedge side)."""

    width: Length
    height: Length
    grain: Grain = "unknown"
    count: Count | None = None
    material: Annotated[str, table_row("cloth")] | None = None
    thickness: Annotated[Length, Meta(description="With its backing.")] | None = None
    colour: str | None = None


class Thread(StockItem, frozen=True, kw_only=True, tag="thread"):
    """Sewing thread. One of ``size`` or ``diameter``; a row of the tables else."""

    length: Length | None = None
    material: Annotated[str, table_row("thread")] | None = None
    size: ThreadSize | None = None
    diameter: (
        Annotated[Length, Meta(description="Ten turns wound tight on a pencil, over 10.")] | None
    ) = None
    colour: str | None = None


class Tape(StockItem, frozen=True, kw_only=True, tag="tape"):
    """Linen tape, ribbon, elastic: anything narrow sold by length."""

    length: Length | None = None
    width: Length
    thickness: Length | None = None
    colour: str | None = None


class Supply(StockItem, frozen=True, kw_only=True, tag="supply"):
    """Glue, paint, filler: anything poured or weighed."""

    material: str | None = None
    volume: Volume | None = None
    mass: Mass | None = None
    solids: Ratio | None = None


STOCK_KINDS: tuple[type[StockItem], ...] = (Sheet, Board, Cloth, Thread, Tape, Supply)


def stock_path(name: str) -> Path:
    """Where the stock item ``name`` stands in the spec."""
    return ("stock", name)
