"""Casing-in at once: each paste-down is glued and closed whole, then the book is pressed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    CasingInJob,
    Operation,
    PartOptions,
    StageResult,
    cautions as cautions_of,
    glue,
    joined_wettings,
    number,
    paste_down_trim,
    press_book,
    say,
    table_row,
)


class AtOnceOptions(PartOptions, frozen=True, kw_only=True, tag="at-once"):
    """Paste-down glued whole."""

    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What the paste-downs are glued with.")
    ] = "pva-mc-mix"


@dataclass(frozen=True, slots=True)
class AtOnce:
    """The quick way, for paper that lies down well and a maker who works fast."""

    kind: str = "casing-in"
    name: str = "at-once"
    title: str = "Casing-in at once"
    options: type[AtOnceOptions] = AtOnceOptions

    def join(self, job: CasingInJob) -> StageResult:
        """Glue, close, press."""
        book, adhesive = job.book, job.part.options.adhesive
        width, height, trim = paste_down_trim(job)
        area = number(2) * width * height
        casing = Operation(
            "case.case-in",
            "Case the block in",
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
                    "Lay waste paper under the first paste-down; glue it and the flanges under it."
                ),
                say("Pull the waste sheet away. Lay waxed paper or film against the block."),
                say("Close the cover down on it in one go. No glue on the spine of the block."),
                say("Turn the book over and do the other side in the same way."),
                say("Open each cover once, a hand's breadth: smooth any wrinkle, then close it."),
            ),
            book.practice("hand-set-up") + book.practice("hand-case-in"),
            after=tuple(name for name in (job.covered, job.block_ready) if name),
            cautions=cautions_of(book, "adhesives", adhesive),
            uses=(glue(book, adhesive, area, "casing-in"),),
            wettings=joined_wettings(job, adhesive, area / 2),
            tools=("wide brush", "waste paper", "waxed paper or film", "bone folder"),
        )
        press = press_book(job, after=casing.id)
        work = StageResult(
            quantities=(width, height),
            operations=(casing,),
            facts=(("case.cased_in", casing.id),),
        )
        return work + press


PLUGIN = AtOnce()
