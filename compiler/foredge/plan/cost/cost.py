"""What the books cost, and what the work earns at the maker's own figures."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from foredge.contract import Build, Cost, LedgerLine, MaterialCost, Problem, Purchase, Sum, warning
from foredge.contract.stock import Flat
from foredge.display import show
from foredge.plan.cost.hours import all_copies, hours, one_book
from foredge.plan.cost.money import money, ratio, times
from foredge.plan.cost.sums import earned, sums
from foredge.plan.shelf.names import sized
from foredge.plan.shelf.purchase import as_sold, unit_of
from foredge.spec.money import currency_of


def plan_cost(build: Build) -> tuple[Cost | None, list[Problem]]:
    """Cost of all copies; None where nothing is priced."""
    currency = currency_of(build.book)
    if not currency:
        return None, []
    lines = build.plan.ledger.lines
    materials = tuple(_priced(build, lines))
    priced = {id(one.line) for one in materials}
    whole = all_copies(build, build.order)
    figures = sums(build, currency, materials, whole)
    cost = Cost(
        currency=currency,
        copies=int(build.book.copies.value),
        one=one_book(build, build.order),
        all=whole,
        hours=hours(build),
        batch=tuple(operation.id for operation in build.order if operation.batch),
        materials=materials,
        unpriced=tuple(
            dict.fromkeys(
                sized(build, line)
                for line in lines
                if id(line) not in priced and not line.from_off_cuts
            )
        ),
        sums=figures,
        earned=earned(figures, currency, whole),
    )
    return cost, _loss(cost)


def _priced(build: Build, lines: Iterable[LedgerLine]) -> Iterator[MaterialCost]:
    for line in lines:
        bought = line.afresh
        if bought is None or bought.price is None or bought.units is None or bought.unit is None:
            continue
        used = _used(build, line, bought)
        if used is not None:
            yield MaterialCost(line, used, _whole(build, "afresh", line, bought), _now(build, line))


def _used(build: Build, line: LedgerLine, bought: Purchase) -> Sum | None:
    """The share of a unit's price; sheets count whole, for their off-cuts are not sold."""
    item = build.book.stock[line.stock or ""]
    unit = unit_of(build, line.material, item, line.need, line.size)
    if unit is None or bought.price is None:
        return None
    share = ratio(line.need.value, unit.value)
    system = build.book.display
    price = money(bought.price.amount, bought.price.currency)
    how = f"{show(line.need, system, within=line.band)} at {price}"
    if not isinstance(item, Flat) or unit.value != 1:
        how += f" for {as_sold(unit if bought.unit is None else bought.unit, system)}"
    return Sum(_key("used", line), sized(build, line), times(bought.price, share), how)


def _key(what: str, line: LedgerLine) -> str:
    """``used.paper``; ``used.paper.more-1`` for the first of its other sizes."""
    return f"{what}.{line.stock}" + (f".more-{line.size}" if line.size else "")


def _whole(build: Build, key: str, line: LedgerLine, bought: Purchase) -> Sum:
    assert bought.price is not None and bought.units is not None
    units = Fraction(bought.units)
    how = f"{bought.units} × {money(bought.price.amount, bought.price.currency)}"
    return Sum(_key(key, line), sized(build, line), times(bought.price, units), how)


def _now(build: Build, line: LedgerLine) -> Sum | None:
    if line.buy is None or line.buy.units is None or line.buy.price is None:
        return None
    return _whole(build, "now", line, line.buy)


def _loss(cost: Cost) -> list[Problem]:
    """A warning where the asked price does not even pay what is laid out."""
    left = cost.sum("left")
    if left is None or left.amount >= 0:
        return []
    return [
        warning(
            ("money", "asked"),
            f"{'the book costs' if cost.copies == 1 else f'{cost.copies} copies cost'} "
            f"{money(-left.amount, cost.currency)} more than this price brings: {left.how}",
            "asked-below-cost",
            consequence="The work earns nothing, and materials are given away with it",
            remedy="Ask more, use up what is on the shelf, or call it a gift",
            source="the prices of this spec",
        )
    ]
