"""``bought-clay``: air-dry clay out of a packet, paper based or earthen."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    Book,
    Operation,
    Part,
    SkinFigures,
    SkinJob,
    SkinOptions,
    SkinResult,
    StageResult,
    Use,
    cited,
    say,
    skin_figures,
)


class BoughtClayOptions(SkinOptions, frozen=True, kw_only=True, tag="bought-clay"):
    """Air-dry clay; what its packet says goes before the table."""

    clay: Annotated[
        Literal["bought", "bought-earthen"],
        Meta(description="bought: paper based and light. bought-earthen: like potter's clay."),
    ] = "bought"


@dataclass(frozen=True, slots=True)
class BoughtClay:
    """Kneaded and rolled out; it shrinks more than most home-made clay."""

    kind: str = "skin"
    name: str = "bought-clay"
    title: str = "Bought air-dry clay"
    options: type[BoughtClayOptions] = BoughtClayOptions

    def figures(self, book: Book, part: Part[Any]) -> SkinFigures:
        """By the kind of clay."""
        return skin_figures(book, part, part.options.clay, "clay")

    def mix(self, job: SkinJob) -> SkinResult:
        """Weigh it off and knead it."""
        figures = job.figures
        needed = (job.wet * (1 + figures.waste)).named(
            f"{job.prefix}.needed",
            label="clay needed",
            rule="the wet clay that dries to the skin asked for, and what stays on the hands",
            source=cited(figures.waste, "the maker's choice"),
        )
        mass = (needed * figures.wet_density).named(
            f"{job.prefix}.needed.mass",
            label="clay needed, by mass",
            rule="volume by the density of the fresh clay",
            source=cited(figures.wet_density, "the maker's choice"),
        )
        knead = Operation(
            f"sculpt.knead-clay{job.suffix}",
            "Knead the clay",
            (
                say("Take {mass} out of the packet and close it again at once.", mass=mass),
                say("Knead it until it no longer cracks when it is bent; wet hands, no more."),
                say("Keep it under a damp cloth while you work."),
            ),
            job.book.practice("hand-set-up"),
            after=job.due,
            cautions=figures.cautions,
            uses=(Use(job.book.words("clays", figures.row, "title"), mass),),
            tools=("damp cloth",),
        )
        lay = (
            say("Brush a little white glue on the ground: this clay does not stick by itself."),
            say("Roll it out between two strips as thick as the layer, lay it on, rub the seams."),
        )
        return SkinResult(
            StageResult(quantities=(needed, mass), operations=(knead,)), knead.id, lay
        )


PLUGIN = BoughtClay()
