"""The last look at a plan: at the same cost a larger single off-cut, and fewer cuts.

A piece is made by about one cut, and every panel that stays free costs one more: so of two ways to
lay a sheet that leave practically the same off-cut, the one with fewer cuts wins. That is what
turns ragged rows into rows and columns.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from foredge.plan.cutting.insert import Style, insert_all
from foredge.plan.cutting.job import Job
from foredge.plan.cutting.start import fill_sheet
from foredge.plan.cutting.tree import (
    CUT,
    FREE,
    Bin,
    Node,
    all_nodes,
    bin_items,
    copy_without,
    nodes_of,
)

_STEPS = 60
_POWERS = (1.5, 1.05, 2.0, 1.2)
_AS_GOOD = 0.97  # an off-cut with this share of the largest one is practically as large
_GRID_AS_GOOD = 0.9  # the same where equal pieces can lie in plain rows and columns


def tidy(job: Job, bins: Sequence[Bin], rng: Random) -> list[Bin]:
    """The same items on as many sheets or fewer, laid for the largest off-cut and few cuts."""
    if not bins:
        return []
    ranked = sorted(bins, key=lambda b: b.fill / job.stocks[b.stock].area)
    ranked = _empty_out(job, ranked, rng)
    best = max(range(len(ranked)), key=lambda i: largest(ranked[i]))
    for index in sorted({0, best}):
        ranked[index] = _repack(job, ranked[index], rng)
    ranked = [_in_rows(job, bin_) for bin_ in ranked]
    return sorted(ranked, key=lambda b: (b.stock, -b.fill))


def largest(bin_: Bin) -> float:
    """The area of the largest free panel."""
    return max((node.w * node.h for node in all_nodes(bin_) if node.item == FREE), default=0.0)


def cuts(bin_: Bin) -> int:
    """How many cuts free the items of the sheet, those round its zones not counted."""
    return sum(len(node.kids) - 1 for node in all_nodes(bin_) if node.item == CUT)


def _empty_out(job: Job, bins: list[Bin], rng: Random) -> list[Bin]:
    """Move items from the emptiest sheet to free panels of the others; it keeps the rest."""
    leaves: list[Node] = []
    others = [copy_without(bin_, set(), leaves, [], job.area) for bin_ in bins[1:]]
    items = sorted(bin_items(bins[0]), key=lambda i: -job.area[i])
    left, _ = insert_all(job, leaves, items, Style(1.5), rng.random)
    if len(left) == len(items):
        return bins
    kept = set(left)
    moved = {node for node in nodes_of(bins[0]) if node.item >= 0 and node.item not in kept}
    first = copy_without(bins[0], moved, [], [], job.area)
    return [first, *others] if left else others


def _repack(job: Job, bin_: Bin, rng: Random) -> Bin:
    """Lay one sheet anew in random orders; of those with the largest off-cut the least cut one."""
    items = bin_items(bin_)
    found = [(largest(bin_), cuts(bin_), bin_)]
    for step in range(_STEPS):
        keys = {i: job.area[i] * (0.5 + rng.random()) for i in items}
        if step % 3 == 0:  # equal pieces one after the other
            shared = {job.kind[i]: keys[i] for i in items}
            keys = {i: shared[job.kind[i]] for i in items}
        order = sorted(items, key=lambda i: (-keys[i], job.kind[i]))
        skip, swap = 0.02 if step > 8 else 0.0, 0.1 if step > 4 else 0.0
        style = Style(_POWERS[step % 4], skip, swap, 0.25 if step % 2 else 1.0)
        tried, left, _ = fill_sheet(job, bin_.stock, bin_.way, order, style, rng.random)
        if not left:
            found.append((largest(tried), cuts(tried), tried))
    return _choose(found, _AS_GOOD)


def _choose(found: Sequence[tuple[float, int, Bin]], share: float) -> Bin:
    """The fewest cuts among the sheets whose off-cut is within ``share`` of the largest."""
    most = max(area for area, _, _ in found)
    good = [entry for entry in found if entry[0] >= share * most]
    return min(good, key=lambda entry: (entry[1], -entry[0]))[2]


def _in_rows(job: Job, bin_: Bin) -> Bin:
    """A sheet of equal pieces in plain rows and columns, where that costs little of the off-cut."""
    items = bin_items(bin_)
    if len(bin_.roots) > 1 or len({job.kind[item] for item in items}) > 1:
        return bin_
    own = (largest(bin_), cuts(bin_), bin_)
    grids = [(largest(grid), cuts(grid), grid) for grid in _grids(job, bin_, items)]
    good = [grid for grid in grids if grid[0] >= _GRID_AS_GOOD * own[0] and grid[1] <= own[1]]
    return _choose(good, _GRID_AS_GOOD) if good else bin_


def _grids(job: Job, bin_: Bin, items: list[int]) -> Iterator[Bin]:
    """Every way to lay equal pieces in full rows (or columns), the last perhaps shorter."""
    root = bin_.roots[0]
    for sides in job.sides[items[0]]:
        for axis in (0, 1):
            along, across = sides[axis], sides[1 - axis]
            for number in range(1, min(len(items), int(_length(root, axis) / along)) + 1):
                if -(-len(items) // number) * across <= _length(root, 1 - axis):
                    rows = [items[i : i + number] for i in range(0, len(items), number)]
                    yield _grid(bin_, rows, axis, along, across)


def _grid(bin_: Bin, rows: list[list[int]], axis: int, along: float, across: float) -> Bin:
    """Rows along ``axis``: first what is beside them is cut off, then one row after the other."""
    twin = Bin(bin_.stock, bin_.way)
    twin.fill, twin.mask = bin_.fill, bin_.mask
    root = Node(bin_.roots[0].w, bin_.roots[0].h, CUT, None, twin)
    root.axis = axis
    block = _kid(root, len(rows[0]) * along)
    block.item, block.axis = CUT, 1 - axis
    for row in rows:
        strip = _kid(block, across)
        strip.item, strip.axis = CUT, axis
        for item in row:
            _kid(strip, along).item = item
        _rest(strip)
    _rest(block)
    _rest(root)
    twin.roots = [_slim(root)]
    return twin


def _length(node: Node, axis: int) -> float:
    return node.h if axis else node.w


def _kid(node: Node, size: float) -> Node:
    """A new part of ``size`` cut off a panel along its axis."""
    w, h = (node.w, size) if node.axis else (size, node.h)
    kid = Node(w, h, FREE, node, node.home)
    node.kids.append(kid)
    return kid


def _rest(node: Node) -> None:
    """What the kids of a cut panel leave becomes a free kid."""
    size = _length(node, node.axis) - sum(_length(kid, node.axis) for kid in node.kids)
    if size > 0:
        _kid(node, size)


def _slim(node: Node) -> Node:
    """The panel without any that would be cut into one part only."""
    node.kids = [_slim(kid) for kid in node.kids]
    if len(node.kids) != 1:
        for kid in node.kids:
            kid.up = node
        return node
    node.kids[0].up = None
    return node.kids[0]
