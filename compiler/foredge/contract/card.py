"""Thickness and mass of board and card on the shelf: measured, from grammage, or by table."""

from __future__ import annotations

from foredge.contract.book import Book
from foredge.contract.shelf import Figures, paper_figures
from foredge.contract.stock import Board, Sheet
from foredge.quantity import Quantity
from foredge.tables import TableError


def board_figures(book: Book, stock: str | None, row: str) -> Figures:
    """One layer of the board (or sheet) ``stock``; ``row`` of the board table where it names no
    material. A sheet is read as paper, by its own grammage and bulk.
    """
    item = book.stock.get(stock) if stock else None
    if isinstance(item, Sheet):
        return paper_figures(book, stock, "card")
    board = item if isinstance(item, Board) else None
    row = (board and board.material) or row
    density = book.table("board", row, "density")
    if board and board.thickness is not None:
        thickness = board.thickness * (1 + book.practice("caliper-error"))
        grammage = board.grammage if board.grammage is not None else board.thickness * density
        return Figures(thickness, grammage, True, row, "measured", "")
    if board and board.grammage is not None:
        thickness, how = board.grammage / density, "estimated from grammage by density"
        return Figures(thickness, board.grammage, False, row, how, cited(density))
    thickness = book.table("board", row, "thickness")
    return Figures(
        thickness, thickness * density, False, row, "usual for its kind", cited(thickness)
    )


def coated_sides(book: Book, stock: str | None, row: str) -> int:
    """How many faces of the board ``stock`` are printed or coated: 0, 1 or 2."""
    item = book.stock.get(stock) if stock else None
    if isinstance(item, Board) and item.coated is not None:
        return {"none": 0, "one side": 1, "both sides": 2}[item.coated]
    if isinstance(item, Sheet):
        return 0
    return int(book.table("board", row, "coated_sides").value)


def crush(book: Book, row: str) -> Quantity | None:
    """The part of a corrugated board's thickness that is lost in pressing; None if it is flat."""
    try:
        return book.table("board", row, "crush")
    except TableError:
        return None


def cited(q: Quantity, otherwise: str = "") -> str:
    """The citation of a figure that was read from a table; ``otherwise`` for any other."""
    return (q.origin.citation if q.origin is not None else "") or otherwise
