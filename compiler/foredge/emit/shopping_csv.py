"""``shopping.csv``: what must be bought, or handed out to a class, for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator

from foredge.contract import Build, Flat, LedgerLine, Piece, Purchase, Quantity, places_of
from foredge.emit.cut_list_csv import guard
from foredge.emit.plain_units import plain_number, plain_unit
from foredge.emit.shopping import OFF_CUTS, cheapest
from foredge.emit.work import step_numbers
from foredge.plan.cost.money import whole_units
from foredge.plan.shelf.names import sized

HEAD = (
    "material", "stock", "copies", "need", "one_book", "unit", "shelf", "missing",
    "units_to_buy", "sold_by", "sold_by_unit", "price", "cost", "currency", "first_step", "why",
)  # fmt: skip


class ShoppingList:
    """``shopping.csv``."""

    kind = "emitter"
    name = "shopping-list"
    title = "Shopping list in CSV"

    def emit(self, build: Build) -> dict[str, bytes]:
        """One line a material: first what must be bought, then the rest of what is used.

        ``need`` is that of all copies at the high end of its range, ``one_book`` the middle of
        one, so that the list also does as the supplies of a class.
        """
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(HEAD)
        lines = build.plan.ledger.lines
        bought = [line for line in lines if line.buy is not None]
        there = [line for line in lines if line.buy is None]
        for line in (*bought, *there):
            writer.writerow([guard(cell) for cell in _line(build, line)])
        for piece in _of_choice(build):
            writer.writerow([guard(cell) for cell in _piece(build, piece)])
        return {"shopping.csv": out.getvalue().encode()}


def _line(build: Build, line: LedgerLine) -> Iterator[str]:
    copies, steps = build.book.copies, step_numbers(build)
    flat = isinstance(build.book.stock.get(line.stock or ""), Flat)
    yield sized(build, line)
    yield line.stock or ""
    yield _plain(copies)
    yield _plain(line.most)
    yield "" if flat else _plain(line.need / copies)
    yield _unit(line.need, flat)
    yield "" if line.shelf is None else _plain(line.shelf)
    yield "" if line.short is None else _plain(line.short)
    yield from _purchase(line.buy, flat)
    first = line.first or (line.steps[0] if line.steps else "")
    yield steps.get(first, "")
    yield _why(line)


def _purchase(buy: Purchase | None, flat: bool) -> Iterator[str]:
    """``units_to_buy``, ``sold_by``, ``sold_by_unit``, ``price``, ``cost``, ``currency``."""
    if buy is None or buy.units is None or buy.unit is None:
        yield from [""] * 6
        return
    yield str(buy.units)
    yield _plain(buy.unit)
    yield _unit(buy.unit, flat)
    if buy.price is None:
        yield from [""] * 3
        return
    yield f"{buy.price.amount:f}"
    yield f"{whole_units(buy.price, buy.units):.{places_of(buy.price.currency)}f}"
    yield buy.price.currency


def _why(line: LedgerLine) -> str:
    if line.short is not None:
        return "short on the shelf" + cheapest(line)
    if line.buy is not None:
        listed = "to be bought" + cheapest(line)
        return "not listed on the shelf" if line.stock is None else listed
    if line.unclear:
        return "in another unit on the shelf"
    return OFF_CUTS if line.from_off_cuts else "on the shelf"


def _plain(quantity: Quantity) -> str:
    return str(plain_number(quantity.value, quantity.dimension))


def _unit(quantity: Quantity, flat: bool) -> str:
    if flat:
        return "sheets"
    name = plain_unit(quantity.dimension).name
    return "pieces" if name == "1" else name


def _of_choice(build: Build) -> list[Piece]:
    """Pieces that are of no item of the shelf, and that the work does not make itself."""
    return [
        piece
        for piece in build.whole.pieces
        if piece.stock is None and piece.material and not piece.material.startswith("the ")
    ]


def _piece(build: Build, piece: Piece) -> Iterator[str]:
    size = f"{_plain(piece.width)} x {_plain(piece.height)} mm"
    yield f"{piece.material}, {size}"
    yield ""
    yield _plain(build.book.copies)
    yield _plain(piece.count * build.book.copies)
    yield _plain(piece.count)
    yield "pieces"
    yield from [""] * 8
    steps = step_numbers(build)
    first = next((one.id for one in build.order if piece.name in one.pieces), "")
    yield steps.get(first, "")
    yield f"of your choice: {piece.title}"
