"""A rope: one thickness along a line of points, for rope edges, cables, roots, piping."""

from __future__ import annotations

from typing import Annotated

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
from foredge_reliefs.bands import Section
from foredge_reliefs.lines import repeated

RopePoint = tuple[LengthOrZero, LengthOrZero]


class RopeOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="rope"):
    """A rope."""

    points: Annotated[
        tuple[RopePoint, ...],
        Meta(
            min_length=2,
            max_length=200,
            description="x and y of the points it goes through, on the panel (or from the place "
            "that x and y say).",
        ),
    ]
    diameter: Annotated[Length, Meta(description="How thick it is.")]
    closed: Annotated[bool, Meta(description="Whether it runs back to its first point.")] = False
    section: Section = "round"


class Rope:
    """A rope on the panel; without x and y its points are the panel's own."""

    kind = RELIEF_PART
    name = "rope"
    title = "Rope"
    options = RopeOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """Balls on the points and what joins them, lying on the board."""
        options: RopeOptions = job.part.options
        radius = options.diameter / 2
        middle = radius if options.section == "round" else 0 * radius
        points = tuple((x, y, middle) for x, y in options.points)
        problem = repeated(job, points)
        if options.closed:
            points = (*points, points[0])
        origin = 0 * radius
        result = place_solids(job, Tube(points, (radius,) * len(points)), x=origin, y=origin)
        return ReliefPartResult(result.shape, (*result.problems, *problem), result.note)


PLUGIN = Rope()
