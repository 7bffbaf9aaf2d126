"""Thickness and mass of what lies on the shelf: measured where the spec says so, else by table.

Stages and parts ask here, so that one sheet of paper has one thickness in the whole book.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from foredge.contract.book import Book
from foredge.contract.stock import Cloth, Sheet, Tape, Thread, stock_path
from foredge.dimension import LINEAR_DENSITY, Dimension
from foredge.quantity import Origin, Quantity, leaf, number, root
from foredge.tables import TableError

_BULK = Dimension(3, -1, 0)
_LEA = Origin("constant", citation="linen lea: hanks of 300 yards in a pound, by definition")
_POUND_OVER_300_YARDS = 453.59237 / (300 * 914.4)  # g/mm


@dataclass(frozen=True, slots=True)
class Figures:
    """``thickness`` of one layer, its ``grammage``; ``measured`` where the spec gives it.

    ``row`` is the row of the table that filled in what the spec leaves out; ``how`` says
    in a few words where the thickness comes from, ``source`` whose figure it is.
    """

    thickness: Quantity
    grammage: Quantity
    measured: bool
    row: str
    how: str
    source: str


@dataclass(frozen=True, slots=True)
class ThreadFigures:
    """``diameter`` uncompressed; ``bedding`` the share of it that stays as swell.

    ``assumed`` says that neither size nor diameter nor a sized row was given.
    """

    diameter: Quantity
    bedding: Quantity
    row: str
    assumed: bool
    how: str
    source: str


def paper_figures(book: Book, stock: str | None, row: str) -> Figures:
    """One leaf of the sheet ``stock``; ``row`` of the paper table where it names no material."""
    item = book.stock.get(stock) if stock else None
    sheet = item if isinstance(item, Sheet) else None
    row = (sheet and sheet.material) or row
    bulk = book.table("paper", row, "bulk")
    if stock and sheet and sheet.bulk is not None:
        origin = Origin("spec", (*stock_path(stock), "bulk"), f"{sheet.bulk:g}")
        bulk = leaf(sheet.bulk * 1000, _BULK, f"stock.{stock}.bulk", origin)
    if sheet and sheet.thickness is not None:
        grammage = sheet.grammage if sheet.grammage is not None else sheet.thickness / bulk
        return Figures(_as_read(book, sheet.thickness), grammage, True, row, "measured", "")
    if sheet and sheet.grammage is not None:
        grammage = sheet.grammage
    else:
        grammage = book.table("paper", row, "grammage")
    return Figures(
        grammage * bulk, grammage, False, row, "estimated from grammage by bulk", _cited(bulk)
    )


def cloth_figures(book: Book, stock: str | None, row: str) -> Figures:
    """One layer of the cloth ``stock``; ``row`` of the cloth table where it names no material."""
    item = book.stock.get(stock) if stock else None
    cloth = item if isinstance(item, Cloth | Tape) else None
    row = (isinstance(cloth, Cloth) and cloth.material) or row
    grammage = book.table("cloth", row, "grammage")
    if cloth and cloth.thickness is not None:
        return Figures(_as_read(book, cloth.thickness), grammage, True, row, "measured", "")
    thickness = book.table("cloth", row, "thickness")
    return Figures(thickness, grammage, False, row, "usual for its kind", _cited(thickness))


def thread_figures(book: Book, stock: str | None) -> ThreadFigures:
    """Diameter and bedding of the thread ``stock``; linen 25/3 where nothing is known."""
    item = book.stock.get(stock) if stock else None
    thread = item if isinstance(item, Thread) else None
    row = (thread and thread.material) or "linen-25-3"
    bedding = book.table("thread", row, "bedding")
    if thread and thread.diameter is not None:
        return ThreadFigures(_as_read(book, thread.diameter), bedding, row, False, "measured", "")
    tex = thread.size if thread else None
    assumed = False
    if tex is None:
        tex = _tex_of_row(book, row)
        assumed = tex is None or not (thread and thread.material)
        tex = _tex_of_row(book, "linen-25-3") if tex is None else tex
    assert tex is not None
    density = book.table("thread", row, "packing")
    how = "from its mass by length, as a round rod (Peirce)"
    diameter = root(number(4 / math.pi) * tex / density)
    return ThreadFigures(diameter, bedding, row, assumed, how, _cited(density))


def _tex_of_row(book: Book, row: str) -> Quantity | None:
    try:
        return book.table("thread", row, "tex")
    except TableError:
        pass
    try:
        lea, ply = book.table("thread", row, "lea"), book.table("thread", row, "ply")
    except TableError:
        return None
    unit = leaf(_POUND_OVER_300_YARDS, LINEAR_DENSITY, "pound over 300 yards", _LEA)
    return unit * ply / lea


def _as_read(book: Book, reading: Quantity) -> Quantity:
    return reading * (1 + book.practice("caliper-error"))


def _cited(q: Quantity) -> str:
    return q.origin.citation if q.origin is not None else ""
