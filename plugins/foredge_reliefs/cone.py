"""A cone, pointed or cut off: spikes, barnacles, studs, discs."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Frustum,
    Length,
    LengthOrZero,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    place_solids,
)


class ConeOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="cone"):
    """A cone."""

    diameter: Annotated[Length, Meta(description="Of the circle it stands on.")]
    height: Annotated[Length, Meta(description="How high it rises.")]
    top: (
        Annotated[
            LengthOrZero, Meta(description="Diameter of its flat top. Left out: it is pointed.")
        ]
        | None
    ) = None


class Cone:
    """A cone on the panel."""

    kind = RELIEF_PART
    name = "cone"
    title = "Cone"
    options = ConeOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """A cone or what is left of it below its top."""
        options: ConeOptions = job.part.options
        top = options.top / 2 if options.top is not None else 0 * options.diameter
        return place_solids(job, Frustum(options.diameter / 2, top, options.height))


PLUGIN = Cone()
