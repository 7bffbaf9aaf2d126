"""Proven lower bounds: what no plan can go below.

The area bound is the cheapest multiset of sheets with enough area. For one sheet size there are
also dual feasible functions: S. P. Fekete and J. Schepers, "New classes of fast lower bounds for
bin packing problems", Mathematical Programming 91 (2001), pp. 11-31. A piece that may be turned
counts with the smaller of its two values, so the bounds hold with and without turning.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import product
from operator import mul

from foredge.plan.cutting.job import Job, Stock

_MOST_SUMS = 4_000
_MOST_STEPS = 100_000
_MOST_THRESHOLDS = 16

Dual = Callable[[float], float]


def least_cost(job: Job) -> int:
    """A lower bound on the cost (in the job's units) of any plan that places every item."""
    if not job.area:
        return 0
    need = _bare_area(job)
    live = [stock for stock in job.stocks if stock.count]
    cheapest = min(stock.cost for stock in live)
    bound = max(cheapest, cheapest_cover(live, need))
    if len({(stock.width, stock.height) for stock in live}) == 1:
        bound = max(bound, _cheapest_count(live, least_sheets(job, live[0])))
    return bound


def _bare_area(job: Job) -> float:
    """Area of the items without their kerf."""
    gap = job.kerf
    return sum((sides[0][0] - gap) * (sides[0][1] - gap) for sides in job.sides)


def _cheapest_count(live: list[Stock], number: int) -> int:
    costs = [stock.cost for stock in live for _ in range(stock.count)]
    return sum(sorted(costs)[:number])


def cheapest_cover(live: list[Stock], need: float) -> int:
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
    exact = _cover_table(live, need)
    return fractional if exact is None else max(exact, fractional)


def _cover_table(live: list[Stock], need: float) -> int | None:
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
            if steps > _MOST_STEPS:
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


def least_sheets(job: Job, stock: Stock) -> int:
    """A lower bound on the number of sheets of one size for all items."""
    need = sum(job.area)
    count = math.ceil(need / (stock.width * stock.height) - 1e-9)
    kinds: dict[int, tuple[tuple[tuple[float, float], ...], int]] = {}
    for item, kind in enumerate(job.kind):
        kinds[kind] = (job.sides[item], kinds.get(kind, ((), 0))[1] + 1)
    # Every item kind twice: as it lies one way and the other (the same way where it may not turn).
    pairs, numbers = [], []
    for sides, number in kinds.values():
        fitting = [(w, h) for w, h in sides if w <= stock.width and h <= stock.height]
        pairs.append((fitting[0], fitting[-1]))
        numbers.append(number)
    lengths = [length for pair in pairs for length in pair[0]]
    across = [
        (
            [f(one[0]) * n for (one, _), n in zip(pairs, numbers, strict=True)],
            [f(two[0]) * n for (_, two), n in zip(pairs, numbers, strict=True)],
        )
        for f in _duals(lengths, stock.width)
    ]
    down = [
        ([f(one[1]) for one, _ in pairs], [f(two[1]) for _, two in pairs])
        for f in _duals(lengths, stock.height)
    ]
    for (w_one, w_two), (h_one, h_two) in product(across, down):
        total = sum(map(min, map(mul, w_one, h_one), map(mul, w_two, h_two)))
        count = max(count, math.ceil(total - 1e-9))
    return count


def _duals(sizes: list[float], whole: float) -> list[Dual]:
    """Dual feasible functions on [0, whole], scaled so that the whole counts 1."""
    half = whole / 2
    small = sorted({s for s in sizes if s <= half} | {whole - s for s in sizes if half < s < whole})
    if len(small) > _MOST_THRESHOLDS:
        small = [small[i * len(small) // _MOST_THRESHOLDS] for i in range(_MOST_THRESHOLDS)]
    found: list[Dual] = [lambda x: x / whole]
    found += [_step(k, whole) for k in (1, 2, 3, 4)]
    found += [_push(limit, whole) for limit in small]
    found += [_half(limit, whole) for limit in small]
    return found


def _step(k: int, whole: float) -> Dual:
    """u(k): multiples of 1/(k+1) keep their size, others are rounded down to 1/k."""

    def value(x: float) -> float:
        part = x * (k + 1) / whole
        return x / whole if part == int(part) else math.floor(part) / k

    return value


def _push(limit: float, whole: float) -> Dual:
    """U(limit): sizes above whole - limit count as the whole, below limit as nothing."""

    def value(x: float) -> float:
        if x > whole - limit:
            return 1.0
        return x / whole if x >= limit else 0.0

    return value


def _half(limit: float, whole: float) -> Dual:
    """phi(limit): sizes counted in whole multiples of the limit, rounded to favour large ones."""
    most = math.floor(whole / limit)

    def value(x: float) -> float:
        if 2 * x > whole:
            return 1.0 - math.floor((whole - x) / limit) / most
        if 2 * x == whole:
            return 0.5
        return math.floor(x / limit) / most

    return value
