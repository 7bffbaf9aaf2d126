"""A horn: tapered, and bent through an angle: horns, claws, thorns, beaks."""

from __future__ import annotations

import math
from functools import partial
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    LENGTH,
    RELIEF_PART,
    Angle,
    Length,
    Problem,
    Quantity,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    Tube,
    error,
    number,
    opaque,
    option_path,
    place_solids,
    refuse_part,
    warning,
)

RULE = "relief-horn-in-itself"
STEP_DEG = 10.0
"""A bend is made of straight links that turn by at most this."""

TIP = 0.1
"""Diameter of the tip by that of the root where none is given. Common practice: a point any
finer breaks off."""


class HornOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="horn"):
    """A horn."""

    diameter: Annotated[Length, Meta(description="At its root.")]
    length: Annotated[Length, Meta(description="Along its middle line, from root to tip.")]
    tip: (
        Annotated[Length, Meta(description="Diameter of its tip. Left out: a tenth of the root.")]
        | None
    ) = None
    rise: (
        Annotated[
            Angle,
            Meta(
                description="How steeply it leaves the board; 90 deg is straight up. Left out: so."
            ),
        ]
        | None
    ) = None
    bend: (
        Annotated[
            Angle,
            Meta(
                description="How far it bends over on its way to the tip, in the direction it is "
                "turned. Left out: it is straight."
            ),
        ]
        | None
    ) = None


class Horn:
    """A horn on the panel; its x and y are the middle of its root."""

    kind = RELIEF_PART
    name = "horn"
    title = "Horn"
    options = HornOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """Balls along an arc, smaller towards the tip, and the cones between them."""
        options: HornOptions = job.part.options
        rise = options.rise if options.rise is not None else number(90)
        bend = options.bend if options.bend is not None else number(0)
        problems = _in_itself(job, options, bend.value) + _angles(job, rise.value)
        if problems:
            return refuse_part(*problems)
        tip = _tip(options)
        links = max(1, math.ceil(bend.value / STEP_DEG))
        shares = [place / links for place in range(links + 1)]
        points = tuple(_point(share, options.length, rise, bend) for share in shares)
        radii = tuple((options.diameter * (1 - share) + tip * share) / 2 for share in shares)
        result = place_solids(job, Tube(points, radii))
        return ReliefPartResult(result.shape, (*result.problems, *_sunk(job, points, radii)))


def _point(
    share: float, length: Quantity, rise: Quantity, bend: Quantity
) -> tuple[Quantity, Quantity, Quantity]:
    """The middle line's point at ``share`` of its length: along, across (0), up."""
    along = opaque(partial(along_horn, share), (length, rise, bend), LENGTH)
    up = opaque(partial(up_horn, share), (length, rise, bend), LENGTH)
    return along, 0 * length, up


def along_horn(share: float, length: float, rise: float, bend: float) -> float:
    """How far over the board an arc has come at ``share`` of its ``length`` (mm, degrees)."""
    start, turned = math.radians(rise), math.radians(bend) * share
    if turned < 1e-9:
        return length * share * math.cos(start)
    return length * share / turned * (math.sin(start) - math.sin(start - turned))


def up_horn(share: float, length: float, rise: float, bend: float) -> float:
    """How far above the board an arc has come at ``share`` of its ``length`` (mm, degrees)."""
    start, turned = math.radians(rise), math.radians(bend) * share
    if turned < 1e-9:
        return length * share * math.sin(start)
    return length * share / turned * (math.cos(start - turned) - math.cos(start))


def _in_itself(job: ReliefJob, options: HornOptions, bend: float) -> list[Problem]:
    """A horn whose bend is tighter than it is thick, or that comes round to its own root."""
    if bend <= 0:
        return []
    tightest = options.length.value / math.radians(bend)
    radius = options.diameter.value / 2
    if tightest <= radius:
        text = (
            f"the horn bends into itself: {bend:g} degrees over {options.length.value:g} mm is a "
            f"curve of {tightest:.1f} mm radius, and the root is {radius:g} mm from middle to rim"
        )
    elif _meets(tightest, radius, _tip(options).value / 2, bend):
        text = f"the horn bends into itself: after {bend:g} degrees it comes round to its own root"
    else:
        return []
    remedy = "Bend it less, make it longer, or make its root thinner"
    return [error(option_path(job, "bend"), text, RULE, remedy=remedy)]


def _tip(options: HornOptions) -> Quantity:
    return options.tip if options.tip is not None else TIP * options.diameter


def _meets(curve: float, root: float, tip: float, bend: float) -> bool:
    """Whether what lies more than half a turn on touches the root, its thickest part."""
    turns = [*range(181, math.ceil(bend)), bend] if bend > 180 else []
    return any(
        2 * curve * abs(math.sin(math.radians(turn) / 2)) < 2 * root + (tip - root) * turn / bend
        for turn in turns[:360]
    )


def _angles(job: ReliefJob, rise: float) -> list[Problem]:
    if rise <= 180:
        return []
    text = f"the horn rises at {rise:g} degrees; more than 180 would start under the board"
    return [error(option_path(job, "rise"), text, "relief-form")]


def _sunk(
    job: ReliefJob,
    points: tuple[tuple[Quantity, Quantity, Quantity], ...],
    radii: tuple[Quantity, ...],
) -> tuple[Problem, ...]:
    """A warning where part of the horn runs wholly under the board and is cut off there."""
    deepest = min(
        (point[2].value + radius.value for point, radius in zip(points, radii, strict=True)),
    )
    if deepest >= 0:
        return ()
    text = f"the horn's tip would run {-deepest:.1f} mm under the board; it is cut off there"
    remedy = "Bend it less, or let it rise more steeply"
    return (warning(option_path(job, "bend"), text, "relief-under-board", remedy=remedy),)


PLUGIN = Horn()
