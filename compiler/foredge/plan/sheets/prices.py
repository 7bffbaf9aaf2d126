"""What a sheet weighs in the search: its price where every size has one, else its area."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import combinations

from foredge.contract import Face
from foredge.plan.sheets.many import MOST

MOST_CHOICES = 3
"""Sizes of which every choice is tried: seven plans."""

_STEPS = 1_000_000
"""The engine reads prices to a millionth."""


def for_money(shelf: Sequence[Face]) -> bool:
    """Whether sheets of these sizes are chosen by price: all have one, and not all are free."""
    each = [face.each for face in shelf]
    return None not in each and any(each)


def weights(shelf: Sequence[Face]) -> tuple[float | None, ...]:
    """A price for the engine, size by size; None where it is to go by area.

    It holds the money, and the area on a step so small that it counts only where the money is
    level: of two free sheets the smaller is cut up.
    """
    if not for_money(shelf):
        return (None,) * len(shelf)
    each = [face.each or Fraction(0) for face in shelf]
    parts = math.lcm(*(one.denominator for one in each))
    whole = [int(one * parts) for one in each]
    coin = math.gcd(*whole)
    area = [round(face.width.value * face.height.value) for face in shelf]
    level = MOST * max(area) + 1  # more than any plan's area: the engine sees MOST pieces at most
    return tuple((one // coin * level + mm2) / _STEPS for one, mm2 in zip(whole, area, strict=True))


def outlay(face: Face, sheets: int) -> Fraction:
    """What ``sheets`` of this size cost in whole lots; nothing where it has no price."""
    if face.price is None:
        return Fraction(0)
    together = _together(face)
    return -(-sheets // together) * Fraction(face.price.amount)


def choices(shelf: Sequence[Face]) -> list[tuple[int, ...]]:
    """Places of the sizes that are tried together, for sheets that are bought as they are needed.

    The search weighs a sheet of a pack by its share of the price, and a pack that is broken for
    one sheet is dear. So each choice of sizes is tried too; of many sizes, each alone.
    """
    places = tuple(face.place for face in shelf)
    if len(places) > MOST_CHOICES or not any(_together(face) > 1 for face in shelf):
        return [places, *((place,) for place in places if len(places) > 1)]
    return [some for size in range(len(places), 0, -1) for some in combinations(places, size)]


def _together(face: Face) -> int:
    return 1 if face.sold_by is None else int(face.sold_by.value)


def on_sale(shelf: Sequence[Face]) -> tuple[tuple[int, ...], ...]:
    """Places of the sizes that can be bought, in the order in which they are tried.

    First those with a price; then the item's own size, also where only that is large enough.
    What is free was found, and is found no second time.
    """
    priced = tuple(face.place for face in shelf if face.each)
    own = (0,)
    return (priced, own) if priced and 0 not in priced else (priced or own,)


def partly_priced(shelf: Sequence[Face]) -> Mapping[bool, tuple[Face, ...]] | None:
    """The sizes with a price (True) and without (False); None where all are alike in that."""
    found = {
        said: tuple(face for face in shelf if (face.price is not None) is said)
        for said in (True, False)
    }
    return found if all(found.values()) else None
