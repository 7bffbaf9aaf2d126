"""Proven lower bounds: what no plan can go below.

The area bound is the cheapest multiset of sheets with enough area. The same cover is asked for
with scaled lengths (see ``scales``): where no row of pieces within a width W counts more than
f(W), and none within a height H more than g(H), a sheet holds at most f(W) g(H) of the scaled
areas f(w) g(h) of its pieces (Fekete and Schepers 2001). Functions that are monotone and never
count two lengths less than their sum hold for every sheet size at once. A piece that may be turned
counts with the smaller of its two values, so the bounds hold with and without turning; on square
sheets that is no weaker than cutting it into squares, as M. Dell'Amico, S. Martello and D. Vigo do
in "A lower bound for the non-oriented two-dimensional bin packing problem", Discrete Applied
Mathematics 118 (2002), pp. 13-24.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from foredge.plan.cutting.job import Job, Stock
from foredge.plan.cutting.scales import scales

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_MOST_SUMS = 4_000
_MOST_STEPS = 100_000
_FEW_STEPS = 15_000
_MOST_EXACT = 3  # pairs of scales whose cover is found exactly

Way = tuple[float, float]


def least_cost(job: Job) -> int:
    """A lower bound on the cost (in the job's units) of any plan that places every item."""
    return scaled_cost(job, area_cost(job)) if job.area else 0


def area_cost(job: Job) -> int:
    """The bound by area alone: quickly found, and often enough."""
    live = [stock for stock in job.stocks if stock.count]
    if not job.area:
        return 0
    return max(min(stock.cost for stock in live), cheapest_cover(live, _bare_area(job)))


def _bare_area(job: Job) -> float:
    """Area of the items without their kerf."""
    gap = job.kerf
    return sum((sides[0][0] - gap) * (sides[0][1] - gap) for sides in job.sides)


def cheapest_cover(live: list[Stock], need: float, most_steps: int = _MOST_STEPS) -> int:
    """The least cost of sheets, counts kept, whose areas add up to ``need`` or more.

    Exact while the table stays small, else the fractional bound.
    """
    rates = sorted(live, key=lambda stock: stock.cost / stock.area)
    left, total = need, 0.0
    for stock in rates:
        take = min(left / stock.area, stock.count)
        total += take * stock.cost
        left -= take * stock.area
        if left <= 0:
            break
    fractional = math.ceil(total * (1 - 1e-12))
    exact = _cover_table(live, need, most_steps)
    return fractional if exact is None else max(exact, fractional)


def _cover_table(live: list[Stock], need: float, most_steps: int) -> int | None:
    """Exact cover by a table of undominated (area, cost) sums; None when it grows too large."""
    front: dict[float, int] = {0.0: 0}
    best: int | None = None
    steps = 0
    for stock in sorted(live, key=lambda stock: -stock.area):
        grown = dict(front)
        level = front
        for _ in range(stock.count):
            following: dict[float, int] = {}
            for area, cost in level.items():
                steps += 1
                area, cost = area + stock.area, cost + stock.cost
                if best is not None and cost >= best:
                    continue
                if area >= need:
                    best = cost
                elif cost < grown.get(area, cost + 1):
                    grown[area] = following[area] = cost
            level = following
            if not level:
                break
            if steps > most_steps:
                return None
        front = _undominated(grown, best)
        if len(front) > _MOST_SUMS:
            return None
    return best


def _undominated(sums: dict[float, int], best: int | None) -> dict[float, int]:
    """Drop sums for which another has at least the area at no more cost."""
    kept: dict[float, int] = {}
    lowest: float = math.inf if best is None else best
    for area in sorted(sums, reverse=True):
        if sums[area] < lowest:
            lowest = sums[area]
            kept[area] = sums[area]
    return kept


def scaled_cost(job: Job, least: int) -> int:
    """The best bound over pairs of scales, or ``least``: sheets must hold all scaled areas."""
    import numpy as np  # not needed where the first plan is proven already

    live = [stock for stock in job.stocks if stock.count]
    ways, numbers = _ways(job, max(s.width for s in live), max(s.height for s in live))
    across = _values(ways, numbers, 0, [s.width for s in live])
    down = _values(ways, numbers, 1, [s.height for s in live])
    one, two = (across[k][:, None, :] * down[k][None, :, :] for k in (0, 1))
    needs = (np.minimum(one, two) @ np.array(numbers, dtype=float)).ravel()
    rooms = (across[2][:, None, :] * down[2][None, :, :]).reshape(len(needs), len(live))
    shares = _shares(live, rooms, needs)
    for pair in np.argsort(-shares, kind="stable")[:_MOST_EXACT]:
        scaled = [
            replace(s, area=float(r)) for s, r in zip(live, rooms[pair], strict=True) if r > 0
        ]
        least = max(least, cheapest_cover(scaled, float(needs[pair]) * (1 - 1e-9), _FEW_STEPS))
    return least


def _ways(job: Job, wide: float, high: float) -> tuple[list[tuple[Way, Way]], list[int]]:
    """Each kind of item as it lies one way and the other (twice the same where it may not turn)."""
    kinds: dict[int, tuple[tuple[Way, ...], int]] = {}
    for item, kind in enumerate(job.kind):
        kinds[kind] = (job.sides[item], kinds.get(kind, ((), 0))[1] + 1)
    pairs, numbers = [], []
    for sides, number in kinds.values():
        fitting = [(w, h) for w, h in sides if w <= wide and h <= high] or list(sides)
        pairs.append((fitting[0], fitting[-1]))
        numbers.append(number)
    return pairs, numbers


def _values(
    ways: list[tuple[Way, Way]], numbers: list[int], axis: int, lengths: list[float]
) -> tuple[Floats, Floats, Floats]:
    """Each scale of one axis (rows) for the kinds both ways round, and for the sheets."""
    import numpy as np

    sizes = [
        [one[axis], two[axis]]
        for (one, two), number in zip(ways, numbers, strict=True)
        for _ in range(number)
    ]
    found = scales(sizes, max(lengths), alone=len(set(lengths)) == 1)
    ones = np.array([[f(one[axis]) for one, _ in ways] for f in found])
    twos = np.array([[f(two[axis]) for _, two in ways] for f in found])
    return ones, twos, np.array([[f(length) for length in lengths] for f in found])


def _shares(live: list[Stock], rooms: Floats, needs: Floats) -> Floats:
    """For each row the least cost of sheets that hold the need, parts of sheets allowed."""
    import numpy as np

    costs = np.array([float(stock.cost) for stock in live])
    counts = np.array([float(stock.count) for stock in live])
    rates = costs / np.maximum(rooms, 1e-12)  # a sheet without room comes last and pays nothing
    order = np.argsort(rates, axis=1, kind="stable")
    whole = np.take_along_axis(rooms * counts, order, axis=1)
    before = np.cumsum(whole, axis=1) - whole
    taken = np.clip(needs[:, None] - before, 0.0, whole)
    total: Floats = (taken * np.take_along_axis(rates, order, axis=1)).sum(axis=1)
    return total
