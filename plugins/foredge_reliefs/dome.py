"""A dome: a spherical cap, up to and beyond half a ball."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Cap,
    Length,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    place_solids,
)


class DomeOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="dome"):
    """A dome."""

    diameter: Annotated[Length, Meta(description="Of the circle it stands on.")]
    height: (
        Annotated[Length, Meta(description="How high it rises. Left out: half a ball.")] | None
    ) = None


class Dome:
    """A dome on the panel."""

    kind = RELIEF_PART
    name = "dome"
    title = "Dome"
    options = DomeOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """One spherical cap."""
        options: DomeOptions = job.part.options
        radius = options.diameter / 2
        height = options.height if options.height is not None else radius
        return place_solids(job, Cap(radius, height))


PLUGIN = Dome()
