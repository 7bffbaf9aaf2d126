"""What chose the sheets that are cut up, the least money or the least area, and its sum."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from foredge.contract import AREA, Build, Face, Flat, Origin, Price, SheetNeed, faces, leaf
from foredge.dimension import LENGTH
from foredge.display import show
from foredge.emit.escape import escape
from foredge.emit.plain_units import plain_number
from foredge.plan.cost.money import money, rounded_sum

_Cut = tuple[str, tuple[tuple[SheetNeed, Face], ...]]
"""A stock item, and the sizes of it that are cut up."""


def aim_lines(build: Build) -> tuple[str, ...]:
    """A line for each stock item where something was weighed: several sizes, or a price."""
    return tuple(
        escape(f"{name}, laid out for the least {_told(build, used)}.")
        for name, used in _cut_up(build)
        if used[0][0].for_money or _several(build, name)
    )


def cutting_part(build: Build) -> dict[str, Any]:
    """``{"cutting": ...}`` as plain data, item by item; empty where no sheet is cut."""
    found = {name: _plain(used) for name, used in _cut_up(build)}
    return {"cutting": found} if found else {}


def _cut_up(build: Build) -> Iterator[_Cut]:
    for name, item in build.book.stock.items():
        needs = [need for need in build.plan.cutting.needs if need.stock == name and need.used]
        if needs and isinstance(item, Flat):
            shelf = faces(item)
            yield name, tuple((need, shelf[need.size]) for need in needs)


def _several(build: Build, name: str) -> bool:
    item = build.book.stock[name]
    return isinstance(item, Flat) and bool(item.more)


def _told(build: Build, used: tuple[tuple[SheetNeed, Face], ...]) -> str:
    """``money: 2 × 0.40 EUR + 1 × 0.25 EUR = 1.05 EUR``, or ``area: 0.9 m² of sheets``."""
    if not used[0][0].for_money:
        area = leaf(_area_mm2(used), AREA, "area of sheets", Origin("plan"))
        return f"area: {show(area, build.book.display)} of sheets"
    terms = " + ".join(_term(need.used, face) for need, face in used)
    paid, price = _paid(used)
    told = money(rounded_sum(paid, price.currency), price.currency)
    return f"money: {terms}" + ("" if terms == f"1 × {told}" else f" = {told}")


def _term(sheets: int, face: Face) -> str:
    """``3 × 1.20 EUR``; ``3 × 4.50 EUR / 5`` where five are sold together."""
    assert face.price is not None
    together = 1 if face.sold_by is None else int(face.sold_by.value)
    told = f"{sheets} × {money(face.price.amount, face.price.currency)}"
    return told if together == 1 else f"{told} / {together}"


def _area_mm2(used: tuple[tuple[SheetNeed, Face], ...]) -> float:
    return math.fsum(need.area_mm2 for need, _ in used)


def _paid(used: tuple[tuple[SheetNeed, Face], ...]) -> tuple[Fraction, Price]:
    price = used[0][1].price
    assert price is not None
    return sum((need.used * need.each for need, _ in used if need.each), Fraction(0)), price


def _plain(used: tuple[tuple[SheetNeed, Face], ...]) -> dict[str, Any]:
    for_money = used[0][0].for_money
    found: dict[str, Any] = {
        "area": plain_number(_area_mm2(used), AREA),
        "least": "money" if for_money else "area",
        "sheets": [_size(need) for need, _ in used],
    }
    if for_money:
        paid, price = _paid(used)
        found["cost"] = f"{rounded_sum(paid, price.currency):f}"
        found["currency"] = price.currency
    return found


def _size(need: SheetNeed) -> dict[str, Any]:
    return {
        "width": plain_number(need.width_mm, LENGTH),
        "height": plain_number(need.height_mm, LENGTH),
        "used": need.used,
        "buy": need.buy,
    }
