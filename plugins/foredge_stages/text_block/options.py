"""What a spec says under ``text_block``."""

from __future__ import annotations

from typing import Annotated, Any, Literal

import msgspec
from msgspec import Meta

from foredge.contract import (
    Count,
    CountOrZero,
    Length,
    LengthOrZero,
    Options,
    Ratio,
    slot,
    stock_name,
    table_row,
)


class Leaf(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The finished leaf."""

    width: Annotated[Length, Meta(description="From the spine to the finished fore-edge.")]
    height: Annotated[Length, Meta(description="From the finished head to the finished tail.")]


class Trim(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What is cut off each edge of the sewn block."""

    head: Annotated[LengthOrZero, Meta(description="Cut off at the head.")] | None = None
    tail: Annotated[LengthOrZero, Meta(description="Cut off at the tail.")] | None = None
    fore_edge: (
        Annotated[
            LengthOrZero, Meta(description="Cut off at the fore-edge, of the outermost leaf.")
        ]
        | None
    ) = None


class Gatherings(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """How many gatherings: exactly one of ``count``, ``pages`` and ``fill``."""

    count: Annotated[Count, Meta(description="Number of gatherings.")] | None = None
    pages: (
        Annotated[Count, Meta(description="Pages wanted; a folio has four, a leaf two.")] | None
    ) = None
    fill: (
        Annotated[
            Literal["stock"], Meta(description="As many whole gatherings as the sheets give.")
        ]
        | None
    ) = None
    folios: (
        Annotated[Count, Meta(description="Folios in a gathering; by the paper if left out.")]
        | None
    ) = None
    shorter: Annotated[
        tuple[Count, ...],
        Meta(description="Numbers of the gatherings that have one folio fewer, first is 1."),
    ] = ()


class Super(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The cloth over the spine that holds block and case together."""

    material: (
        Annotated[
            str,
            table_row("cloth"),
            Meta(description="Row of the cloth table: super or, under a relief, muslin."),
        ]
        | None
    ) = None
    stock: (
        Annotated[str, stock_name("cloth"), Meta(description="The cloth on the shelf.")] | None
    ) = None
    flange: (
        Annotated[Length, Meta(description="What lies on each board, beyond the spine.")] | None
    ) = None
    short: (
        Annotated[LengthOrZero, Meta(description="Short of the block at head and at tail.")] | None
    ) = None


class Lining(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The paper over the super."""

    material: Annotated[str, table_row("paper"), Meta(description="Row of the paper table.")] = (
        "lining"
    )
    stock: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper on the shelf.")] | None
    ) = None
    layers: (
        Annotated[CountOrZero, Meta(description="How many; 0 leaves the lining out.")] | None
    ) = None
    short: (
        Annotated[LengthOrZero, Meta(description="Short of the block at head and at tail.")] | None
    ) = None


class Inserts(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Room for matter that is pasted in later."""

    each: Annotated[Length, Meta(description="Thickness of what goes on one page.")]
    pages: Annotated[Count, Meta(description="How many pages will carry something.")]
    stubs: Annotated[CountOrZero, Meta(description="Guards sewn in to widen the spine.")] | None = (
        None
    )


GrainRule = Literal["along", "prefer-along", "either"]


class TextBlockOptions(Options, frozen=True, kw_only=True):
    """Options of the stage ``text-block``."""

    paper: Annotated[
        str, stock_name("sheet"), Meta(description="The sheets the leaves are cut of.")
    ]
    leaf: Annotated[Leaf, Meta(description="The finished size; trim and creep are added to it.")]
    gatherings: Annotated[Gatherings, Meta(description="Exactly one of count, pages and fill.")]
    trim: Annotated[
        Trim | Literal["none"] | None,
        Meta(description="What is cut off the sewn block; none leaves the edges as they are."),
    ] = None
    edges_torn: Annotated[
        bool, Meta(description="The folios are torn from the sheet along a rule, not cut.")
    ] = False
    rough: (
        Annotated[
            LengthOrZero,
            Meta(description="Extra width of the folio for rough cutting, trimmed off again."),
        ]
        | None
    ) = None
    grain: Annotated[
        GrainRule,
        Meta(
            description="along: only with the grain along the spine. prefer-along: across where "
            "the sheet leaves no other way. either: whichever gives more folios."
        ),
    ] = "prefer-along"
    folded: Annotated[
        Literal[1, 2, 3],
        Meta(description="How often a piece of the sheet is folded down; 1 makes a folio."),
    ] = 1
    crease: Annotated[
        Literal["use", "ignore"],
        Meta(description="An old crease of the sheet becomes the fold where it costs no folio."),
    ] = "use"
    sewing: Annotated[
        Any, slot("sewing"), Meta(description="The sewing structure; tapes if left out.")
    ] = None
    end_papers: Annotated[
        Any, slot("end-papers"), Meta(description="The end-papers; sewn if left out.")
    ] = None
    edges: Annotated[
        tuple[Annotated[Any, slot("edge")], ...],
        Meta(description="What is done to the edges, in order."),
    ] = ()
    super: Annotated[Super, Meta(description="Cloth over the spine.")] = msgspec.field(
        default_factory=Super
    )
    lining: Annotated[Lining, Meta(description="Paper over the super.")] = msgspec.field(
        default_factory=Lining
    )
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What the spine is glued with.")
    ] = "pva"
    inserts: (
        Annotated[Inserts, Meta(description="Room for matter that is pasted in later.")] | None
    ) = None
    pressed: (
        Annotated[
            Ratio,
            Meta(description="Pressed stack over the sum of its leaves, where you measured it."),
        ]
        | None
    ) = None
