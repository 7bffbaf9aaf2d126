"""``relief``: forms on a board or the spine, a light core under a skin of clay."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

import msgspec
from msgspec import Meta

from foredge.contract import (
    Count,
    Density,
    Length,
    Mass,
    PartOptions,
    Ratio,
    slot,
    stock_name,
    table_row,
)


class Core(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What is under the skin."""

    foil: Annotated[str, table_row("armature"), Meta(description="Row of the armature table.")] = (
        "foil"
    )
    packed: (
        Annotated[Density, Meta(description="Mass of the crumpled core by its own volume.")] | None
    ) = None
    tape: Annotated[str, table_row("armature"), Meta(description="Row of the armature table.")] = (
        "masking-tape"
    )
    tack: Annotated[
        Literal["hot-glue", "white-glue"],
        Meta(description="What holds the core on the board until the skin does."),
    ] = "hot-glue"
    card: (
        Annotated[
            str,
            stock_name("board", "sheet"),
            Meta(description="Card it is built up of, cut to the contours, instead of foil."),
        ]
        | None
    ) = None


class Inclusion(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Something pressed into the wet clay for its texture."""

    what: Annotated[str, Meta(min_length=1, description="What the sheet calls it.")]
    kind: Annotated[
        Literal["seeds", "plant", "food", "sand", "shell", "glass", "metal", "other"],
        Meta(
            description="seeds: pulses, grains and whatever else drinks water and swells. food: "
            "anything somebody or something would eat."
        ),
    ]
    mass: Annotated[Mass, Meta(description="All of it together.")] | None = None


class ReliefOptions(PartOptions, frozen=True, kw_only=True, tag="relief"):
    """A relief on one panel; ``parts`` are its forms."""

    id: (
        Annotated[
            str,
            Meta(
                pattern="^[a-z][a-z0-9-]*$",
                description="A name of its own, needed where two items share a use.",
            ),
        ]
        | None
    ) = None
    on: Annotated[Literal["front", "back", "spine"], Meta(description="Where it stands.")]
    made_on: Annotated[
        Literal["bare-board", "covered-case", "finished-book"],
        Meta(description="What it is modelled on: this decides the order of the work."),
    ]
    parts: Annotated[
        tuple[Annotated[Any, slot("relief-part")], ...],
        Meta(min_length=1, description="Its forms, in the order in which they are built."),
    ]
    core: Annotated[Core, Meta(description="What is under the skin.")] = msgspec.field(
        default_factory=Core
    )
    skin: Annotated[Any, slot("skin"), Meta(description="The clay; paper-clay if left out.")] = None
    seal: Annotated[
        Literal["both faces", "one face", "none"],
        Meta(description="What of a bare board is sealed before anything wet touches it."),
    ] = "both faces"
    coats: Annotated[Count, Meta(description="Coats of the sealer; 2 if left out.")] | None = None
    key: Annotated[
        Literal["gauze", "glue", "none"],
        Meta(description="What the clay grips on cloth: gauze in glue, glue alone, or nothing."),
    ] = "gauze"
    counter_lining: Annotated[
        Literal["paper", "none"],
        Meta(description="What is pasted inside the board of a covered case to balance the pull."),
    ] = "paper"
    smoothing: Annotated[
        Literal["water", "sanding", "none"],
        Meta(
            description="How the last layer is smoothed: with water while it is wet, or sanded "
            "when it is dry, which makes dust."
        ),
    ] = "water"
    drying: Annotated[
        Literal["air", "oven"],
        Meta(
            description="air: as the bench's room has it. oven: in a slow oven, which only a bare "
            "form of foil and foil tape on a bare board bears."
        ),
    ] = "air"
    texture: (
        Annotated[str, Meta(description="What is worked into the last layer: 'pitted'.")] | None
    ) = None
    fill_cracks: Annotated[
        bool, Meta(description="Whether a day is kept for filling the cracks of drying.")
    ] = True
    inclusions: Annotated[
        tuple[Inclusion, ...], Meta(description="Things pressed into the wet clay.")
    ] = ()
    socket: (
        Annotated[
            Ratio,
            Meta(description="How much wider than a rigid inset its socket is made; by shrinkage."),
        ]
        | None
    ) = None
    inset_density: Annotated[Density, Meta(description="Of the rigid insets.")] | None = None
    contour: Annotated[Length, Meta(description="Height from contour to contour.")] | None = None


@dataclass(frozen=True, slots=True)
class Relief:
    """Made by the stage ``sculpt``."""

    kind: str = "embellishment"
    name: str = "relief"
    title: str = "Relief"
    stage: str = "sculpt"
    options: type[ReliefOptions] = ReliefOptions


PLUGIN = Relief()
