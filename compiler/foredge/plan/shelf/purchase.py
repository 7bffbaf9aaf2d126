"""How many whole buying units make up what is missing."""

from __future__ import annotations

import math
from collections.abc import Sequence

from foredge.contract import Build, Flat, Linear, Purchase, Quantity, Size, StockItem, number
from foredge.display import show
from foredge.plan.shelf.convert import converted
from foredge.plan.shelf.fit import Cut, units_for


def offer_of(item: StockItem | None, size: int = 0) -> StockItem | Size | None:
    """What has the price: the item, or one of its other sizes, each of which has its own."""
    return item.more[size - 1] if size and isinstance(item, Flat) else item


def unit_of(
    build: Build, material: str, item: StockItem | None, like: Quantity, size: int = 0
) -> Quantity | None:
    """What the item is sold by, in the dimension of ``like``; None where that is not known."""
    if isinstance(item, Flat):
        together: Quantity | None = getattr(offer_of(item, size), "sold_by", None)
        return number(1) if together is None else together
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
    size: int = 0,
) -> Purchase:
    """Whole units for ``amount``; ``cuts`` of it, in mm, are pieces that cannot be joined.

    ``size`` is the place of a sheet's size in the item.
    """
    unit = unit_of(build, material, item, amount, size)
    offer = offer_of(item, size)
    price = offer.price if offer is not None else None
    if unit is None:
        return Purchase(amount, price=price)
    if isinstance(item, Linear):
        joinable = amount.value - math.fsum(cut.length_mm for cut in cuts)
        units, in_one = units_for(cuts, max(0.0, joinable), unit.value)
        return Purchase(amount, units, _sold(offer, unit), price, in_one and units > 1)
    return Purchase(amount, math.ceil(amount.value / unit.value - 1e-9), _sold(offer, unit), price)


def as_sold(unit: Quantity, system: str) -> str:
    """A buying unit in the words of the spec: ``50 m``, and not 164 ft of it."""
    if unit.origin is not None and unit.origin.kind == "spec" and unit.origin.text:
        return unit.origin.text
    return show(unit, system)


def _sold(offer: StockItem | Size | None, unit: Quantity) -> Quantity:
    """The unit as the spec says it, a jar in ml though its glue is weighed."""
    sold = getattr(offer, "sold_by", None)
    return sold if isinstance(sold, Quantity) else unit
