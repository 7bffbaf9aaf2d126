"""Pieces of every stage laid out on the sheets of the shelf, and what must be bought for them.

What can be cut now comes first; what waits for a gate is then cut from what is left, so that a
reading never moves a piece that is cut already. Where that does not go up, all are laid out
together.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction

from foredge.contract import Build, Cutting, Flat, Problem, SheetNeed
from foredge.plan.sheets.pool import Pool, Wanted, pool_of, ways_of
from foredge.plan.sheets.problems import cutting_problems
from foredge.plan.sheets.shelf import Shelf


def plan_cutting(build: Build) -> tuple[Cutting, list[Problem]]:
    """The cutting plan of all copies, item by item in the order of the shelf."""
    made = [
        _cut(build, name, item)
        for name, item in build.book.stock.items()
        if isinstance(item, Flat) and any(piece.stock == name for piece in build.whole.pieces)
    ]
    whole = Cutting(
        tuple(sheet for one in made for sheet in one.sheets),
        tuple(need for one in made for need in one.needs),
        tuple(lost for one in made for lost in one.homeless),
    )
    return whole, cutting_problems(build, whole)


def _cut(build: Build, name: str, item: Flat) -> Cutting:
    """The plan of one stock item. Where its grain is not known, the way that takes less."""
    plans = [_cut_along(build, pool_of(build, name, item, grain)) for grain in ways_of(item)]
    return min(plans, key=_waste)


def _cut_along(build: Build, pool: Pool) -> Cutting:
    """What can be cut now and what waits apart, or together where that needs less."""
    apart = _laid_out(build, pool, pool.rounds())
    if not apart.homeless and not any(need.buy for need in apart.needs):
        return apart
    return min(apart, _laid_out(build, pool, pool.rounds(together=True)), key=_waste)


def _waste(cutting: Cutting) -> tuple[int, Fraction, Fraction, float]:
    """What finds no sheet, what is bought, what is used: by money where money chose, and area."""
    lost = sum(one.count for one in cutting.homeless)
    spent = sum((_spent(need) for need in cutting.needs), Fraction(0))
    used = (need.used * need.each for need in cutting.needs if need.for_money and need.each)
    area = math.fsum(need.area_mm2 for need in cutting.needs)
    return lost, spent, sum(used, Fraction(0)), area


def _spent(need: SheetNeed) -> Fraction:
    """The money of what must be had; the number of sheets the shelf lacks where area chose."""
    return need.paid if need.for_money else Fraction(need.buy)


def _laid_out(build: Build, pool: Pool, rounds: Iterable[tuple[Wanted, ...]]) -> Cutting:
    shelf = Shelf(pool, _least_off_cut_mm(build))
    for wanted in rounds:
        shelf.cut(wanted)
    return shelf.result()


def _least_off_cut_mm(build: Build) -> float:
    said = build.book.bench.keep_from
    return build.book.default("off-cut-least").value if said is None else said.value
