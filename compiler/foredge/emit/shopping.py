"""What the shelf has, what the work needs of it, and what must be bought."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from foredge.contract import Build, Flat, LedgerLine, Purchase, Quantity
from foredge.display import show
from foredge.emit.escape import escape
from foredge.emit.words import PROVISIONAL, Words, state_within
from foredge.emit.work import step_numbers
from foredge.plan.cost.money import money, whole_units
from foredge.plan.shelf.names import fold, sized
from foredge.plan.shelf.purchase import as_sold
from foredge.quantity import Band

OFF_CUTS = "off-cuts of the text block"
MANY = 3
"""What serves more ends than that is told by its steps alone."""


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """A material: what all copies need, what there is, what is missing.

    ``whole`` with its range ``band`` is the need, for a page that changes units.
    """

    material: str
    need: str
    state: str
    shelf: str
    missing: str
    note: str
    steps: str
    whole: Quantity
    band: Band


@dataclass(frozen=True, slots=True)
class ShoppingRow:
    """Something to buy: ``why`` it must be, and at which step it is needed first.

    ``whole`` is the work's need, whose high end ``need`` is; None where the shelf has a part.
    """

    what: str
    need: str
    buy: str
    price: str
    why: str
    step: str
    whole: Quantity | None


@dataclass(frozen=True, slots=True)
class Shopping:
    """What must be bought: short of the shelf, to be bought by the spec, or not on the shelf.

    ``total`` is what the priced ones cost; ``found`` are materials of the maker's own choice
    that pieces are cut from.
    """

    rows: tuple[ShoppingRow, ...]
    total: str
    found: str
    estimated: bool


def ledger_rows(build: Build) -> tuple[LedgerRow, ...]:
    """Every material in the order in which it is first needed."""
    words, numbers = Words(build), step_numbers(build)
    return tuple(_ledger_row(words, numbers, line) for line in build.plan.ledger.lines)


def _ledger_row(words: Words, numbers: dict[str, str], line: LedgerLine) -> LedgerRow:
    firm = "" if line.need.firm else f"{PROVISIONAL} "
    return LedgerRow(
        material=called(words.build, line),
        need=firm + counted(words.build, line, line.need, line.band),
        state=state_within(line.need, line.band),
        shelf=_shelf(words, line),
        missing=_missing(words, line),
        note="; ".join(map(escape, line.notes)) if len(line.notes) <= MANY else "",
        steps=", ".join(dict.fromkeys(numbers[step] for step in line.steps if step in numbers)),
        whole=line.need,
        band=line.band,
    )


def called(build: Build, line: LedgerLine) -> str:
    """The material, and the shelf's item where that has another name; which of several sizes."""
    name = escape(sized(build, line))
    if line.stock is not None and fold(line.stock) != fold(line.material):
        name += f", from {escape(line.stock)}"
    return name


def counted(build: Build, line: LedgerLine, amount: Quantity, band: Band | None = None) -> str:
    """``3.1 m (3 to 3.2)``, or ``3 sheets``; without ``band`` in figures that the need is worth."""
    text = show(amount, build.book.display, band, within=line.band)
    item = build.book.stock.get(line.stock or "")
    if not isinstance(item, Flat):
        return text
    word = str(type(item).__struct_config__.tag)
    word = "piece" if word == "cloth" else word
    return f"{text} {word}" if text == "1" else f"{text} {word}s"


def _shelf(words: Words, line: LedgerLine) -> str:
    if line.shelf is not None:
        there = counted(words.build, line, line.shelf)
        return f"{there} of {OFF_CUTS}" if line.from_off_cuts else there
    if line.stock is None:
        return "not listed"
    if line.unclear:
        return "in another unit"
    return "to be bought" if line.buy is not None else "as much as wanted"


def _missing(words: Words, line: LedgerLine) -> str:
    if line.unclear:
        return "not known"
    if line.short is not None:
        pieces = f" ({line.pieces_short})" if line.pieces_short else ""
        return counted(words.build, line, line.short) + pieces
    return "nothing" if line.shelf is not None else ""


def shopping(build: Build) -> Shopping:
    """The shopping list of all copies; empty rows where nothing is missing."""
    numbers = step_numbers(build)
    lines = build.plan.ledger.shopping
    rows = tuple(_shopping_row(build, numbers, line) for line in lines)
    costs = [cost for line in lines if (cost := _cost(line.buy)) is not None]
    currency = next((line.buy.price.currency for line in lines if line.buy and line.buy.price), "")
    return Shopping(
        rows=rows,
        total=money(sum(costs, Decimal(0)), currency) if costs else "",
        found="; ".join(escape(one) for one in chosen_materials(build)),
        estimated=any(not line.band.exact for line in lines),
    )


def chosen_materials(build: Build) -> tuple[str, ...]:
    """What pieces are cut from that are of no item of the shelf.

    What the work itself makes goes by its article: "the laminated board".
    """
    named = (piece.material for piece in build.whole.pieces if piece.stock is None)
    return tuple(dict.fromkeys(one for one in named if one and not one.startswith("the ")))


def _shopping_row(build: Build, numbers: dict[str, str], line: LedgerLine) -> ShoppingRow:
    assert line.buy is not None
    cost = _cost(line.buy)
    currency = line.buy.price.currency if line.buy.price is not None else ""
    first = line.first or (line.steps[0] if line.steps else "")
    return ShoppingRow(
        what=called(build, line),
        need=counted(build, line, line.buy.amount),
        buy=units(build, line),
        price=money(cost, currency) if cost is not None else "",
        why=_why(line),
        step=numbers.get(first, ""),
        whole=line.need if line.short is None else None,
    )


def _why(line: LedgerLine) -> str:
    if line.short is not None:
        return "the shelf runs out" + cheapest(line)
    return "not listed on the shelf" if line.stock is None else "to be bought" + cheapest(line)


def cheapest(line: LedgerLine) -> str:
    """``; the cheapest of 3 sizes for these pieces``; nothing where there was no choice."""
    sizes = line.cheapest_of
    return f"; the cheapest of {sizes} sizes for these pieces" if sizes > 1 else ""


def units(build: Build, line: LedgerLine) -> str:
    """``2 × 250 ml``; empty where the spec does not say how it is sold."""
    buy = line.buy
    if buy is None or buy.units is None or buy.unit is None:
        return ""
    single = isinstance(build.book.stock.get(line.stock or ""), Flat) and buy.unit.value == 1
    told = f"{buy.units}" if single else f"{buy.units} × {as_sold(buy.unit, build.book.display)}"
    return told + (", in one length" if buy.in_one else "")


def _cost(buy: Purchase | None) -> Decimal | None:
    if buy is None or buy.price is None or buy.units is None:
        return None
    return whole_units(buy.price, buy.units)
