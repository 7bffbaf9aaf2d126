"""Tasks with many equal pieces: patterns first, then a small task with what they leave."""

from __future__ import annotations

from collections import deque
from dataclasses import replace

from foredge.plan.cutting.columns import Pattern, kinds_of, often
from foredge.plan.cutting.job import Job
from foredge.plan.cutting.strips import Stack
from foredge.plan.cutting.tree import CUT, FREE, Bin, Node, all_nodes

_LEAST_ITEMS = 30
_LEAST_REPEATS = 3


def repeats(job: Job) -> bool:
    """Whether the items repeat so often that patterns pay."""
    return len(job.kind) >= max(_LEAST_ITEMS, _LEAST_REPEATS * len(set(job.kind)))


def patterned(job: Job, budget: int) -> tuple[list[Bin], list[int], int]:
    """Sheets cut in the best patterns, the items they leave, and the work done."""
    kinds = kinds_of(job)
    chosen, work = often(job, kinds, budget)
    pools = [deque(items) for items in kinds.items]
    shelf = [stock.count for stock in job.stocks]
    bins: list[Bin] = []
    for pattern, times in chosen:
        need = [(pool, n) for pool, n in zip(pools, pattern.counts(len(pools)), strict=True) if n]
        times = min(times, shelf[pattern.stock], *(len(pool) // n for pool, n in need))
        shelf[pattern.stock] -= max(times, 0)
        for _ in range(times):
            bins.append(_bin_of(job, pattern, pools))
            work += 100
    return bins, [item for pool in pools for item in pool], work


def rest_of(job: Job, bins: list[Bin], left: list[int]) -> Job:
    """The task of the items ``left`` on the sheets that ``bins`` leave on the shelf."""
    used = [0] * len(job.stocks)
    for bin_ in bins:
        used[bin_.stock] += 1
    stocks = [replace(s, count=s.count - n) for s, n in zip(job.stocks, used, strict=True)]
    least = min(min(side) for item in left for side in job.sides[item])
    return replace(
        job,
        stocks=tuple(stocks),
        sides=[job.sides[item] for item in left],
        area=[job.area[item] for item in left],
        kind=[job.kind[item] for item in left],
        piece=[job.piece[item] for item in left],
        least_side=least,
    )


def renamed(bins: list[Bin], names: list[int]) -> list[Bin]:
    """The same sheets with item i called ``names[i]``."""
    for bin_ in bins:
        bin_.mask = 0
        for node in all_nodes(bin_):
            if node.item >= 0:
                node.item = names[node.item]
                bin_.mask |= 1 << node.item
    return bins


def _bin_of(job: Job, pattern: Pattern, pools: list[deque[int]]) -> Bin:
    bin_ = Bin(pattern.stock, pattern.way)
    w, h = job.stocks[pattern.stock].panels[pattern.way][0]
    axis = pattern.axis
    root = Node(w, h, CUT, None, bin_)
    bin_.roots = [root]
    root.axis = 1 - axis
    for strip in pattern.strips:
        long = _panel(root, axis, root.h if axis else root.w, strip.across)
        long.item, long.axis = CUT, axis
        for stack in strip.stacks:
            _stack(long, axis, stack, pools[stack.kind])
        _rest(long)
    _rest(root)
    bin_.fill = sum(job.area[node.item] for node in all_nodes(bin_) if node.item >= 0)
    return bin_


def _panel(up: Node, axis: int, along: float, across: float) -> Node:
    w, h = (across, along) if axis else (along, across)
    node = Node(w, h, FREE, up, up.home)
    up.kids.append(node)
    return node


def _stack(strip: Node, axis: int, stack: Stack, pool: deque[int]) -> None:
    """Equal pieces one behind the other across the strip."""
    across = strip.w if axis else strip.h
    column = strip
    if stack.number > 1 or stack.across != across:
        column = _panel(strip, axis, stack.along, across)
        column.item, column.axis = CUT, 1 - axis
    for _ in range(stack.number):
        node = _panel(column, axis, stack.along, stack.across)
        node.item = pool.popleft()
        node.home.mask |= 1 << node.item
    if column is not strip:
        _rest(column)


def _rest(node: Node) -> None:
    """What the kids of a cut panel leave becomes a free kid."""
    if node.axis:
        free = node.h - sum(kid.h for kid in node.kids)
        size = (node.w, free)
    else:
        free = node.w - sum(kid.w for kid in node.kids)
        size = (free, node.h)
    if free:
        node.kids.append(Node(*size, FREE, node, node.home))
