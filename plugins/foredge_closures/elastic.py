"""``elastic``: a band along the fore-edge, its ends inside the back board.

Both ends lie under the paste-down, so the length must be known before it goes down. Only
where the relief is made on the finished book does one end stay open until then.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    ClosureJob,
    ClosureResult,
    Length,
    PartOptions,
    Piece,
    Quantity,
    Ratio,
    StageResult,
    Text,
    reliefs_of,
    say,
    stock_name,
)
from foredge_closures import bench
from foredge_closures.anchor import anchor_of, bed_problems, cut_long, from_fore_edge, slit_of
from foredge_closures.seen import along_fore_edge
from foredge_closures.sheet import Mark, board_sheet, off_board


class ElasticOptions(PartOptions, frozen=True, kw_only=True, tag="elastic"):
    """Options of ``use: elastic``."""

    elastic: Annotated[str, stock_name("tape"), Meta(description="The elastic.")] | None = None
    width: Annotated[Length, Meta(description="Its width.")] | None = None
    stretch: (
        Annotated[Ratio, Meta(description="Length at rest over length round the book.")] | None
    ) = None
    from_fore_edge: Annotated[Length, Meta(description="Slits from the fore-edge.")] | None = None
    from_ends: Annotated[Length, Meta(description="Slits from head and tail.")] | None = None


@dataclass(frozen=True, slots=True)
class _Band:
    """``rest`` is what stays outside, unstretched; ``late`` that it is fitted at the end."""

    strip: bench.Strip
    anchor: Quantity
    slit: Quantity
    edge: Quantity
    ends: Quantity
    loop: Quantity
    rest: Quantity
    piece: Piece
    late: bool


class Elastic:
    """An elastic band."""

    kind = "closure"
    name = "elastic"
    title = "Elastic band"
    options = ElasticOptions
    crosses = ("front",)

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """Its loop round front and edges, shorter at rest; slits in the back board."""
        band = _band(job)
        sculpted = () if band.late or not job.sculpted else (job.sculpted,)
        work = [
            bench.set_closure(
                job,
                "Set the elastic",
                _set(band, job.book.size(band.rest)),
                (band.piece,),
                area=2 * band.anchor * band.strip.width,
                after=sculpted,
                stops_for=("G3",) if sculpted else (),
            )
        ]
        if band.late:
            work.append(
                bench.fit_closure(job, "Fit the elastic", _late(band, job.book.size(band.rest)))
            )
        marks = _marks(job, band)
        result = StageResult(
            quantities=(
                band.strip.width, band.loop, band.rest, band.anchor, band.edge, band.slit,
                band.piece.height,
            ),
            pieces=(band.piece,),
            operations=tuple(work),
            drawings=(board_sheet(job, "back", "inside", marks),),
            problems=(*bed_problems(job, band.strip.thickness), *off_board(job, marks)),
            looks=along_fore_edge(job, band.strip.stock, band.strip.width, band.edge),
        )  # fmt: skip
        return ClosureResult(result, 1 * band.strip.thickness, work[-1].id)


def _band(job: ClosureJob) -> _Band:
    said, book = job.part.options, job.book
    strip = bench.strip_of(job, said.elastic, said.width, "sewing-tape")
    anchor, ends = anchor_of(job), bench.decided(job, said.from_ends, "closure-edge")
    loop = bench.named(
        "loop",
        job.height + 2 * (job.thickness + job.swell) + 2 * ends,
        "elastic round the closed book, from slit to slit",
        "over the front, round head and tail, and back to the slits",
        "geometry",
    )
    share = book.practice("elastic-stretch") if said.stretch is None else said.stretch
    rest = bench.named(
        "length",
        loop * share,
        "the same at rest",
        "so much shorter that it pulls",
        bench.said_by(said.stretch, book.practice("elastic-stretch")),
    )
    whole = rest + 2 * (job.board + job.covering + anchor)
    late = any(relief.options.made_on == "finished-book" for relief in reliefs_of(book))
    piece = cut_long(job, strip, whole, "Elastic", 1) if late else _exact(job, strip, whole)
    edge, slit = from_fore_edge(job, said.from_fore_edge), slit_of(job, strip)
    return _Band(strip, anchor, slit, edge, ends, loop, rest, piece, late)


def _exact(job: ClosureJob, strip: bench.Strip, whole: Quantity) -> Piece:
    """Block and relief are measured when it is cut: no blank."""
    rule = "at rest, through the board at both ends, and both anchors"
    length = bench.named("cut", job.book.size(whole), "elastic, cut", rule, "geometry")
    blank = cut_long(job, strip, whole, "Elastic", 1)
    return replace(blank, height=length, blank=False, trimmed_to="")


def _marks(job: ClosureJob, band: _Band) -> list[Mark]:
    tail, half, wide = job.board_height - band.ends, band.anchor / 2, band.strip.width
    return [
        mark
        for slit, bed in ((band.ends, band.ends + half), (tail, tail - half))
        for mark in (
            Mark("slit", band.edge, slit, band.slit, 0 * wide),
            Mark("bed", band.edge, bed, wide, band.anchor),
        )
    ]


def _set(band: _Band, rest: Quantity) -> tuple[Text, ...]:
    return (
        say("Cut the elastic {width} by {length}.",
            width=band.piece.width, length=band.piece.height),
        say("Mark the template on the inside of the back board."),
        say("Cut two slits across, {slit} wide, {ends} from head and tail, {edge} in.",
            slit=band.slit, ends=band.ends, edge=band.edge),
        say("Pare a bed {anchor} long from each towards the middle, {deep} deep.",
            anchor=band.anchor, deep=band.strip.thickness),
        say("Push one end in at the head from outside; glue {anchor} of it into its bed.",
            anchor=band.anchor),
        *(_open(band) if band.late else _both(band, rest)),
    )  # fmt: skip


def _both(band: _Band, rest: Quantity) -> tuple[Text, ...]:
    return (
        say("The other end in at the tail; {rest} stays outside. Glue {anchor} into its bed.",
            rest=rest, anchor=band.anchor),
        say("Lay film over both and let them set under weight."),
    )  # fmt: skip


def _open(band: _Band) -> tuple[Text, ...]:
    return (
        say("Put the other end in at the tail, and do not glue it: the relief comes later."),
        say("Lay film over that bed, {long} by {wide}: the paste-down stays open there.",
            long=band.anchor + band.strip.width, wide=3 * band.strip.width),
    )  # fmt: skip


def _late(band: _Band, rest: Quantity) -> tuple[Text, ...]:
    return (
        say("Lift the paste-down at the tail and take the film out."),
        say("Pull the elastic in until {rest} of it, at rest, is left outside.", rest=rest),
        say("Try it round the book; it must hold, and not bow the boards."),
        say("Cut it to {anchor} inside, glue that into its bed, and close the paste-down.",
            anchor=band.anchor),
    )  # fmt: skip


PLUGIN = Elastic()
