"""Claims on the shelf put together: one group a material, all of it in one dimension."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from foredge.contract import (
    LENGTH,
    RATIO,
    Build,
    Dimension,
    Flat,
    Linear,
    Quantity,
    StockItem,
    total,
)
from foredge.contract.stock import Supply
from foredge.plan.shelf.claims import Claim, claims
from foredge.plan.shelf.convert import NAMES, converted
from foredge.plan.shelf.mixtures import taken_apart
from foredge.plan.shelf.names import called, stock_for


@dataclass(slots=True)
class Group:
    """Claims on one item of the shelf, or on one material that is not on it.

    ``unclear`` says why they cannot be held against the item.
    """

    material: str
    stock: str | None
    item: StockItem | None
    claims: list[Claim] = field(default_factory=list)
    unclear: str = ""

    def need(self, build: Build) -> Quantity:
        """What all copies need."""
        return total([claim.amount for claim in self.claims]) * build.book.copies


def groups(build: Build) -> list[Group]:
    """Every material of the book, in the order in which it is first needed."""
    found: dict[tuple[str, str, Dimension], Group] = {}
    for claim in _parts(build):
        stock = claim.stock if claim.stock is not None else stock_for(build, claim.material)
        item = build.book.stock.get(stock) if stock is not None else None
        wanted = _dimension(item, claim, found, build)
        amount = converted(build, claim.material, item, claim.amount, wanted)
        unclear = "" if amount is not None else _unclear(claim, wanted)
        kept = replace(claim, amount=claim.amount if amount is None else amount)
        key = (stock or "", "" if stock else _name(build, claim.material), kept.amount.dimension)
        group = found.get(key)
        if group is None:
            group = found.setdefault(key, Group("", stock, item, unclear=unclear))
        group.claims.append(kept)
    for group in found.values():
        group.material = _told(group)
    return list(found.values())


def _parts(build: Build) -> Iterator[Claim]:
    for claim in claims(build):
        yield from taken_apart(build, claim)


def _name(build: Build, material: str) -> str:
    """One key for ``White glue (PVA)`` of two tables, another for each colour of a paint."""
    known = called(build.tables, material)
    return ", ".join([min(known.names), known.colour])


def _told(group: Group) -> str:
    """What the sheet calls it: pieces and thread by their item, as a jar for several colours."""
    names = dict.fromkeys(claim.material for claim in group.claims)
    if group.stock is None or (isinstance(group.item, Supply) and len(names) == 1):
        return next(iter(names))
    if isinstance(group.item, Supply) and group.item.material is not None:
        return group.item.material
    return group.stock


def _dimension(
    item: StockItem | None,
    claim: Claim,
    found: dict[tuple[str, str, Dimension], Group],
    build: Build,
) -> Dimension:
    """What the claim is told in: as the shelf is, else as the material was before."""
    if isinstance(item, Linear):
        return LENGTH
    if isinstance(item, Flat):
        return RATIO
    known = shelf_of(item)
    if known is None and isinstance(item, Supply):
        known = item.sold_by
    if known is not None:
        return known.dimension
    name = _name(build, claim.material)
    told = (dimension for stock, other, dimension in found if not stock and other == name)
    return next(told, claim.amount.dimension) if item is None else claim.amount.dimension


def shelf_of(item: StockItem | None) -> Quantity | None:
    """How much of it there is; None where the spec does not say."""
    if isinstance(item, Linear):
        lengths = [*([item.length] if item.length is not None else []), *item.more]
        return total(lengths) if lengths else None
    if isinstance(item, Supply):
        said = (item.volume, item.mass, item.length, item.count)
        return next((amount for amount in said if amount is not None), None)
    return None


def shelf_key(item: StockItem | None) -> str:
    """The key under which the spec says how much there is."""
    for key in ("volume", "mass", "length", "count"):
        if getattr(item, key, None) is not None:
            return key
    return "more" if getattr(item, "more", ()) else ""


def _unclear(claim: Claim, wanted: Dimension) -> str:
    one = NAMES.get(claim.amount.dimension, "amount")
    other = NAMES.get(wanted, "amount")
    return (
        f"the work tells it by {one} and the shelf by {other}, and no density of "
        f"'{claim.material}' is known"
        if {one, other} == {"mass", "volume"}
        else f"the work tells it by {one} and the shelf by {other}"
    )
