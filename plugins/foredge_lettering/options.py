"""What a spec says of lettering."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract import (
    Count,
    FontFile,
    Length,
    LengthOrZero,
    OrnamentOptions,
    Ratio,
    table_row,
)

Letters = Literal[
    "plain",
    "plain-double",
    "roman",
    "roman-bold",
    "italic",
    "script",
    "script-double",
    "blackletter",
]
Tool = Literal["paint-marker", "fine-brush", "brush", "nozzle"]
Direction = Literal["down", "up", "across"]
Transfer = Literal["rub-down", "carbon", "chalk"]

_Line = Annotated[str, Meta(max_length=200)]


class LetterBox(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Where the letters stand. What is left out is chosen so that the box lies in the middle."""

    x: (
        Annotated[
            LengthOrZero,
            Meta(
                description="From the panel's spine edge (on the spine: from its left edge) to "
                "the box."
            ),
        ]
        | None
    ) = None
    y: Annotated[LengthOrZero, Meta(description="From the head to the box.")] | None = None
    width: Annotated[Length, Meta(description="Of the box, away from the spine.")] | None = None
    height: Annotated[Length, Meta(description="Of the box, from head to tail.")] | None = None


class LetteringOptions(OrnamentOptions, frozen=True, kw_only=True, tag="lettering"):
    """Text on a panel or on the spine, traced from a sheet at full size."""

    on: Annotated[Literal["front", "back", "spine"], Meta(description="Where it stands.")] = "front"
    text: Annotated[
        Annotated[str, Meta(max_length=300)] | Annotated[tuple[_Line, ...], Meta(max_length=20)],
        Meta(description="The words: a text, or a list of lines."),
    ]
    breaks: Annotated[
        Literal["as-written", "to-fit"],
        Meta(
            description="Whether lines end where they are written to end, or between words so "
            "that the letters can stand largest."
        ),
    ] = "as-written"
    box: Annotated[LetterBox, Meta(description="Where the letters stand.")] = msgspec.field(
        default_factory=LetterBox
    )
    height: (
        Annotated[Length, Meta(description="Height of the capitals; as large as fits if left out.")]
        | None
    ) = None
    colour: Annotated[str, Meta(description="What the sheet calls their colour by.")] | None = None
    letters: Annotated[Letters, Meta(description="Which of the built-in letters.")] = "plain"
    font: (
        Annotated[
            FontFile,
            Meta(
                description="A TrueType or OpenType file of your own in place of the built-in "
                "letters, by its path from this spec."
            ),
        ]
        | None
    ) = None
    tracking: (
        Annotated[Ratio, Meta(description="Space added between letters, by their height.")] | None
    ) = None
    leading: (
        Annotated[
            Ratio, Meta(description="From one line's foot to the next, by the letters' height.")
        ]
        | None
    ) = None
    align: Annotated[
        Literal["left", "centre", "right"], Meta(description="How the lines stand in the box.")
    ] = "centre"
    direction: Annotated[
        Direction,
        Meta(description="How a spine title runs: down (read from head to tail), up, or across."),
    ] = "down"
    tool: Annotated[Tool, Meta(description="What the letters are drawn with.")] = "paint-marker"
    stroke: (
        Annotated[Length, Meta(description="Width of its line; by the tool if left out.")] | None
    ) = None
    paint: (
        Annotated[
            str,
            table_row("paints"),
            Meta(description="Row of the paints table; by the tool if left out."),
        ]
        | None
    ) = None
    coats: Annotated[Count, Meta(description="Coats; by the paint if left out.")] | None = None
    transfer: Annotated[
        Transfer,
        Meta(
            description="How the tracing gets on the work: rub-down (pencil on the mirrored "
            "sheet), carbon (paper under the sheet), or chalk (on its back, for dark grounds)."
        ),
    ] = "rub-down"
    protect: (
        Annotated[
            str,
            table_row("paints"),
            Meta(
                description="What is brushed over the dry letters; a varnish if left out and "
                "the book gets neither varnish nor wax."
            ),
        ]
        | None
    ) = None
