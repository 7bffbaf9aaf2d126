"""The money of a book as plain data; amounts are texts, exact decimals."""

from __future__ import annotations

from typing import Any

from foredge.contract import Build, Flat, MaterialCost, Operation, Sum
from foredge.emit.plain_units import plain_number
from foredge.plan.cost.hours import all_copies, one_book


def money_part(build: Build) -> dict[str, Any]:
    """``{"money": ...}``; empty where nothing is priced."""
    cost = build.plan.cost
    if cost is None:
        return {}
    document: dict[str, Any] = {
        "currency": cost.currency,
        "copies": cost.copies,
        "hours": {operation.id: _hours(build, operation) for operation in build.order},
        "materials": [_material(build, one) for one in cost.materials],
        "sums": [_sum(one) for one in cost.sums],
        "unpriced": list(cost.unpriced),
    }
    if cost.earned is not None:
        value, low, high = (f"{amount:f}" for amount in cost.earned)
        document["earned"] = {"value": value, "low": low, "high": high}
    return {"money": document}


def _hours(build: Build, operation: Operation) -> dict[str, Any]:
    times = {"one": one_book(build, [operation]), "all": all_copies(build, [operation])}
    return {key: plain_number(time.value, time.dimension) for key, time in times.items()}


def _material(build: Build, one: MaterialCost) -> dict[str, Any]:
    found: dict[str, Any] = {
        "material": one.line.material,
        "stock": one.line.stock or "",
        "used": _sum(one.used),
        "afresh": _sum(one.afresh),
    }
    item = build.book.stock.get(one.line.stock or "")
    if isinstance(item, Flat) and item.more:
        found["size"] = one.line.size
    return found if one.now is None else {**found, "now": _sum(one.now)}


def _sum(one: Sum) -> dict[str, str]:
    return {"key": one.key, "label": one.label, "amount": f"{one.amount:f}", "how": one.how}
