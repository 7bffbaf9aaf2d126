"""A fin: a ridge of triangular section, for spines, crests, folds, roofs."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Length,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    Ridge,
    place_solids,
)


class FinOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="fin"):
    """A fin."""

    length: Annotated[Length, Meta(description="Along its ridge: along x before it is turned.")]
    width: Annotated[Length, Meta(description="Of its foot.")]
    height: Annotated[Length, Meta(description="How high its ridge rises.")]


class Fin:
    """A fin on the panel."""

    kind = RELIEF_PART
    name = "fin"
    title = "Fin"
    options = FinOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """A triangle drawn out."""
        options: FinOptions = job.part.options
        return place_solids(job, Ridge(options.length, options.width, options.height))


PLUGIN = Fin()
