"""A few pieces: every set of them in every edge-to-edge way, so the plan is proven the best.

For each set of items the smallest boxes it can be cut from are kept; a depth-first search then
puts the sets on sheets. The work grows threefold with each item, so this is for small tasks.
"""

from __future__ import annotations

from collections.abc import Iterator

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import CUT, FREE, Bin, Node

_MOST_ITEMS = 9
_MOST_WORK = 900_000

Box = tuple[float, float, int, "tuple[Box, ...] | None"]  # w, h, item or axis, what it is made of


def small(job: Job) -> bool:
    """Whether every way can be tried: few items, and sheets without zones to cut round."""
    return len(job.area) <= _MOST_ITEMS and all(
        len(stock.panels) == 1 and len(stock.panels[0]) == 1 for stock in job.stocks
    )


def cheapest(job: Job, limit: int) -> tuple[list[Bin] | None, int, bool]:
    """The cheapest plan below the cost ``limit`` or None; the work; whether that is proven."""
    search = _Small(job, limit)
    finished = search.make_boxes()
    if finished:
        finished = search.dive((1 << len(job.area)) - 1, 0, [])
    bins = None if search.best is None else [search.bin_of(*entry) for entry in search.best]
    return bins, search.work, finished


class _Small:
    """Tables over sets of items (bit masks) and the best plan so far."""

    def __init__(self, job: Job, limit: int) -> None:
        self.job, self.limit, self.work = job, limit, 0
        self.boxes: list[list[Box]] = [[] for _ in range(1 << len(job.area))]
        self.best: list[tuple[int, Box]] | None = None
        self.live = [i for i, stock in enumerate(job.stocks) if stock.count]
        self.order = sorted(self.live, key=lambda i: job.stocks[i].cost)
        self.shelf = [stock.count for stock in job.stocks]
        self.panels = [stock.panels[0][0] for stock in job.stocks]

    def make_boxes(self) -> bool:
        """The smallest boxes of every set that fits a sheet; False when the work is spent."""
        area = [0.0] * len(self.boxes)
        for item, sides in enumerate(self.job.sides):
            area[1 << item] = self.job.area[item]
            self.boxes[1 << item] = self._smallest([(w, h, item, None) for w, h in sides])
        largest = max(self.panels[i][0] * self.panels[i][1] for i in self.live)
        for mask in range(1, len(self.boxes)):
            if mask & (mask - 1) == 0:
                continue
            area[mask] = area[mask & (mask - 1)] + area[mask & -mask]
            if area[mask] > largest:
                continue
            found = self._joined(mask)
            self.work += 10 * len(found)
            self.boxes[mask] = self._smallest(found)
            if self.work > _MOST_WORK:
                return False
        return True

    def _joined(self, mask: int) -> list[Box]:
        """Every box made of two boxes that together hold the set, and no larger than a sheet."""
        widest = max(self.panels[i][0] for i in self.live)
        highest = max(self.panels[i][1] for i in self.live)
        found: list[Box] = []
        boxes = self.boxes
        for part in _halves(mask):
            self.work += 2
            others = boxes[mask ^ part]
            for a in boxes[part] if others else ():
                for b in others:
                    self.work += 4
                    if (w := a[0] + b[0]) <= widest:
                        found.append((w, max(a[1], b[1]), 0, (a, b)))
                    if (h := a[1] + b[1]) <= highest:
                        found.append((max(a[0], b[0]), h, 1, (a, b)))
        return found

    def _smallest(self, boxes: list[Box]) -> list[Box]:
        kept: list[Box] = []
        for box in sorted(boxes, key=_size):
            if (not kept or box[1] < kept[-1][1]) and self._fits(box):
                kept.append(box)
        return kept

    def _fits(self, box: Box) -> bool:
        w, h = box[:2]
        return any(w <= self.panels[i][0] and h <= self.panels[i][1] for i in self.live)

    def dive(self, open_: int, cost: int, chosen: list[tuple[int, Box]]) -> bool:
        """Put a set with the first open item on each kind of sheet; False when work is spent."""
        if not open_:
            self.best, self.limit = list(chosen), cost
            return True
        first = open_ & -open_
        for mask in _subsets(open_ ^ first):
            boxes = self.boxes[mask | first]
            self.work += 3
            if self.work > _MOST_WORK:
                return False
            for index in self.order if boxes else ():
                total = cost + self.job.stocks[index].cost
                if total >= self.limit:
                    break
                box = self._first_fitting(boxes, index) if self.shelf[index] else None
                if box is None:
                    continue
                self.shelf[index] -= 1
                finished = self.dive(open_ & ~(mask | first), total, [*chosen, (index, box)])
                self.shelf[index] += 1
                if not finished:
                    return False
        return True

    def _first_fitting(self, boxes: list[Box], index: int) -> Box | None:
        w, h = self.panels[index]
        self.work += 5
        return next((box for box in boxes if box[0] <= w and box[1] <= h), None)

    def bin_of(self, index: int, box: Box) -> Bin:
        """The sheet cut as the box says."""
        bin_ = Bin(index, 0)
        w, h = self.panels[index]
        bin_.roots = [self._node(box, w, h, None, bin_)]
        return bin_

    def _node(self, box: Box, w: float, h: float, up: Node | None, home: Bin) -> Node:
        """A panel of w by h with the box in it; what is left is cut off behind it."""
        wide, high, name, parts = box
        node = Node(w, h, CUT, up, home)
        if parts is None:
            if (w, h) == (wide, high):
                node.item = name
                home.mask |= 1 << name
                home.fill += self.job.area[name]
                return node
            name, parts = (0 if w > wide else 1), (box,)
        node.axis = name
        for part in parts:
            size = (w, part[1]) if name else (part[0], h)
            node.kids.append(self._node(part, *size, node, home))
        used = sum(part[1] if name else part[0] for part in parts)
        if (rest := (h if name else w) - used) > 0:
            node.kids.append(Node(*((w, rest) if name else (rest, h)), FREE, node, home))
        return node


def _size(box: Box) -> tuple[float, float]:
    return box[:2]


def _halves(mask: int) -> Iterator[int]:
    """Every way to part a set in two, once: the larger mask of both."""
    part = (mask - 1) & mask
    while part > mask ^ part:
        yield part
        part = (part - 1) & mask


def _subsets(mask: int) -> Iterator[int]:
    part = mask
    while True:
        yield part
        if not part:
            return
        part = (part - 1) & mask
