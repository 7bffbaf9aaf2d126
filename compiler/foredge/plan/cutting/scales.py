"""Functions of a length for lower bounds: what lies side by side never counts more than the whole.

Each function f is such that pieces whose lengths add up to at most W have values that add up to at
most f(W). S. P. Fekete and J. Schepers, "New classes of fast lower bounds for bin packing
problems", Mathematical Programming 91 (2001), pp. 11-31 (``_step``, ``_push``); M. A. Boschetti
and A. Mingozzi, "The two-dimensional finite bin packing problem, part I", 4OR 1 (2003),
pp. 27-42 (``_half``); J. Carlier, F. Clautiaux and A. Moukrim, "New reduction procedures and lower
bounds for the two-dimensional bin packing problem with fixed orientation", Computers & Operations
Research 34 (2007), pp. 2223-2250 (``_count``). Cited from memory.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable
from itertools import accumulate

_MOST_THRESHOLDS = 32

Scale = Callable[[float], float]


def scales(sizes: list[list[float]], whole: float, *, alone: bool) -> list[Scale]:
    """Functions for lengths up to ``whole``; ``sizes``: for each piece the lengths it may have.

    ``alone``: all sheets are ``whole`` long; then there are also functions that count how many of
    these very pieces fit.
    """
    half = whole / 2
    flat = {s for lengths in sizes for s in lengths if s < whole}
    small = sorted({s for s in flat if s <= half} | {whole - s for s in flat if s > half})
    if len(small) > _MOST_THRESHOLDS:
        small = [small[i * len(small) // _MOST_THRESHOLDS] for i in range(_MOST_THRESHOLDS)]
    found: list[Scale] = [lambda x: x / whole]
    found += [_step(k, whole) for k in (1, 2, 3, 4)]
    found += [_push(limit, whole) for limit in small]
    found += [_half(limit, whole) for limit in small]
    if alone:
        found += [_count(limit, whole, sizes) for limit in small]
    return found


def _step(k: int, whole: float) -> Scale:
    """u(k): multiples of 1/(k+1) keep their size, others are rounded down to 1/k."""

    def value(x: float) -> float:
        part = x * (k + 1) / whole
        return x / whole if part == int(part) else math.floor(part) / k

    return value


def _push(limit: float, whole: float) -> Scale:
    """U(limit): sizes above whole - limit count as the whole, below limit as nothing."""

    def value(x: float) -> float:
        if x > whole - limit:
            return 1.0
        return x / whole if x >= limit else 0.0

    return value


def _half(limit: float, whole: float) -> Scale:
    """Sizes counted in whole multiples of the limit, rounded to favour large ones."""
    most = math.floor(whole / limit)

    def value(x: float) -> float:
        if 2 * x > whole:
            return 1.0 - math.floor((whole - x) / limit) / most
        if 2 * x == whole:
            return 0.5
        return math.floor(x / limit) / most

    return value


def _count(limit: float, whole: float, sizes: list[list[float]]) -> Scale:
    """How many pieces of medium size a large one keeps out; small ones count as nothing."""
    half = whole / 2
    medium = sorted(
        min(fitting) for lengths in sizes if (fitting := [s for s in lengths if limit <= s <= half])
    )
    sums = list(accumulate(medium))
    most = bisect_right(sums, whole)

    def value(x: float) -> float:
        if x > half:
            kept = bisect_right(sums, whole - x)
            return 1.0 - kept / most if most else 1.0
        return 1.0 / most if most and x >= limit else 0.0

    return value
