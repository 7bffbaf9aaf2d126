"""Boards cut straight from bought board."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

from msgspec import Meta

from foredge.contract import (
    BoardsJob,
    BoardsResult,
    Book,
    Length,
    Operation,
    Part,
    PartOptions,
    Piece,
    Quantity,
    StageResult,
    board_figures,
    number,
    say,
    stock_name,
    table_row,
)

CHECK = "case.check-board"


class BoughtOptions(PartOptions, frozen=True, kw_only=True, tag="bought"):
    """Bought board, one layer."""

    stock: (
        Annotated[str, stock_name("board"), Meta(description="The board on the shelf.")] | None
    ) = None
    material: Annotated[str, table_row("board"), Meta(description="Row of the board table.")] = (
        "greyboard"
    )
    thickness: (
        Annotated[Length, Meta(description="As sold; the stock's own, or the row's, if left out.")]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Bought:
    """One layer of bought board: checked, measured, then cut once."""

    kind: str = "boards"
    name: str = "bought"
    title: str = "Bought board"
    options: type[BoughtOptions] = BoughtOptions

    def thickness(self, book: Book, part: Part[Any]) -> Quantity:
        """As sold, give or take what boards of one kind differ."""
        options: BoughtOptions = part.options
        if options.thickness is None:
            return board_figures(book, options.stock, options.material).thickness
        return options.thickness * (1 + book.practice("bought-board-spread"))

    def make(self, job: BoardsJob) -> BoardsResult:
        """Two boards, and the spine piece where it comes from the same board."""
        options: BoughtOptions = job.part.options
        book = job.book
        figures = board_figures(book, options.stock, options.material)
        grammage = figures.grammage
        if options.thickness is not None:
            grammage = options.thickness * book.table("board", figures.row, "density")
        words = book.words("board", figures.row, "title").lower()
        pieces = [self._piece(job, "case.board", "Board", 2, job.width, words)]
        if job.spine is not None:
            pieces.append(self._piece(job, "case.spine", "Spine piece", 1, job.spine, words))
        mass = (number(2) * job.width * job.height * grammage).named(
            "case.boards.mass",
            label="mass of both boards",
            rule="area by grammage",
            source="geometry",
        )
        return BoardsResult(
            StageResult(
                quantities=(mass,), pieces=tuple(pieces), operations=(self._check(book, words),)
            ),
            ready=CHECK,
        )

    def _piece(
        self, job: BoardsJob, name: str, title: str, count: int, width: Quantity, words: str
    ) -> Piece:
        stock = job.part.options.stock
        return Piece(
            name,
            title,
            number(count),
            width,
            job.height,
            "height",
            stock=stock,
            material="" if stock else words,
        )

    def _check(self, book: Book, words: str) -> Operation:
        return Operation(
            CHECK,
            "Check the board",
            (
                say(
                    "Bend the {board} both ways: it bends more easily along the grain.", board=words
                ),
                say("Draw an arrow along the grain over the whole sheet."),
                say("Lay the sheet on a flat table: if it rocks or bows, press it before you cut."),
            ),
            book.practice("hand-measure"),
            tools=("caliper", "pencil"),
            batch=True,
        )


PLUGIN = Bought()
