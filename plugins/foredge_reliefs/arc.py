"""An arc: part of a ring."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Angle,
    ReliefJob,
    ReliefPartResult,
    number,
    place_solids,
)
from foredge_reliefs.bands import BandOptions, band


class ArcOptions(BandOptions, frozen=True, kw_only=True, tag="arc"):
    """An arc."""

    start: (
        Annotated[
            Angle,
            Meta(
                description="Where it begins, from 'away from the spine' towards the tail. "
                "Left out: there."
            ),
        ]
        | None
    ) = None
    sweep: Annotated[Angle, Meta(description="How far round it goes: 90 deg is a quarter.")]


class Arc:
    """An arc on the panel; its x and y are the middle of its circle."""

    kind = RELIEF_PART
    name = "arc"
    title = "Arc"
    options = ArcOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """A band part of the way round."""
        options: ArcOptions = job.part.options
        start = options.start if options.start is not None else number(0)
        return place_solids(job, band(options, start, options.sweep))


PLUGIN = Arc()
