"""A ring: a porthole's frame, a hoop, a bezel."""

from __future__ import annotations

from foredge.contract import RELIEF_PART, ReliefJob, ReliefPartResult, number, place_solids
from foredge_reliefs.bands import BandOptions, band


class RingOptions(BandOptions, frozen=True, kw_only=True, tag="ring"):
    """A ring."""


class RingPart:
    """A ring on the panel."""

    kind = RELIEF_PART
    name = "ring"
    title = "Ring"
    options = RingOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """A band all the way round."""
        return place_solids(job, band(job.part.options, number(0), number(360)))


PLUGIN = RingPart()
