"""No spine piece: the covering alone spans the back."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import LENGTH, Origin, PartOptions, SpineJob, SpineResult, StageResult, leaf


class NoneOptions(PartOptions, frozen=True, kw_only=True, tag="none"):
    """No spine piece."""


@dataclass(frozen=True, slots=True)
class NoSpine:
    """A bare gap as wide as the block is thick."""

    kind: str = "spine"
    name: str = "none"
    title: str = "No spine piece"
    options: type[NoneOptions] = NoneOptions

    def plan(self, job: SpineJob) -> SpineResult:
        """The gap is the block's thickness at the spine; the joint stays as board and cloth ask."""
        width = job.book.size(job.block_spine).named(
            "case.spine.width",
            label="bare spine",
            rule="as wide as the block is thick",
            source="common practice",
        )
        nothing = leaf(0.0, LENGTH, "0 mm", Origin("constant"))
        return SpineResult(StageResult(), width, job.joint, nothing, has_piece=False)


PLUGIN = NoSpine()
