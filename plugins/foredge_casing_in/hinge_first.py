"""Casing-in hinge first: a strip along the joint sets under clamps, then the rest is glued."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    CasingInJob,
    Length,
    Operation,
    PartOptions,
    Quantity,
    StageResult,
    Text,
    cautions as cautions_of,
    cited,
    dry_in_room,
    glue,
    joined_wettings,
    number,
    paste_down_trim,
    press_book,
    say,
    table_row,
)


class HingeFirstOptions(PartOptions, frozen=True, kw_only=True, tag="hinge-first"):
    """The hinge first, the rest when it is dry."""

    strip: Annotated[Length, Meta(description="Width of the strip that is glued first.")] | None = (
        None
    )
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What hinge and paste-downs are glued with.")
    ] = "pva"


@dataclass(frozen=True, slots=True)
class HingeFirst:
    """The sure way: the block cannot shift, and only one narrow strip is wet at a time."""

    kind: str = "casing-in"
    name: str = "hinge-first"
    title: str = "Casing-in hinge first"
    options: type[HingeFirstOptions] = HingeFirstOptions

    def join(self, job: CasingInJob) -> StageResult:
        """Strip, clamp, then the rest of the paste-down, then press."""
        width, height, trim = paste_down_trim(job)
        strip = self._strip(job)
        hinge = self._hinge(job, strip, height, trim)
        rest = self._rest(job, strip, width, height)
        work = StageResult(
            quantities=(width, height, strip),
            operations=(hinge, rest),
            facts=(("case.cased_in", rest.id),),
        )
        return work + press_book(job, after=rest.id)

    def _strip(self, job: CasingInJob) -> Quantity:
        asked = job.part.options.strip
        usual = job.book.default("hinge-strip")
        return job.book.size(asked if asked is not None else usual).named(
            "case.hinge_strip",
            label="hinge strip",
            rule="wide enough to hold super and hinge, narrow enough to place dry",
            source="the maker's choice" if asked is not None else cited(usual),
        )

    def _hinge(
        self, job: CasingInJob, strip: Quantity, height: Quantity, trim: tuple[Text, ...]
    ) -> Operation:
        book, adhesive = job.book, job.part.options.adhesive
        area = number(2) * strip * height
        return Operation(
            "case.glue-hinge",
            "Glue the hinges",
            (
                *trim,
                say(
                    "Set the block in the case dry: {head} over at the head, {tail} at the tail, "
                    "{fore} at the fore-edge. Mark its place.",
                    head=job.square_head,
                    tail=job.square_tail,
                    fore=job.square_fore,
                ),
                say(
                    "Glue a strip {strip} wide along the hinge, flanges included; mask the rest.",
                    strip=strip,
                ),
                say(
                    "Close the cover and set the joint with the bone folder: no glue on the spine."
                ),
                say("Lay a release sheet between cover and block, and clamp along the joint."),
                say("Turn the book over and do the other hinge in the same way."),
            ),
            book.practice("hand-set-up") + book.practice("hand-case-in"),
            after=tuple(name for name in (job.covered, job.block_ready) if name),
            wait=dry_in_room(book, book.table("drying", "hinge-set", "next"), shut=True),
            waiting="clamped along both joints",
            resources=("hands", "clamps"),
            cautions=("press-pinch", *cautions_of(book, "adhesives", adhesive)),
            uses=(glue(book, adhesive, area, "hinges"),),
            wettings=joined_wettings(job, adhesive, area / 2),
            tools=("masking paper", "release sheet", "clamps", "bone folder"),
        )

    def _rest(
        self, job: CasingInJob, strip: Quantity, width: Quantity, height: Quantity
    ) -> Operation:
        book, adhesive = job.book, job.part.options.adhesive
        area = number(2) * (width - strip) * height
        return Operation(
            "case.case-in",
            "Glue the rest of the paste-downs",
            (
                say("Take the clamps off; open each cover and look that the hinge holds."),
                say(
                    "Lay waste paper under the paste-down. Glue it from the hinge out to the edges."
                ),
                say(
                    "Pull the waste sheet away, close the cover, and smooth it from the joint out."
                ),
                say("Lay waxed paper or film between paste-down and block."),
                say("Turn the book over and do the other side in the same way."),
            ),
            book.practice("hand-case-in"),
            after=("case.glue-hinge",),
            cautions=cautions_of(book, "adhesives", adhesive),
            uses=(glue(book, adhesive, area, "casing-in"),),
            wettings=joined_wettings(job, adhesive, area / 2),
            tools=("wide brush", "waste paper", "waxed paper or film", "bone folder"),
        )


PLUGIN = HingeFirst()
