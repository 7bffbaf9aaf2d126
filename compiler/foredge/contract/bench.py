"""When and where the work is done: the spec's ``bench``."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract.measures import (
    Count,
    CountOrZero,
    Duration,
    Factor,
    Length,
    Ratio,
    Temperature,
)

_DAY = "(?:[Mm]on|[Tt]ue|[Ww]ed|[Tt]hu|[Ff]ri|[Ss]at|[Ss]un)"
_CLOCK = "(?:[01][0-9]|2[0-3]):[0-5][0-9]"
_DATE = "[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"
SESSION_PATTERN = f"^{_DAY}(?:(?:, | and |-){_DAY})* {_CLOCK}-{_CLOCK}$"

Date = Annotated[str, Meta(pattern=f"^{_DATE}$", extra_json_schema={"format": "date"})]
"""A day, such as ``2026-12-01``."""

Session = Annotated[
    str,
    Meta(
        pattern=SESSION_PATTERN,
        description="Days of the week and a time, such as 'Tue and Thu 19:30-21:30'.",
    ),
]


class Room(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The air things dry in."""

    temperature: Annotated[Temperature, Meta(description="Such as 18 degC.")] | None = None
    humidity: Annotated[Ratio, Meta(description="Relative humidity, such as 55 %.")] | None = None
    fan: Annotated[bool, Meta(description="A fan moves the air over what dries.")] = False


class Bench(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The bench: its sessions, its room, what it has of each thing that is occupied for long."""

    start: Annotated[Date, Meta(description="The first day, such as 2026-12-01.")] | None = None
    sessions: Annotated[
        tuple[Session, ...], Meta(description="When the bench is free, week by week.")
    ] = ()
    off: Annotated[tuple[Date, ...], Meta(description="Days on which nothing is done.")] = ()
    daylight: (
        Annotated[
            str,
            Meta(
                pattern=f"^{_CLOCK}-{_CLOCK}$",
                description="When it is light enough outdoors, such as 09:00-16:00.",
            ),
        ]
        | None
    ) = None
    room: Annotated[Room, Meta(description="The air things dry in.")] = msgspec.field(
        default_factory=Room
    )
    children: Annotated[bool, Meta(description="Children work at it, in class or at home.")] = False
    presses: (
        Annotated[Count, Meta(description="Books that can be pressed at once; 1 if left out.")]
        | None
    ) = None
    clamps: (
        Annotated[CountOrZero, Meta(description="Pairs of clamps there are; 2 if left out.")] | None
    ) = None
    weights: (
        Annotated[
            Count,
            Meta(description="Sets of weights there are; as many as wanted if left out."),
        ]
        | None
    ) = None
    space: (
        Annotated[
            Count,
            Meta(
                description="Books or parts that have room to lie out and dry at once; as many "
                "as wanted if left out."
            ),
        ]
        | None
    ) = None
    slower: (
        Annotated[
            Factor,
            Meta(description="Time on hand by the sheet's estimate: 150 % for a new design."),
        ]
        | None
    ) = None
    plan: (
        Annotated[
            Literal["quick", "optimal"],
            Meta(
                description="How hard to look for the earliest finish: quick, or optimal, which "
                "needs the extra 'optimal'."
            ),
        ]
        | None
    ) = None
    keep_from: (
        Annotated[Length, Meta(description="Left-overs narrower than this are not worth keeping.")]
        | None
    ) = None
    longest: (
        Annotated[Duration, Meta(description="Longest stretch of work without a break.")] | None
    ) = None
