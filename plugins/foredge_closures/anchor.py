"""A strip anchored in a board: its slit and bed, its length before and after fitting."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from foredge.contract import (
    ClosureJob,
    Piece,
    Problem,
    Quantity,
    Text,
    cited,
    error,
    number,
    say,
    warning,
)
from foredge_closures.bench import NAME, Strip, decided, mm, named, said_by
from foredge_closures.sheet import Mark, off_board


@dataclass(frozen=True, slots=True)
class Anchored:
    """A strip that comes out of a slit ``edge`` from the fore-edge and lies in a bed inside.

    ``piece`` is cut long, ``marks`` are on the inside of a board, ``area`` is what is glued.
    """

    piece: Piece
    marks: tuple[Mark, ...]
    steps: tuple[Text, ...]
    area: Quantity
    quantities: tuple[Quantity, ...]
    problems: tuple[Problem, ...]


def anchored(
    job: ClosureJob,
    strip: Strip,
    fitted: Quantity,
    edge: Quantity,
    title: str,
    places: Sequence[Quantity],
    boards: int = 1,
) -> Anchored:
    """One strip at each of ``places`` (from the head) in one board, or in both."""
    anchor, slit = anchor_of(job), slit_of(job, strip)
    whole = fitted + job.board + job.covering + anchor
    piece = cut_long(job, strip, whole, title, len(places) * boards)
    marks = tuple(
        mark
        for head in places
        for mark in (
            Mark("slit", edge, head, 0 * edge, slit),
            Mark("bed", edge + anchor / 2, head, anchor, strip.width),
        )
    )
    return Anchored(
        piece,
        marks,
        bed_steps(strip, anchor, slit, edge),
        piece.count * anchor * strip.width,
        (strip.width, anchor, slit, edge, fitted, piece.height),
        (*bed_problems(job, strip.thickness), *off_board(job, marks)),
    )


def anchor_of(job: ClosureJob) -> Quantity:
    """What of it is glued down inside the board."""
    usual = job.book.default("closure-anchor")
    rule = "glued into a bed inside the board, under the paste-down"
    return named("anchor", 1 * usual, "glued down inside", rule, cited(usual))


def from_fore_edge(job: ClosureJob, asked: Quantity | None) -> Quantity:
    """Where the slit lies."""
    at = decided(job, asked, "closure-edge")
    rule = "far enough in that the board does not tear out"
    return named(
        "from_fore_edge", 1 * at, "slit from the fore-edge", rule,
        said_by(asked, job.book.default("closure-edge")),
    )  # fmt: skip


def slit_of(job: ClosureJob, strip: Strip) -> Quantity:
    """How long the slit is."""
    play = job.book.default("closure-play")
    rule = "the strip passes without folding"
    return named("slit", job.book.size(strip.width + play), "length of a slit", rule, cited(play))


def cut_long(job: ClosureJob, strip: Strip, fitted: Quantity, title: str, copies: int) -> Piece:
    """The strip as it is cut before its length can be known."""
    spare = job.book.default("blank-trim")
    length = named(
        "cut", job.book.blank(fitted, spare), f"{title.lower()}, cut", "the high end of what it "
        "may come to, and an allowance: it is fitted at the end", cited(spare),
    )  # fmt: skip
    return Piece(
        f"{NAME}.strip",
        title,
        number(copies),
        strip.width,
        length,
        "any",
        stock=strip.stock,
        material=strip.material,
        blank=True,
        trimmed_to="its length, fitted on the finished book",
    )


def bed_steps(strip: Strip, anchor: Quantity, slit: Quantity, edge: Quantity) -> tuple[Text, ...]:
    """A slit through the covered board and a bed beside it, where a strip is glued in."""
    return (
        say("Cut each slit through board and covering: {slit} along the height, {edge} in.",
            slit=slit, edge=edge),
        say("Pare a bed {anchor} long beside it, away from the edge, {deep} deep.",
            anchor=anchor, deep=strip.thickness),
        say("From outside push the end through; glue {anchor} of it into the bed.", anchor=anchor),
        say("Rub it flush, lay film over it, and let it set under weight."),
        say("Roll the rest up outside and tape it out of the way of paste and paint."),
    )  # fmt: skip


def bed_problems(job: ClosureJob, deep: Quantity) -> list[Problem]:
    """A bed that leaves too little board, or none."""
    left, least = job.board - deep, job.book.default("closure-web")
    if left.value >= least.value:
        return []
    leaves = mm(left) if left.value > 0 else "nothing"
    text = f"a bed {mm(deep)} deep leaves {leaves} of a board {mm(job.board)}"
    if left.value <= 0:
        return [
            error(job.part.path, text, "closure-bed-through",
                  consequence="The bed goes through the board",
                  remedy="Take a thinner strip, or a thicker board", source="geometry")
        ]  # fmt: skip
    return [
        warning(job.part.path, text, "closure-bed-thin",
                consequence="The board breaks there, and the bed shows through the covering",
                remedy=f"Leave {mm(least)}: take a thinner strip, pare its end, or a thicker board",
                source=cited(least))
    ]  # fmt: skip
