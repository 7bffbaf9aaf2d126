"""What runs out, and where; what cannot be compared; what may be misspelt."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from foredge.contract import (
    Build,
    Flat,
    LedgerLine,
    Path,
    Problem,
    Quantity,
    StockItem,
    Supply,
    faces,
    note,
    warning,
)
from foredge.contract.stock import stock_path
from foredge.display import show
from foredge.plan.shelf.convert import NAMES
from foredge.plan.shelf.groups import shelf_key
from foredge.plan.shelf.names import likely
from foredge.plan.shelf.purchase import as_sold, unit_of

TOLD_BY_TEXT_BLOCK = "paper-short"


def ledger_problems(build: Build, lines: Iterable[LedgerLine]) -> list[Problem]:
    """Shortfalls with the exact amount, and materials the shelf cannot speak of."""
    lines = tuple(lines)
    told = {one.path[1] for one in build.whole.problems if one.rule == TOLD_BY_TEXT_BLOCK}
    return [
        *(_short(build, line) for line in lines if _lacks(line) and line.stock not in told),
        *(_unclear(line) for line in lines if line.unclear),
        *(_sold_otherwise(build, line) for line in lines if _unit_unknown(build, line)),
        *_misspelt(build, lines),
    ]


def _lacks(line: LedgerLine) -> bool:
    """Whether something that the shelf lists runs out; off-cuts are nobody's promise."""
    return line.stock is not None and line.shelf is not None and line.short is not None


def _short(build: Build, line: LedgerLine) -> Problem:
    assert line.short is not None and line.shelf is not None and line.stock is not None
    item = build.book.stock[line.stock]
    where = f"; it runs out at '{_title(build, line.first)}'" if line.first else ""
    pieces = f"; what is missing must be unjoined: {line.pieces_short}" if line.pieces_short else ""
    return warning(
        _path(item, line),
        f"'{line.stock}'{_of_size(item, line)} is {_told(build, item, line.short, line)} short: "
        f"{_needs(build, line)}, "
        f"{_has(build, item, line)}{pieces}{where}",
        "stock-short",
        consequence="The work stops there, and another lot may not match",
        remedy=_remedy(build, line),
        source="the amounts of this sheet",
    )


def _of_size(item: StockItem, line: LedgerLine) -> str:
    """`` (300 by 420 mm)`` where the item has several sizes."""
    if not isinstance(item, Flat) or not item.more:
        return ""
    face = faces(item)[line.size]
    return f" ({face.width.value:g} by {face.height.value:g} mm)"


def _has(build: Build, item: StockItem, line: LedgerLine) -> str:
    """``the shelf has 5 sheets``, and that they are not enough where their number would be."""
    assert line.shelf is not None and line.short is not None
    told = f"the shelf has {_told(build, item, line.shelf)}"
    if not isinstance(item, Flat):
        return told
    if line.shelf.value >= line.most.value:
        return f"{told} without room enough between spoiled places and creases"
    useless = line.shelf.value + line.short.value > line.most.value
    which = "which is not" if line.shelf.value == 1 else "not all of them"
    return f"{told}, {which} large and clean enough" if useless else told


def _told(build: Build, item: StockItem, amount: Quantity, line: LedgerLine | None = None) -> str:
    """``40 m``, ``1 sheet``, ``2 pieces``; of what ``line`` needs in figures that it is worth."""
    text = show(amount, build.book.display, within=None if line is None else line.band)
    if not isinstance(item, Flat):
        return text
    word = str(type(item).__struct_config__.tag)
    word = "piece" if word == "cloth" else word
    return f"{text} {word}" if text == "1" else f"{text} {word}s"


def _needs(build: Build, line: LedgerLine) -> str:
    """``the work needs 3.1 m``, for all copies, at the high end where it is an estimate."""
    copies = int(build.book.copies.value)
    item = build.book.stock[line.stock or ""]
    who = "the work needs" if copies == 1 else f"{copies} copies need"
    most, need = _told(build, item, line.most, line), _told(build, item, line.need, line)
    if line.band.exact or most == need:
        return f"{who} {most}"
    return f"{who} {need} by the estimate and may need {most}"


def _remedy(build: Build, line: LedgerLine) -> str:
    buy = line.buy
    if buy is None or buy.units is None or buy.unit is None:
        return "Have that much more ready before you begin, or make the book smaller"
    if isinstance(build.book.stock.get(line.stock or ""), Flat) and buy.unit.value == 1:
        return f"Have {buy.units} more ready before you begin"
    in_one = ", in one length," if buy.in_one else ""
    return f"Buy {buy.units} × {as_sold(buy.unit, build.book.display)}{in_one} before you begin"


def _path(item: StockItem, line: LedgerLine) -> Path:
    path = stock_path(line.stock or "")
    if line.size:
        return (*path, "more", line.size - 1, "count")
    key = "count" if isinstance(item, Flat) else shelf_key(item)
    return (*path, key)


def _title(build: Build, operation: str) -> str:
    return next((one.title for one in build.order if one.id == operation), operation)


def _unclear(line: LedgerLine) -> Problem:
    return note(
        stock_path(line.stock or ""),
        f"whether '{line.stock}' is enough is not known: {line.unclear}",
        "stock-not-comparable",
        consequence="It may run out, and its cost is left out",
        remedy=f"Say its {NAMES.get(line.need.dimension, 'amount')} instead, as the work tells it",
        on_key=True,
    )


def _unit_unknown(build: Build, line: LedgerLine) -> bool:
    """Whether the item says how it is sold, in what the work does not tell it in."""
    item = build.book.stock.get(line.stock or "")
    sold = getattr(item, "sold_by", None)
    if line.unclear or item is None or not isinstance(sold, Quantity):
        return False
    return unit_of(build, line.material, item, line.need) is None


def _sold_otherwise(build: Build, line: LedgerLine) -> Problem:
    sold = getattr(build.book.stock[line.stock or ""], "sold_by", line.need)
    ours, theirs = NAMES.get(line.need.dimension, "amount"), NAMES.get(sold.dimension, "amount")
    return note(
        (*stock_path(line.stock or ""), "sold_by"),
        f"'{line.stock}' is told by {ours} here and sold by {theirs}, and nothing known leads "
        "from one to the other",
        "sold-by-not-comparable",
        consequence="How many to buy, and what it costs, are left out",
        remedy=f"Write sold_by as the {ours} that one holds",
    )


def _misspelt(build: Build, lines: tuple[LedgerLine, ...]) -> Iterator[Problem]:
    """A supply that nothing uses, and a material not on the shelf that looks like it."""
    used = {line.stock for line in lines}
    for line in lines:
        near = likely(build, line.material) if line.stock is None else None
        if near is None or near in used or not isinstance(build.book.stock[near], Supply):
            continue
        yield note(
            stock_path(near),
            f"nothing uses '{near}'; the work calls for '{line.material}'",
            "stock-unused",
            consequence="Its amount and price are left out",
            remedy=f"If that is what it is, write material: {line.material}",
            on_key=True,
        )
