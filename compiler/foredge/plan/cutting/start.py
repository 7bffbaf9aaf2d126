"""The first plan: fill one sheet after another, always the size that pays best.

A filled sheet is a closed pattern: while enough pieces of its kinds are left it is cut again,
so hundreds of equal folios cost no more than one sheet of them.
"""

from __future__ import annotations

from collections import Counter, defaultdict, deque
from collections.abc import Callable

from foredge.plan.cutting.closed import Closed, closed_bin
from foredge.plan.cutting.insert import Style, insert_all
from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import CUT, FREE, Bin, Node, all_nodes, bin_items, fresh

_MOST_TRIED = 120
Random = Callable[[], float]
Yields = dict[int, Closed]


def fill_sheet(
    job: Job, stock: int, way: int, order: list[int], style: Style, random: Random
) -> tuple[Bin, list[int], int]:
    """One fresh sheet filled with items in ``order``; also the items left and the work done."""
    leaves: list[Node] = []
    filled = fresh(stock, way, job.stocks[stock].panels[way], leaves)
    left, work = insert_all(job, leaves, order, style, random)
    return filled, left, work


def fill_all(
    job: Job, order: list[int], style: Style, random: Random, yields: Yields | None = None
) -> tuple[list[Bin], list[int], int]:
    """Fill sheets until every item lies or no sheet is left: bins, items left, work done.

    ``yields``: sheets full of equal pieces are tried too; known yields are kept here by kind.
    """
    counts = [stock.count for stock in job.stocks]
    bins: list[Bin] = []
    work = 0
    while order:
        best: tuple[tuple[float, float], Bin] | None = None
        tried = _sample(order)
        equal = [] if yields is None else _most_equal(job, order)
        for index, stock in enumerate(job.stocks):
            for way in range(len(stock.ways) if counts[index] else 0):
                filled, left, done = fill_sheet(job, index, way, tried, style, random)
                work += done + 10
                last = not left and len(tried) == len(order)
                offers = [(_rate(job, filled, last), filled)]
                if equal and yields is not None:
                    table = yields.setdefault(job.kind[equal[0]], Closed(job.sides[equal[0]]))
                    full = closed_bin(job, index, way, table, equal)
                    if full is not None:
                        work += _complete(job, full, tried, style, random)
                        offers.append((_rate(job, full, False), full))
                worth = [offer for offer in offers if offer[1].fill]
                best = max([best, *worth] if best else worth, key=_first_of, default=None)
        if best is None:
            break
        chosen = best[1]
        if len(tried) < len(order):
            work += _complete(job, chosen, order, style, random)
        taken = set(bin_items(chosen))
        left = [item for item in order if item not in taken]
        counts[chosen.stock] -= 1
        repeats, order = repeat(job, chosen, left, counts[chosen.stock])
        counts[chosen.stock] -= len(repeats)
        bins += [chosen, *repeats]
    return bins, order, work


def _first_of(offer: tuple[tuple[float, float], Bin]) -> tuple[float, float]:
    return offer[0]


def _most_equal(job: Job, order: list[int]) -> list[int]:
    """The items of the kind with the largest area in all, when there are several of it."""
    groups: dict[int, list[int]] = defaultdict(list)
    for item in order:
        groups[job.kind[item]].append(item)
    best = max(groups.values(), key=lambda items: len(items) * job.area[items[0]])
    return best if len(best) > 1 else []


def _complete(job: Job, full: Bin, tried: list[int], style: Style, random: Random) -> int:
    """Use the free panels of a filled sheet for other items; the work done."""
    taken = set(bin_items(full))
    leaves = [node for node in all_nodes(full) if node.item == FREE]
    rest = [item for item in tried if item not in taken]
    return insert_all(job, leaves, rest, style, random)[1]


def _sample(order: list[int]) -> list[int]:
    """All of a short list; of a long one the first items and some from all over the rest."""
    if len(order) <= 2 * _MOST_TRIED:
        return order
    step = (len(order) - _MOST_TRIED) // _MOST_TRIED
    return order[:_MOST_TRIED] + order[_MOST_TRIED::step]


def _rate(job: Job, filled: Bin, last: bool) -> tuple[float, float]:
    """What a filled sheet is worth: yield for its cost, or the least cost where it is the last."""
    cost = job.stocks[filled.stock].cost
    if last:
        return (1.0, -float(cost))
    return (0.0, filled.fill / cost)


def repeat(job: Job, pattern: Bin, left: list[int], most: int) -> tuple[list[Bin], list[int]]:
    """Cut the same pattern again from the items ``left`` while all its kinds are there."""
    need = Counter(job.kind[item] for item in bin_items(pattern))
    if not most or not left:
        return [], left
    have = Counter(job.kind[item] for item in left if job.kind[item] in need)
    times = min(most, min(have[kind] // number for kind, number in need.items()))
    if times <= 0:
        return [], left
    pools: dict[int, deque[int]] = defaultdict(deque)
    for item in left:
        pools[job.kind[item]].append(item)
    copies = [_twin(job, pattern, pools) for _ in range(times)]
    used = {item for twin in copies for item in bin_items(twin)}
    return copies, [item for item in left if item not in used]


def _twin(job: Job, pattern: Bin, pools: dict[int, deque[int]]) -> Bin:
    twin = Bin(pattern.stock, pattern.way)
    twin.fill = pattern.fill
    twin.roots = [_twin_node(job, root, None, twin, pools) for root in pattern.roots]
    return twin


def _twin_node(
    job: Job, node: Node, up: Node | None, home: Bin, pools: dict[int, deque[int]]
) -> Node:
    copy = Node(node.w, node.h, node.item, up, home)
    copy.axis = node.axis
    if node.item == CUT:
        copy.kids = [_twin_node(job, kid, copy, home, pools) for kid in node.kids]
    elif node.item != FREE:
        copy.item = pools[job.kind[node.item]].popleft()
        home.mask |= 1 << copy.item
    return copy
