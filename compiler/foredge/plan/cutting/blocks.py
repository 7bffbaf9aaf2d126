"""Sheets filled without waste, built from the pieces upwards.

Two blocks that share a side length join into a larger block; a block as large as a sheet is a
perfect sheet. This is the method of P. Y. Wang, "Two algorithms for constrained two-dimensional
cutting stock problems", Operations Research 31 (1983), pp. 573-586, with no waste allowed. Where
pieces do come from whole sheets hardly any other lengths agree by chance, so few blocks arise.
"""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heappop, heappush

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import CUT, Bin, Node

_MOST_BLOCKS = 60_000
_PER_WORK = 3  # blocks are counted finer than the steps of the search: so much for one of those


class Block:
    """Pieces that fill a rectangle w by h; ``turn``: all of them may be turned."""

    __slots__ = ("axis", "h", "item", "mask", "parts", "turn", "w")

    def __init__(self, w: float, h: float, mask: int, turn: bool, item: int) -> None:
        self.w = w
        self.h = h
        self.mask = mask
        self.turn = turn
        self.item = item
        self.axis = 0
        self.parts: tuple[Block, ...] = ()


def perfect_bins(job: Job, items: Sequence[int], budget: int) -> tuple[list[Bin], int]:
    """Sheets that some ``items`` fill without waste, few pieces first; and the work done."""
    builder = _Builder(job, _PER_WORK * budget)
    builder.run(items)
    return builder.bins, builder.work // _PER_WORK


class _Builder:
    """One bounded run from single pieces to perfect sheets."""

    def __init__(self, job: Job, budget: int) -> None:
        self.job, self.budget = job, budget
        self.work = 0
        self.bins: list[Bin] = []
        self.waiting: list[tuple[int, float, int, Block]] = []
        self.known: set[tuple[float, float, int]] = set()
        self.by_side: tuple[dict[float, list[Block]], dict[float, list[Block]]] = ({}, {})
        self.targets: dict[tuple[float, float], list[tuple[int, int]]] = {}
        for index, stock in enumerate(job.stocks):
            for way, panels in enumerate(stock.panels):
                if stock.count and len(panels) == 1:
                    self.targets.setdefault(panels[0], []).append((index, way))

    def run(self, items: Sequence[int]) -> None:
        for item in items:
            sides = self.job.sides[item]
            w, h = sides[0]
            turn = len(sides) > 1 or w == h
            self._offer(Block(w, h, 1 << item, turn, item))
        while self.waiting and self.work < self.budget:
            self._join_all(heappop(self.waiting)[3])

    def _offer(self, block: Block) -> None:
        """Keep a new block when it may still grow to a whole sheet, or is one."""
        w, h = (block.h, block.w) if block.turn and block.w > block.h else (block.w, block.h)
        key = (w, h, block.mask)
        self.work += 8 + 8 * len(self.targets)
        if key in self.known or len(self.known) >= _MOST_BLOCKS:
            return
        grows = False
        for (width, height), homes in self.targets.items():
            for v, g in ((w, h), (h, w)) if block.turn else ((w, h),):
                if v == width and g == height:
                    self._finish(block, (v, g) != (block.w, block.h), homes)
                elif self._room(width, v) and self._room(height, g):
                    grows = True
        self.known.add(key)
        if grows:
            entry = (block.mask.bit_count(), -w * h, len(self.known), block)
            heappush(self.waiting, entry)

    def _room(self, whole: float, size: float) -> bool:
        return size == whole or whole - size >= self.job.least_side

    def _finish(self, block: Block, turned: bool, homes: list[tuple[int, int]]) -> None:
        self.work += 10 * block.mask.bit_count()
        for stock, way in homes:
            bin_ = Bin(stock, way)
            bin_.roots = [_node(block, turned, None, bin_)]
            bin_.mask = block.mask
            bin_.fill = block.w * block.h
            self.bins.append(bin_)

    def _join_all(self, block: Block) -> None:
        """Join a block with every earlier one of the same width or height; then file it."""
        ways = [(block.w, block.h)]
        if block.turn and block.w != block.h:
            ways.append((block.h, block.w))
        for w, h in ways:
            for other in self.by_side[1].get(h, ()):
                self._join(block, w, other, 0, h)
            for other in self.by_side[0].get(w, ()):
                if not (block.turn and other.turn):  # else the turned join above is the same
                    self._join(block, h, other, 1, w)
        for w, h in ways:
            self.by_side[0].setdefault(w, []).append(block)
            self.by_side[1].setdefault(h, []).append(block)

    def _join(self, block: Block, size: float, other: Block, axis: int, side: float) -> None:
        """Side by side (axis 0) along the common height ``side``, or stacked (axis 1)."""
        self.work += 2
        if block.mask & other.mask or self.work > self.budget:
            return
        if axis:
            more = other.h if other.w == side else other.w
        else:
            more = other.w if other.h == side else other.h
        w, h = (side, size + more) if axis else (size + more, side)
        joined = Block(w, h, block.mask | other.mask, block.turn and other.turn, CUT)
        joined.axis, joined.parts = axis, (block, other)
        self._offer(joined)


def _node(block: Block, turned: bool, up: Node | None, home: Bin) -> Node:
    """The panel of a block, ``turned`` by 90 degrees or as it was built."""
    w, h = (block.h, block.w) if turned else (block.w, block.h)
    node = Node(w, h, block.item, up, home)
    if block.item == CUT:
        node.axis = 1 - block.axis if turned else block.axis
        node.kids = _kids(block, turned, node)
    return node


def _kids(block: Block, turned: bool, node: Node) -> list[Node]:
    found: list[Node] = []
    for part in block.parts:
        side = block.w if block.axis else block.h
        across = (part.w if block.axis else part.h) != side  # joined by its other side
        flipped = turned != across
        if part.item == CUT and (1 - part.axis if flipped else part.axis) == node.axis:
            found += _kids(part, flipped, node)
        else:
            found.append(_node(part, flipped, node, node.home))
    return found
