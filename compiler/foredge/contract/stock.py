"""What may lie on the shelf: the items under ``stock:``."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract.flat import Crease, KeepOut, PieceCount, Size
from foredge.contract.measures import (
    AmountOrCount,
    Count,
    Grammage,
    Length,
    LengthOrZero,
    Mass,
    Ratio,
    ThreadSize,
    Volume,
    table_row,
)
from foredge.contract.money import Money
from foredge.problem import Path

Grain = Literal["width", "height", "unknown"]
"""Which side of the sheet the grain (the warp of a cloth) runs along."""


_Name = Meta(description="What it is, as a row of the reference tables; its figures are used.")
_Width = Annotated[Length, Meta(description="From side to side.")]
_Height = Annotated[Length, Meta(description="From head to foot.")]
_What = Annotated[
    str, Meta(description="What it is, as the sheet calls it; the name of the item when absent.")
]
_Colour = Annotated[str, Meta(description="What the sheet calls it by.")]
_Left = Annotated[Length, Meta(description="How much is left; as much as wanted when absent.")]
_GrainSide = Annotated[Grain, Meta(description="The side the grain runs along.")]
_Grammage = Annotated[Grammage, Meta(description="Its mass by area, such as 90 g/m2.")]


Found = Literal["new", "second-hand", "old"]
"""Where it comes from; ``old`` is older than anybody remembers: a flea market, an attic."""

State = Literal["clean", "musty", "insects", "mouldy", "painted", "frozen"]
"""What is found when it is looked through."""


class StockItem(
    msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True, tag_field="kind"
):
    """One entry of the shelf. ``price`` is that of what ``sold_by`` says."""

    found: Annotated[
        Found,
        Meta(
            description="Where it comes from: new, second-hand, or old (an attic, a flea market; "
            "nobody knows what is in its dye, paint or paste)."
        ),
    ] = "new"
    state: Annotated[
        tuple[State, ...],
        Meta(
            description="What you found when you looked it through: clean; musty, or insects "
            "(then it is bagged and frozen first); mouldy; painted; frozen (glue or paint that "
            "stood in frost)."
        ),
    ] = ()
    quarantined: (
        Annotated[
            bool,
            Meta(
                description="true: it has been bagged, frozen and looked through already. false: "
                "you will not do that."
            ),
        ]
        | None
    ) = None
    price: Annotated[Money, Meta(description="What one of sold_by costs: 4.50 EUR.")] | None = None
    note: Annotated[str, Meta(description="A remark of the maker's.")] | None = None


class Flat(StockItem, frozen=True, kw_only=True):
    """Everything that is cut up flat: its spoiled places and other sizes."""

    width: _Width
    height: _Height
    grain: _GrainSide = "unknown"
    count: PieceCount | None = None
    keep_out: Annotated[
        tuple[KeepOut, ...],
        Meta(description="Places no piece may be cut from: stains, holes, seams, print."),
    ] = ()
    creases: Annotated[
        tuple[Crease, ...], Meta(description="Folds that are in the sheet already.")
    ] = ()
    edge: (
        Annotated[
            LengthOrZero,
            Meta(description="Torn, dirty or selvedge edge that is cut away on every side."),
        ]
        | None
    ) = None
    kerf: (
        Annotated[
            LengthOrZero,
            Meta(description="Lost at every cut: nothing with a knife, some with a saw or a tear."),
        ]
        | None
    ) = None
    more: Annotated[
        tuple[Size, ...], Meta(description="Other sizes of the same stuff: remnants, odd sheets.")
    ] = ()
    sold_by: (
        Annotated[Count, Meta(description="How many are sold together; one when absent.")] | None
    ) = None


class Sheet(Flat, frozen=True, kw_only=True, tag="sheet"):
    """Paper, thin card: anything that is folded or pasted."""

    material: Annotated[str, table_row("paper"), _Name] | None = None
    grammage: _Grammage | None = None
    thickness: (
        Annotated[Length, Meta(description="One leaf, measured: a stack of 20 over 20.")] | None
    ) = None
    aged: (
        Annotated[
            Literal["tea", "coffee"],
            Meta(description="What it is dipped in, to look old, before it is cut and folded."),
        ]
        | None
    ) = None
    bulk: (
        Annotated[float, Meta(gt=0, le=10, description="Thickness over grammage, in cm3/g.")] | None
    ) = None


class Board(Flat, frozen=True, kw_only=True, tag="board"):
    """Board and packaging card, to be cut flat."""

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


class Cloth(Flat, frozen=True, kw_only=True, tag="cloth"):
    """Cloth, leather and covering paper. ``grain`` is the warp (the selvedge side)."""

    grain: Annotated[
        Grain, Meta(description="The side the warp runs along, that is the selvedge.")
    ] = "unknown"
    material: Annotated[str, table_row("cloth"), _Name] | None = None
    thickness: Annotated[Length, Meta(description="With its backing.")] | None = None
    colour: _Colour | None = None


class Linear(StockItem, frozen=True, kw_only=True):
    """Everything that is cut off by length."""

    length: _Left | None = None
    more: Annotated[
        tuple[Length, ...], Meta(description="Other lengths of the same stuff: remnants.")
    ] = ()
    sold_by: Annotated[Length, Meta(description="The length that is sold: 50 m.")] | None = None


class Thread(Linear, frozen=True, kw_only=True, tag="thread"):
    """Sewing thread. One of ``size`` or ``diameter``; a row of the tables else."""

    material: Annotated[str, table_row("thread"), _Name] | None = None
    size: (
        Annotated[ThreadSize, Meta(description="As the label has it: 25/3, or 200 tex.")] | None
    ) = None
    diameter: (
        Annotated[Length, Meta(description="Ten turns wound tight on a pencil, over 10.")] | None
    ) = None
    colour: _Colour | None = None


class Tape(Linear, frozen=True, kw_only=True, tag="tape"):
    """Linen tape, ribbon, elastic: anything narrow sold by length."""

    width: _Width
    material: _What | None = None
    thickness: Annotated[Length, Meta(description="One layer, measured.")] | None = None
    colour: _Colour | None = None


class Supply(StockItem, frozen=True, kw_only=True, tag="supply"):
    """Glue, paint, filler, foil, buttons: anything poured, weighed, unrolled or counted."""

    material: _What | None = None
    colour: _Colour | None = None
    volume: Annotated[Volume, Meta(description="How much is left.")] | None = None
    mass: Annotated[Mass, Meta(description="How much is left.")] | None = None
    length: _Left | None = None
    count: PieceCount | None = None
    sold_by: (
        Annotated[
            AmountOrCount, Meta(description="What is sold: a jar of 250 ml, a bag of 500 g, 12.")
        ]
        | None
    ) = None
    made_for: (
        Annotated[
            Literal["school", "wood", "books"],
            Meta(
                description="What the label of a white glue says it is for: school and wood glues "
                "are sour and turn brittle; glue for books is neutral."
            ),
        ]
        | None
    ) = None
    solids: (
        Annotated[Ratio, Meta(description="What stays of it when it is dry, by mass.")] | None
    ) = None


STOCK_KINDS: tuple[type[StockItem], ...] = (Sheet, Board, Cloth, Thread, Tape, Supply)


def stock_path(name: str) -> Path:
    """Where the stock item ``name`` stands in the spec."""
    return ("stock", name)
