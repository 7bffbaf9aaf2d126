"""Scatter: many copies of one small part strewn over a region, none on another."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Angle,
    Count,
    CountOrZero,
    Length,
    LengthOrZero,
    Part,
    PartOptions,
    Placed,
    Problem,
    Quantity,
    ReliefJob,
    ReliefPartResult,
    ReliefShape,
    error,
    given,
    number,
    option_path,
    reach,
    refuse_part,
    shape_part,
    slot,
)
from foredge_reliefs.copies import length, too_many
from foredge_reliefs.throws import Region, throw

RULE = "relief-scatter-full"


class ScatterOptions(PartOptions, frozen=True, kw_only=True, tag="scatter"):
    """A scatter."""

    name: Annotated[str, Meta(description="What the drawing calls it.")] | None = None
    of: Annotated[
        Part[Any],
        slot(RELIEF_PART),
        Meta(description="The part to strew, without x and y of its own."),
    ]
    count: Annotated[Count, Meta(description="How many copies.")]
    x: (
        Annotated[
            LengthOrZero,
            Meta(description="Middle of the region from the spine edge. Left out: the middle."),
        ]
        | None
    ) = None
    y: (
        Annotated[
            LengthOrZero,
            Meta(description="Middle of the region from the head. Left out: the middle."),
        ]
        | None
    ) = None
    width: Annotated[Length, Meta(description="Of the region, away from the spine.")]
    height: Annotated[Length, Meta(description="Of the region, from head to tail.")]
    region: Annotated[
        Literal["rectangle", "ellipse"], Meta(description="The form of the region.")
    ] = "rectangle"
    turn: (
        Annotated[Angle, Meta(description="How far the region is turned. Left out: not.")] | None
    ) = None
    gap: (
        Annotated[
            LengthOrZero,
            Meta(description="The least gap between two bare copies. Left out: none."),
        ]
        | None
    ) = None
    turned: Annotated[bool, Meta(description="Whether each copy is turned by chance as well.")] = (
        True
    )
    seed: (
        Annotated[
            CountOrZero, Meta(description="Another number strews them otherwise. Left out: 0.")
        ]
        | None
    ) = None


class Scatter:
    """Seeded copies inside a rectangle or an ellipse; the same seed strews them the same way."""

    kind = RELIEF_PART
    name = "scatter"
    title = "Scatter"
    options = ScatterOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """The solids of every copy."""
        options: ScatterOptions = job.part.options
        told = _places_itself(options)
        if told:
            return refuse_part(*told)
        made = shape_part(replace(job, x=length(0.0), y=length(0.0)), options.of)
        if made.shape is None:
            return made
        copies = int(options.count.value)
        problems = too_many(job, copies, len(made.shape.pieces), "count")
        if problems:
            return refuse_part(*made.problems, *problems)
        middle_x, middle_y, radius = reach(made.shape.pieces)
        gap = options.gap.value if options.gap is not None else 0.0
        room = Region(
            options.width.value, options.height.value, options.region == "ellipse", radius
        )
        seed = int(options.seed.value) if options.seed is not None else 0
        places = throw(room, copies, 2 * radius + gap, seed)
        if len(places) < copies:
            full = _full(job, copies, len(places), 2 * radius, gap)
            return refuse_part(*made.problems, full)
        pieces = tuple(
            _copy(job, options, piece, spot, (middle_x, middle_y))
            for spot in places
            for piece in made.shape.pieces
        )
        return ReliefPartResult(ReliefShape(pieces, made.shape.made), made.problems, made.note)


def _places_itself(options: ScatterOptions) -> list[Problem]:
    """An error for each place the nested part was told although it is strewn."""
    nested = options.of
    return [
        error(
            (*nested.path, key),
            f"a part that is strewn takes no {key}: the scatter places it",
            "relief-scatter-place",
            remedy=f"Leave out {key} here; the region has its own",
        )
        for key in ("x", "y")
        if getattr(nested.options, key, None) is not None
    ]


def _full(job: ReliefJob, copies: int, found: int, size: float, gap: float) -> Problem:
    wide = f"{size:.1f} mm across" + (f" with {gap:g} mm between them" if gap else "")
    return error(
        option_path(job, "count"),
        f"the region has room for {found} of the {copies} copies: each is {wide}",
        RULE,
        remedy="Make the region larger, the part smaller, or strew fewer",
    )


def _copy(
    job: ReliefJob,
    options: ScatterOptions,
    piece: Placed[Quantity],
    spot: tuple[float, float, float],
    middle: tuple[float, float],
) -> Placed[Quantity]:
    """One solid of one copy: turned about the copy's middle and moved to its spot."""
    spot_x, spot_y = _turned(
        spot[0], spot[1], options.turn.value if options.turn is not None else 0.0
    )
    swing = spot[2] if options.turned else 0.0
    cos, sin = math.cos(math.radians(swing)), math.sin(math.radians(swing))
    off_x, off_y = piece.x - length(middle[0]), piece.y - length(middle[1])
    at_x = options.x if options.x is not None else job.x
    at_y = options.y if options.y is not None else job.y
    deciders = [
        q
        for q in (
            options.count,
            options.width,
            options.height,
            options.gap,
            options.seed,
            options.turn,
        )
        if q is not None
    ]
    x = at_x + given(length(spot_x), *deciders) + cos * off_x - sin * off_y
    y = at_y + given(length(spot_y), *deciders) + sin * off_x + cos * off_y
    return replace(piece, x=x, y=y, turn=piece.turn + number(swing))


def _turned(x: float, y: float, degrees: float) -> tuple[float, float]:
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return cos * x - sin * y, sin * x + cos * y


PLUGIN = Scatter()
