"""Closed patterns: one sheet filled with as many equal pieces as edge-to-edge cuts allow."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import CUT, FREE, Bin, Node

_FULL_SEARCH = 36  # pieces by area, up to which every useful cut is tried
_MOST_PANELS = 4_000

Sides = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Yield:
    """How many pieces a panel gives, and its first cut: axis (or -1) and position."""

    count: int
    axis: int = -1
    at: float = 0.0


class Closed:
    """Best yields of panels for one piece; exact up to about 36 pieces, strips beyond."""

    def __init__(self, sides: Sides) -> None:
        self.sides = sides
        self.known: dict[tuple[float, float], Yield] = {}

    def best(self, w: float, h: float) -> Yield:
        """The best yield of a panel of w by h."""
        found = self.known.get((w, h))
        if found is None:
            found = self.known[(w, h)] = self._find(w, h)
        return found

    def _find(self, w: float, h: float) -> Yield:
        if (w, h) in self.sides:
            return Yield(1)
        side = self.sides[0]
        most = int(w * h / (side[0] * side[1]))
        best = Yield(0)
        if not any(a <= w and b <= h for a, b in self.sides):
            return best
        full = most <= _FULL_SEARCH and len(self.known) < _MOST_PANELS
        for axis, length in ((0, w), (1, h)):
            for at in self._positions(axis, length, full):
                if axis:
                    first, second = self.best(w, at), self.best(w, h - at)
                else:
                    first, second = self.best(at, h), self.best(w - at, h)
                if first.count + second.count > best.count:
                    best = Yield(first.count + second.count, axis, at)
                    if best.count == most:
                        return best
        return best

    def _positions(self, axis: int, length: float, full: bool) -> list[float]:
        """Useful cut positions: sums of sides, or only the ends of unbroken rows of pieces."""
        steps = sorted({side[axis] for side in self.sides})
        if not full:
            return sorted(end for end in self._row_ends(steps, length) if 0 < end < length)
        sums = {0.0}
        for step in steps:
            sums |= {
                start + step * times
                for start in sums
                for times in range(1, int((length - start) / step) + 1)
            }
        return sorted(end for end in sums if 0 < end < length)

    def _row_ends(self, steps: list[float], length: float) -> set[float]:
        """Where the longest rows end, their middles, and the row that wastes least of a mix.

        The middles keep the search shallow: a long row is halved, not taken apart one by one.
        """
        ends: set[float] = set()
        for step in steps:
            times = int(length / step)
            ends |= {step * times, step * (times // 2)}
        if len(steps) == 2:
            one, two = steps[1], steps[0]
            rows = range(min(int(length / one), _FULL_SEARCH) + 1)
            ends.add(one * min(rows, key=lambda n: (length - n * one) % two))
        return ends


def closed_bin(job: Job, stock: int, way: int, kinds: Closed, items: list[int]) -> Bin | None:
    """A sheet filled with the first of the equal ``items``; None when they are too few."""
    panels = job.stocks[stock].panels[way]
    if sum(max(int(w / a) * int(h / b) for a, b in kinds.sides) for w, h in panels) > len(items):
        return None
    if not 0 < sum(kinds.best(w, h).count for w, h in panels) <= len(items):
        return None
    bin_ = Bin(stock, way)
    supply = iter(items)
    for w, h in panels:
        root = Node(w, h, FREE, None, bin_)
        _build(kinds, root, supply)
        bin_.roots.append(root)
    first = items[0]
    bin_.fill = job.area[first] * sum(kinds.best(w, h).count for w, h in panels)
    return bin_


def _build(kinds: Closed, node: Node, supply: Iterator[int]) -> None:
    found = kinds.best(node.w, node.h)
    if not found.count:
        return
    if found.axis < 0:
        node.item = next(supply)
        node.home.mask |= 1 << node.item
        return
    node.item, node.axis = CUT, found.axis
    stack = [(node.w, node.h)]
    free = 0.0
    while stack:
        w, h = stack.pop()
        part = kinds.best(w, h)
        if part.axis == node.axis:
            rest = (w, h - part.at) if node.axis else (w - part.at, h)
            stack += [rest, (w, part.at) if node.axis else (part.at, h)]
        elif part.count:
            kid = Node(w, h, FREE, node, node.home)
            node.kids.append(kid)
            _build(kinds, kid, supply)
        else:
            free += h if node.axis else w
    if free:
        w, h = (node.w, free) if node.axis else (free, node.h)
        node.kids.append(Node(w, h, FREE, node, node.home))
