"""``ribbon-tie``: ribbons in both boards, tied in a bow at the fore-edge."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    ClosureJob,
    ClosureResult,
    Length,
    Look,
    PartOptions,
    Quantity,
    StageResult,
    Text,
    say,
    stock_name,
    stuff_of,
)
from foredge_closures import bench
from foredge_closures.anchor import Anchored, anchored, from_fore_edge
from foredge_closures.seen import bows, over_fore_edge
from foredge_closures.sheet import board_sheet


class RibbonTieOptions(PartOptions, frozen=True, kw_only=True, tag="ribbon-tie"):
    """Options of ``use: ribbon-tie``."""

    ribbon: (
        Annotated[str, stock_name("tape", "cloth"), Meta(description="The ribbon on the shelf.")]
        | None
    ) = None
    width: Annotated[Length, Meta(description="Its width.")] | None = None
    pairs: Annotated[
        Literal[1, 2], Meta(description="One pair half way down, or two at the thirds.")
    ] = 1
    bow: Annotated[Length, Meta(description="Ribbon on each side for the bow.")] | None = None
    from_fore_edge: Annotated[Length, Meta(description="Slits from the fore-edge.")] | None = None


class RibbonTie:
    """Two ribbons, or four."""

    kind = "closure"
    name = "ribbon-tie"
    title = "Ribbon tie"
    options = RibbonTieOptions

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """Each ribbon reaches half way round the fore-edge, and has enough for a bow."""
        said = job.part.options
        strip = bench.strip_of(job, said.ribbon, said.width, "sewing-tape")
        edge = from_fore_edge(job, said.from_fore_edge)
        thick = bench.in_use(job)
        fitted = bench.named(
            "length",
            edge + thick / 2 + bench.decided(job, said.bow, "tie-bow"),
            "ribbon from its slit to its end",
            "to the edge, half way round the fore-edge, and its share of the bow",
            bench.said_by(said.bow, job.book.default("tie-bow")),
        )
        places = [job.board_height * n / (said.pairs + 1) for n in range(1, said.pairs + 1)]
        ties = anchored(job, strip, fitted, edge, "Ribbon", places, boards=2)
        work = StageResult(
            quantities=(thick, *ties.quantities),
            pieces=(ties.piece,),
            operations=(
                bench.set_closure(
                    job, "Set the ribbons", _set(ties, said.pairs), (ties.piece,), area=ties.area
                ),
                bench.fit_closure(job, "Trim the ribbons", _fit(job.book.size(fitted))),
            ),
            drawings=(
                board_sheet(job, "front", "inside", ties.marks),
                board_sheet(job, "back", "inside", ties.marks),
            ),
            problems=ties.problems,
            looks=_seen(job, strip, edge, places),
        )
        return ClosureResult(work, 2 * strip.thickness, bench.FIT)


def _seen(
    job: ClosureJob, strip: bench.Strip, edge: Quantity, places: list[Quantity]
) -> tuple[Look, ...]:
    stuff = stuff_of(job.book, strip.stock, "sewing-tape")
    wide, heads = strip.width.value, [place.value for place in places]
    return (*over_fore_edge(job, stuff, edge, wide, heads), bows(job, stuff, wide, heads))


def _set(ties: Anchored, pairs: int) -> tuple[Text, ...]:
    where = "half way down" if pairs == 1 else "at a third and at two thirds of the height"
    return (
        say("Cut {count} ribbons {width} by {length}: longer than they will be.",
            count=ties.piece.count, width=ties.piece.width, length=ties.piece.height),
        say("Mark the templates on the insides of both boards, {where}.", where=where),
        *ties.steps,
    )  # fmt: skip


def _fit(fitted: Quantity) -> tuple[Text, ...]:
    return (
        say("Tie the bow over the fore-edge, loose enough for a finger under it."),
        say("Even the ends out, {length} from each slit, and cut them on the slant.",
            length=fitted),
        say("Draw a trace of glue along each cut so that it does not fray."),
    )  # fmt: skip


PLUGIN = RibbonTie()
