"""A mound: half an ellipsoid, for stones, bellies, eyes, shells."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Length,
    Mound,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    place_solids,
)


class MoundOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="mound"):
    """A mound."""

    length: Annotated[Length, Meta(description="Of its base, along x before it is turned.")]
    width: Annotated[Length, Meta(description="Of its base, across its length.")]
    height: Annotated[Length, Meta(description="How high it rises.")]


class MoundPart:
    """A mound on the panel."""

    kind = RELIEF_PART
    name = "mound"
    title = "Mound"
    options = MoundOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """Half an ellipsoid."""
        options: MoundOptions = job.part.options
        return place_solids(job, Mound(options.length / 2, options.width / 2, options.height))


PLUGIN = MoundPart()
