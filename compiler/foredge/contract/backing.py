"""Backing a cloth with tissue before it is measured and cut."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract.card import cited
from foredge.contract.covering_stock import CoveringStock
from foredge.contract.drying import dry_in_room
from foredge.contract.glue import cautions, glue
from foredge.contract.jobs import CoverJob
from foredge.contract.text import Text, say
from foredge.contract.work import Operation, Piece, StageResult

BACK = "case.back-cloth"
_RULE = "cut before it is measured: the high end of the estimate and a trim allowance"


def back_cloth(
    job: CoverJob, cloth: CoveringStock, piece: Piece
) -> tuple[StageResult, tuple[str, ...]]:
    """The blank that ``piece`` is trimmed from, its tissue, and pasting them together.

    Returns the work and the operations after which the cloth can be measured; nothing where
    the cloth is not backed.
    """
    if not cloth.backed:
        return StageResult(), ()
    book = job.book
    blank = _blank(job, cloth, piece)
    tissue = replace(
        blank,
        name=f"{piece.name}.backing",
        title="Backing tissue",
        stock=None,
        material=book.words("cloth", "backing-tissue", "title").lower(),
    )
    operation = Operation(
        BACK,
        "Back the cloth",
        _steps(blank),
        book.practice("hand-prepare-cloth") + book.practice("hand-back-cloth"),
        wait=dry_in_room(book, book.table("drying", "backed-cloth", "next")),
        waiting="dry flat",
        cautions=("iron-heat", *cautions(book, "adhesives", "paste")),
        pieces=(blank.name, tissue.name),
        uses=(glue(book, "paste", blank.width * blank.height, "backing the cloth"),),
        tools=("iron", "paste brush", "smooth board"),
    )
    return StageResult(pieces=(blank, tissue), operations=(operation,)), (operation.id,)


def _steps(blank: Piece) -> tuple[Text, ...]:
    return (
        say("Wash, dry and iron the cloth."),
        say(
            "Cut cloth and tissue {width} by {height}, the warp along the spine.",
            width=blank.width,
            height=blank.height,
        ),
        say("Lay the cloth face down on a smooth board, damp it and smooth it out square."),
        say("Paste the tissue thinly, lay it on, and brush out from the middle."),
        say("Fix the edges to the board and leave it flat until it is dry."),
    )


def _blank(job: CoverJob, cloth: CoveringStock, piece: Piece) -> Piece:
    book, name = job.book, f"{piece.name}.blank"
    spare = book.default("blank-trim")
    source = cited(spare)
    return Piece(
        name,
        f"{piece.title}, to be backed",
        piece.count,
        book.blank(piece.width, spare).named(
            f"{name}.width", label="width of the cloth to back", rule=_RULE, source=source
        ),
        book.blank(piece.height, spare).named(
            f"{name}.height", label="height of the cloth to back", rule=_RULE, source=source
        ),
        "height",
        stock=cloth.stock,
        blank=True,
        trimmed_to=piece.name,
    )
