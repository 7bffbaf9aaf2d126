"""The ledger's lines of sheets, boards and cloth: counted by the cutting plan."""

from __future__ import annotations

from collections.abc import Iterator

from foredge.contract import (
    RATIO,
    Build,
    LedgerLine,
    Origin,
    Purchase,
    Quantity,
    SheetNeed,
    StockItem,
    leaf,
)
from foredge.plan.shelf.lines import amount_of
from foredge.plan.shelf.purchase import bought
from foredge.quantity import Band

_PLANNED = Origin("plan", citation="the cutting plan")


def sheet_lines(build: Build) -> Iterator[tuple[int, LedgerLine]]:
    """A line for each size that is cut up, with the place of the work where it is first cut."""
    cutters = _cutters(build)
    for need in build.plan.cutting.needs:
        if not need.used:
            continue
        places = sorted({place for stock, place in cutters.values() if stock == need.stock})
        yield places[0] if places else 0, _line(build, need, cutters, places)


def _cutters(build: Build) -> dict[str, tuple[str, int]]:
    """Piece -> its stock and the place of the operation that cuts it."""
    pieces = {piece.name: piece for piece in build.whole.pieces if piece.stock}
    found: dict[str, tuple[str, int]] = {}
    for place, operation in enumerate(build.order):
        for name in operation.pieces:
            if name in pieces:
                found.setdefault(name, (str(pieces[name].stock), place))
    return found


def _line(
    build: Build, need: SheetNeed, cutters: dict[str, tuple[str, int]], places: list[int]
) -> LedgerLine:
    item = build.book.stock[need.stock]
    label = f"sheets of {need.stock} that are cut up"
    used = leaf(need.used, RATIO, "ledger.amount", _PLANNED, label=label, integer=True)
    first = build.order[cutters[need.first][1]].id if need.first in cutters else ""
    done = bool(first) and first in build.book.done
    short = amount_of(need.buy, RATIO) if need.buy and not done else None
    return LedgerLine(
        material=need.stock,
        stock=need.stock,
        need=used,
        band=Band(used.value, used.value),
        most=used,
        shelf=None if need.shelf is None else amount_of(need.shelf, RATIO),
        short=short,
        first=first if short is not None else "",
        size=need.size,
        steps=tuple(build.order[place].id for place in places),
        buy=_buy(build, need, item, short, used),
        afresh=None if need.each is None else _bought(build, need, item, used),
        cheapest_of=need.cheapest_of,
    )


def _buy(
    build: Build, need: SheetNeed, item: StockItem, short: Quantity | None, used: Quantity
) -> Purchase | None:
    if short is not None:
        return _bought(build, need, item, short)
    if need.shelf is None and need.each:  # what is free in any number is not bought
        return _bought(build, need, item, used)
    return None


def _bought(build: Build, need: SheetNeed, item: StockItem, sheets: Quantity) -> Purchase:
    return bought(build, need.stock, item, sheets, size=need.size)
