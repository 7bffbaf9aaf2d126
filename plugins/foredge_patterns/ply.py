"""What the pieces are cut from: how thick one layer is, and how it is bought."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Board,
    Cloth,
    OrnamentJob,
    Problem,
    Quantity,
    Tape,
    Thread,
    Use,
    board_figures,
    cloth_figures,
    error,
    paper_figures,
    thread_figures,
)


@dataclass(frozen=True, slots=True)
class Ply:
    """One layer. ``width`` is that of a tape or thread, which is used by length; else None."""

    thickness: Quantity
    source: str
    width: Quantity | None = None


def ply_of(job: OrnamentJob, stock: str) -> Ply:
    """The stock item ``stock`` as it lies in a pattern."""
    book, item = job.book, job.book.stock[stock]
    if isinstance(item, Thread):
        thread = thread_figures(book, stock)
        return Ply(thread.diameter, _why(thread.source), thread.diameter)
    if isinstance(item, Tape):
        tape = cloth_figures(book, stock, "sewing-tape")
        thick = item.thickness if item.thickness is not None else tape.thickness
        return Ply(thick, _why(tape.source), item.width)
    if isinstance(item, Cloth):
        figures = cloth_figures(book, stock, "cotton")
    elif isinstance(item, Board):
        figures = board_figures(book, stock, "carton")
    else:
        figures = paper_figures(book, stock, "card")
    return Ply(figures.thickness, _why(figures.source))


def _why(source: str) -> str:
    return source or "the maker's measurement"


def strand_width(job: OrnamentJob, ply: Ply) -> tuple[Quantity | None, list[Problem]]:
    """Width of a strip: the tape's or thread's own, or as the options say."""
    said = job.part.options.width
    if ply.width is not None and said is not None:
        text = f"'{job.part.options.stock}' has a width of its own"
        return ply.width, [error((*job.part.path, "width"), text, "pattern-strip-width",
                                 remedy="Leave width out")]  # fmt: skip
    width = ply.width if ply.width is not None else said
    if width is not None:
        return width, []
    text = f"say how wide the strips cut from '{job.part.options.stock}' are"
    return None, [error(job.part.path, text, "pattern-strip-width", remedy="Add width: 8 mm")]


def by_length(job: OrnamentJob, length: Quantity) -> Use:
    """A tape or thread used up, with its spare."""
    amount = length * (1 + job.book.practice("waste-cloth"))
    stock = job.part.options.stock
    return Use(stock, amount, stock, note="pattern")
