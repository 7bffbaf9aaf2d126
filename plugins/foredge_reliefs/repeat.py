"""Repeat: one part again and again round a middle, or mirrored across it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    LENGTH,
    RELIEF_PART,
    Angle,
    Count,
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
    opaque,
    option_path,
    refuse_part,
    shape_part,
    slot,
)
from foredge_reliefs.copies import too_many

Mirror = Literal["left-right", "head-tail", "both"]


class RepeatOptions(PartOptions, frozen=True, kw_only=True, tag="repeat"):
    """A repeat: give either count or mirror."""

    name: Annotated[str, Meta(description="What the drawing calls it.")] | None = None
    of: Annotated[
        Part[Any],
        slot(RELIEF_PART),
        Meta(description="The part to repeat; its x and y are where its first copy stands."),
    ]
    x: (
        Annotated[
            LengthOrZero,
            Meta(description="The middle from the spine edge. Left out: the panel's."),
        ]
        | None
    ) = None
    y: (
        Annotated[
            LengthOrZero, Meta(description="The middle from the head. Left out: the panel's.")
        ]
        | None
    ) = None
    count: (
        Annotated[Count, Meta(description="How many there are in all, round the middle.")] | None
    ) = None
    sweep: (
        Annotated[
            Angle,
            Meta(description="From the first to the last. Left out: spread over the whole turn."),
        ]
        | None
    ) = None
    mirror: (
        Annotated[
            Mirror,
            Meta(description="Add its mirror image: across the middle, from head to tail, both."),
        ]
        | None
    ) = None


class Repeat:
    """Copies of a nested part, each turned with its place, or mirror images of it."""

    kind = RELIEF_PART
    name = "repeat"
    title = "Repeat"
    options = RepeatOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """The solids of every copy."""
        options: RepeatOptions = job.part.options
        problems = _choice(job, options)
        if problems:
            return refuse_part(*problems)
        made = shape_part(job, options.of)
        if made.shape is None:
            return made
        copies = int(options.count.value) if options.count is not None else 0
        key = "count" if copies else "mirror"
        copies = copies or (4 if options.mirror == "both" else 2)
        problems = too_many(job, copies, len(made.shape.pieces), key)
        if problems:
            return refuse_part(*made.problems, *problems)
        middle = (
            options.x if options.x is not None else job.x,
            options.y if options.y is not None else job.y,
        )
        turn = _mirrored if options.count is None else _round
        pieces = tuple(copy for piece in made.shape.pieces for copy in turn(piece, middle, options))
        return ReliefPartResult(ReliefShape(pieces, made.shape.made), made.problems, made.note)


def _choice(job: ReliefJob, options: RepeatOptions) -> list[Problem]:
    """Errors where it is not clear what to repeat how."""
    rule = "relief-repeat-choice"
    if (options.count is None) == (options.mirror is None):
        both = "both count and mirror" if options.count is not None else "neither count nor mirror"
        text = f"the repeat has {both}; it takes exactly one of them"
        return [error(job.part.path, text, rule, remedy="Nest one repeat in another for both")]
    if options.sweep is None:
        return []
    if options.count is None:
        text = "a mirror image takes no sweep"
        return [error(option_path(job, "sweep"), text, rule)]
    if not 0 < options.sweep.value <= 360:
        text = f"the sweep is {options.sweep.value:g} degrees; it must be above 0 and at most 360"
        return [error(option_path(job, "sweep"), text, "relief-form")]
    return []


def _round(
    piece: Placed[Quantity], middle: tuple[Quantity, Quantity], options: RepeatOptions
) -> Iterator[Placed[Quantity]]:
    """Copies at equal steps round the middle; a sweep of a whole turn has no last on its first."""
    assert options.count is not None
    count = int(options.count.value)
    sweep = options.sweep if options.sweep is not None else number(360)
    gaps = count if sweep.value == 360 else max(1, count - 1)
    step = given(sweep / gaps, options.count)
    off_x, off_y = piece.x - middle[0], piece.y - middle[1]
    for place in range(count):
        turn = place * step
        x = middle[0] + opaque(turned_x, (off_x, off_y, turn), LENGTH)
        y = middle[1] + opaque(turned_y, (off_x, off_y, turn), LENGTH)
        yield replace(piece, x=x, y=y, turn=piece.turn + turn)


def turned_x(x: float, y: float, degrees: float) -> float:
    """x (mm) of a place turned about 0."""
    return math.cos(math.radians(degrees)) * x - math.sin(math.radians(degrees)) * y


def turned_y(x: float, y: float, degrees: float) -> float:
    """y (mm) of a place turned about 0."""
    return math.sin(math.radians(degrees)) * x + math.cos(math.radians(degrees)) * y


def _mirrored(
    piece: Placed[Quantity], middle: tuple[Quantity, Quantity], options: RepeatOptions
) -> Iterator[Placed[Quantity]]:
    """The piece and its images. A mirrored piece is one that is flipped first, then turned."""
    yield piece
    across, down = 2 * middle[0] - piece.x, 2 * middle[1] - piece.y
    flipped = not piece.mirrored
    if options.mirror != "head-tail":
        yield replace(piece, x=across, turn=-piece.turn, mirrored=flipped)
    if options.mirror != "left-right":
        yield replace(piece, y=down, turn=180 - piece.turn, mirrored=flipped)
    if options.mirror == "both":
        yield replace(piece, x=across, y=down, turn=180 + piece.turn)


PLUGIN = Repeat()
