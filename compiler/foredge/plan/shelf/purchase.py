"""How many whole buying units make up what is missing."""

from __future__ import annotations

import math
from collections.abc import Sequence

from foredge.contract import Build, Flat, Linear, Purchase, Quantity, StockItem, number
from foredge.display import show
from foredge.plan.shelf.convert import converted
from foredge.plan.shelf.fit import Cut, units_for


def unit_of(build: Build, material: str, item: StockItem | None, like: Quantity) -> Quantity | None:
    """What the item is sold by, in the dimension of ``like``; None where that is not known."""
    if isinstance(item, Flat):
        return item.sold_by if item.sold_by is not None else number(1)
    sold = getattr(item, "sold_by", None)
    if not isinstance(sold, Quantity):
        return None
    return converted(build, material, item, sold, like.dimension)


def bought(
    build: Build,
    material: str,
    item: StockItem | None,
    amount: Quantity,
    cuts: Sequence[Cut] = (),
) -> Purchase:
    """Whole units for ``amount``; ``cuts`` of it, in mm, are pieces that cannot be joined."""
    unit = unit_of(build, material, item, amount)
    price = item.price if item is not None else None
    if unit is None:
        return Purchase(amount, price=price)
    if isinstance(item, Linear):
        joinable = amount.value - math.fsum(cut.length_mm for cut in cuts)
        units, in_one = units_for(cuts, max(0.0, joinable), unit.value)
        return Purchase(amount, units, _sold(item, unit), price, in_one and units > 1)
    return Purchase(amount, math.ceil(amount.value / unit.value - 1e-9), _sold(item, unit), price)


def as_sold(unit: Quantity, system: str) -> str:
    """A buying unit in the words of the spec: ``50 m``, and not 164 ft of it."""
    if unit.origin is not None and unit.origin.kind == "spec" and unit.origin.text:
        return unit.origin.text
    return show(unit, system)


def _sold(item: StockItem | None, unit: Quantity) -> Quantity:
    """The unit as the spec says it, a jar in ml though its glue is weighed."""
    sold = getattr(item, "sold_by", None)
    return sold if isinstance(sold, Quantity) else unit
