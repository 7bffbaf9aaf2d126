"""A tube: a line of points in space, each with its own thickness: roots, tentacles, branches."""

from __future__ import annotations

from typing import Annotated

import msgspec
from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Length,
    LengthOrZero,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    Tube,
    place_solids,
)
from foredge_reliefs.lines import repeated


class TubePoint(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """One point of a tube."""

    x: Annotated[LengthOrZero, Meta(description="On the panel, or from the tube's own place.")]
    y: Annotated[LengthOrZero, Meta(description="On the panel, or from the tube's own place.")]
    height: (
        Annotated[
            LengthOrZero,
            Meta(description="Of its middle above the board. Left out: it lies on the board."),
        ]
        | None
    ) = None
    diameter: Annotated[Length, Meta(description="How thick the tube is there.")]


class TubeOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="tube"):
    """A tube."""

    points: Annotated[
        tuple[TubePoint, ...],
        Meta(min_length=2, max_length=200, description="The points it goes through, in order."),
    ]


class TubePart:
    """A tube on the panel; without x and y its points are the panel's own."""

    kind = RELIEF_PART
    name = "tube"
    title = "Tube"
    options = TubeOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """Balls on the points and the cones between them."""
        options: TubeOptions = job.part.options
        radii = tuple(point.diameter / 2 for point in options.points)
        points = tuple(
            (point.x, point.y, point.height if point.height is not None else radius)
            for point, radius in zip(options.points, radii, strict=True)
        )
        problems = repeated(job, points)
        origin = 0 * radii[0]
        result = place_solids(job, Tube(points, radii), x=origin, y=origin)
        return ReliefPartResult(result.shape, (*result.problems, *problems), result.note)


PLUGIN = TubePart()
