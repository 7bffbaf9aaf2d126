"""The strip that long stitch is sewn through: cloth, stiffened with paper over the spine."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Figures,
    Operation,
    Piece,
    Quantity,
    SewingJob,
    Wetting,
    cautions,
    cited,
    dry_in_room,
    glue,
    maximum,
    minimum,
    number,
    say,
    wet,
)
from foredge_sewings.bench import CHOICE, PUNCH

STRIP = "text-block.make-sewing-strip"
"""Id of the operation that glues it up and pierces it."""


@dataclass(frozen=True, slots=True)
class Strip:
    """``short`` is how far it ends from the finished head and tail, ``spine`` what of its
    width lies over the gatherings as sewn, ``flange`` what lies on each board."""

    width: Quantity
    height: Quantity
    spine: Quantity
    flange: Quantity
    short: Quantity
    pieces: tuple[Piece, Piece]
    quantities: tuple[Quantity, ...]


def sewing_strip(job: SewingJob, end: Quantity, cloth: Figures, backing: Figures) -> Strip:
    """Its sizes, none of which waits for the pressed block: it is sewn into it."""
    book, options = job.book, job.part.options
    usual = book.default("super-flange-relief" if book.relief_on_board() else "super-flange")
    flange = book.size(usual if options.flange is None else options.flange).named(
        "text_block.sewing_strip.flange",
        label="strip on each board",
        rule="what carries the block in its case, as a super does",
        source=cited(usual) if options.flange is None else CHOICE,
    )
    short = book.size(minimum(book.default("super-short"), end / 2)).named(
        "text_block.sewing_strip.short",
        label="strip short of head and tail",
        rule="it must not show, and must hold the thread of the end stations",
        source=cited(book.default("super-short")),
    )
    spine = (job.gatherings * job.pitch).named(
        "text_block.sewing_strip.spine",
        label="strip over the gatherings",
        rule="every gathering with its thread, as sewn",
        source="geometry",
    )
    width = book.size_up(spine + 2 * flange).named(
        "text_block.sewing_strip.width",
        label="sewing strip, width",
        rule="over the gatherings, and a flange on each side",
        source="geometry",
    )
    # Where the stations leave nothing the spec is refused; a size still has to be a size.
    leaf = job.fold_height - job.trim_head - job.trim_tail
    height = book.size(maximum(leaf - 2 * short, leaf / 2)).named(
        "text_block.sewing_strip.height",
        label="sewing strip, height",
        rule="the finished leaf, less what it ends short of head and tail",
        source="geometry",
    )
    pieces = (
        Piece("text_block.sewing_strip", "Sewing strip", number(1), width, height, "height",
              stock=options.cloth, material=book.words("cloth", cloth.row, "title")),
        Piece("text_block.sewing_strip.backing", "Paper to stiffen the strip", number(1),
              book.size_up(spine), height, "height", stock=options.backing,
              material=book.words("paper", backing.row, "title")),
    )  # fmt: skip
    return Strip(width, height, spine, flange, short, pieces, (flange, short, spine, width, height))


def make_strip(job: SewingJob, strip: Strip) -> Operation:
    """Cut, stiffen, mark and pierce the strip."""
    book, (cloth, paper) = job.book, strip.pieces
    area = paper.width * paper.height
    steps = (
        say("Cut the strip {width} by {height}, the warp along the height.",
            width=cloth.width, height=cloth.height),
        say("Cut the paper {width} by {height}, the grain along the height.",
            width=paper.width, height=paper.height),
        say("Glue the paper to the middle of the strip; {flange} stays free on each side.",
            flange=strip.flange),
        say("Let it dry flat, then lay the piercing template on it and mark the head."),
        say("Pierce every mark from the paper side: one row for each of {rows} gatherings.",
            rows=job.gatherings),
        say("Rows lie {pitch} apart. Offer up the first gathering: holes must meet.",
            pitch=job.pitch),
    )  # fmt: skip
    return Operation(
        STRIP,
        "Make the sewing strip",
        steps,
        book.practice("hand-set-up")
        + 2 * book.practice("hand-cut")
        + job.gatherings * book.practice("hand-punch"),
        after=(PUNCH,),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "next"), shut=True),
        waiting="the strip dries under a weight before it is pierced",
        cautions=("awl-needle", "blade", *cautions(book, "adhesives", "pva")),
        pieces=(cloth.name, paper.name),
        uses=(glue(book, "pva", area, "stiffening the sewing strip"),),
        wettings=(_wetting(job, area),),
        tools=("knife", "steel rule", "brush", "awl", "piercing template"),
    )


def _wetting(job: SewingJob, area: Quantity) -> Wetting:
    dry = job.book.table("drying", "pva-joint", "cure")
    return wet(job.book, "pva", area, "sewing-strip", "inside", dry)
