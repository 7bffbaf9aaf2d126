"""What a spec can say of every pattern."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import LengthOrZero, OrnamentOptions, table_row


class PatternOptions(OrnamentOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Where a pattern lies and what it is stuck down and sealed with."""

    on: Annotated[
        Literal["front", "back", "paste-downs"],
        Meta(description="Where it lies; the paste-downs are both of them."),
    ] = "paste-downs"
    margin: (
        Annotated[
            LengthOrZero,
            Meta(description="From the pattern to head, tail and fore-edge of its panel."),
        ]
        | None
    ) = None
    clear: (
        Annotated[
            LengthOrZero,
            Meta(description="Strip kept free beside the joint, from the board's edge."),
        ]
        | None
    ) = None
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What the pieces are stuck down with.")
    ] = "pva"
    seal: Annotated[
        str, table_row("paints"), Meta(description="What the finished pattern is sealed with.")
    ] = "seal-pva"
