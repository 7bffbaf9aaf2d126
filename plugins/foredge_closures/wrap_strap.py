"""``wrap-strap``: anchored in the back board, led round the closed book and tucked under."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    ClosureJob,
    ClosureResult,
    Count,
    Length,
    PartOptions,
    Quantity,
    StageResult,
    Text,
    number,
    say,
    stock_name,
)
from foredge_closures import bench
from foredge_closures.anchor import anchored, from_fore_edge
from foredge_closures.seen import round_book
from foredge_closures.sheet import board_sheet


class WrapStrapOptions(PartOptions, frozen=True, kw_only=True, tag="wrap-strap"):
    """Options of ``use: wrap-strap``."""

    strap: (
        Annotated[str, stock_name("tape", "cloth"), Meta(description="The strap on the shelf.")]
        | None
    ) = None
    width: Annotated[Length, Meta(description="Its width.")] | None = None
    turns: Annotated[Count, Meta(description="Times round the book; 1 if left out.")] | None = None
    overlap: Annotated[Length, Meta(description="What is tucked under itself.")] | None = None
    from_fore_edge: Annotated[Length, Meta(description="Slit from the fore-edge.")] | None = None


class WrapStrap:
    """A strap with a free end."""

    kind = "closure"
    name = "wrap-strap"
    title = "Wrap strap"
    options = WrapStrapOptions
    crosses = ("front", "back")

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """Its length round the book as it is used; cut long, trimmed when the book is done."""
        said = job.part.options
        strip = bench.strip_of(job, said.strap, said.width, "sewing-tape")
        turns = number(1) if said.turns is None else said.turns
        overlap = bench.decided(job, said.overlap, "strap-overlap")
        thick = bench.in_use(job)
        girth = _girth(job, thick)
        fitted = bench.named(
            "length",
            turns * girth + overlap,
            "strap from its slit to its end",
            "round the fore-edge, front, spine and back to the slit again, and what is tucked in",
            bench.said_by(said.overlap, job.book.default("strap-overlap")),
        )
        edge = from_fore_edge(job, said.from_fore_edge)
        strap = anchored(job, strip, fitted, edge, "Strap", [job.board_height / 2])
        steps = (
            say("Cut the strap {width} by {length}: longer than it will be.",
                width=strap.piece.width, length=strap.piece.height),
            say("Mark the template on the inside of the back board, half way down."),
            *strap.steps,
        )  # fmt: skip
        work = StageResult(
            quantities=(thick, girth, *strap.quantities),
            pieces=(strap.piece,),
            operations=(
                bench.set_closure(job, "Set the strap", steps, (strap.piece,), area=strap.area),
                bench.fit_closure(
                    job, "Fit the strap", _fit(turns, overlap, job.book.size(fitted))
                ),
            ),
            drawings=(board_sheet(job, "back", "inside", strap.marks),),
            problems=strap.problems,
            looks=round_book(job, said.strap, strip.width, int(turns.value)),
        )
        return ClosureResult(work, 2 * turns * strip.thickness, bench.FIT)


def _girth(job: ClosureJob, thick: Quantity) -> Quantity:
    return bench.named(
        "girth",
        2 * (job.width + job.spine_relief.height) + 2 * thick,
        "once round the book",
        "the box that the closed book fits in: no strap over its relief is longer",
        "geometry",
    )


def _fit(turns: Quantity, overlap: Quantity, fitted: Quantity) -> tuple[Text, ...]:
    return (
        say("Lead the strap round fore-edge, front, spine and back; full turns: {turns}.",
            turns=turns),
        say("Pull it only so far that a finger goes under: the book will grow."),
        say("Tuck {overlap} under the first turn and mark it.", overlap=overlap),
        say("Cut it there, {length} from the slit; touch the end with glue.",
            length=fitted),
    )  # fmt: skip


PLUGIN = WrapStrap()
