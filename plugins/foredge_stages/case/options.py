"""What a spec says under ``case``."""

from __future__ import annotations

from typing import Annotated, Any

import msgspec
from msgspec import Meta

from foredge.contract import Length, LengthOrZero, Options, slot, stock_name, table_row


class Squares(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Squares that differ from edge to edge; what is left out follows ``square``."""

    head: Annotated[LengthOrZero, Meta(description="Board beyond the head.")] | None = None
    tail: Annotated[LengthOrZero, Meta(description="Board beyond the tail.")] | None = None
    fore_edge: Annotated[LengthOrZero, Meta(description="Board beyond the fore-edge.")] | None = (
        None
    )


class InnerStrip(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The strip that is pasted inside the case over spine piece and joints."""

    stock: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper on the shelf.")] | None
    ) = None
    material: Annotated[str, table_row("paper"), Meta(description="Row of the paper table.")] = (
        "lining"
    )
    thickness: (
        Annotated[Length, Meta(description="Thickness of the strip, where you measured it.")] | None
    ) = None
    lap: Annotated[Length, Meta(description="What lies on each board.")] | None = None


class CaseOptions(Options, frozen=True, kw_only=True):
    """Options of the stage ``case``."""

    boards: Annotated[Any, slot("boards"), Meta(description="What the boards are made of.")]
    covering: Annotated[Any, slot("covering"), Meta(description="What covers the case.")]
    square: (
        Annotated[
            LengthOrZero,
            Meta(
                description="Board beyond the block at head, tail and fore-edge; by the board's "
                "thickness if left out."
            ),
        ]
        | None
    ) = None
    squares: Annotated[Squares, Meta(description="Squares that differ from edge to edge.")] = (
        msgspec.field(default_factory=Squares)
    )
    spine: Annotated[
        Any, slot("spine"), Meta(description="What stiffens the spine; card if left out.")
    ] = None
    joint: (
        Annotated[
            Length,
            Meta(
                description="From spine piece to board edge, flat on the bench; by board and "
                "cloth if left out."
            ),
        ]
        | None
    ) = None
    turn_in: (
        Annotated[
            Length,
            Meta(description="Covering turned over the edges; by its material if left out."),
        ]
        | None
    ) = None
    inner_strip: Annotated[
        InnerStrip, Meta(description="The strip inside the case over spine piece and joints.")
    ] = msgspec.field(default_factory=InnerStrip)
    casing_in: Annotated[
        Any,
        slot("casing-in"),
        Meta(description="How block and case are joined; at-once if left out."),
    ] = None
