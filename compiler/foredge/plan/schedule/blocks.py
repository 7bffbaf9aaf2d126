"""One pass over the tasks, block by block: for windows with maximum lags, and for large plans.

Tasks in a circle of lags (a maximum lag closes one) form a block. The blocks themselves lie in no
circle, so each can be placed as soon as it fits and never has to move again; only inside a
block a task that comes too late makes the others of its block wait. Sources: Neumann, K., Zhan,
J. (1995), "Heuristics for the minimum project-duration problem with minimal and maximal time
lags under fixed resource constraints", Journal of Intelligent Manufacturing 6, pp. 145-154
(blocks); Kolisch, R. (1996), see ``schemes`` (serial and parallel scheme). Cited from memory.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from heapq import heapify, heappop, heappush

from .circles import circles
from .instance import Instance, Start
from .timeline import Timeline, first_fit, give_back, take
from .unschedule import pushed

TRIES = 40
"""How often, per task, a block starts again before it is given up."""


class OnePass:
    """Places all blocks once, in an order that follows the lags. A run fills ``line`` and
    ``start``; nothing starts before ``begin``."""

    def __init__(self, instance: Instance) -> None:
        self.instance = instance
        self.blocks = circles(instance.before)
        home = {i: k for k, block in enumerate(self.blocks) for i in block}
        ties = [(home[i], home[j]) for j, tails in enumerate(instance.before) for i in tails]
        self.among = Follow(len(self.blocks), ((a, b) for a, b in ties if a != b))
        self.within = Follow(
            instance.size, ((i, j) for i, j in forward_arcs(instance) if home[i] == home[j])
        )
        self.begin = 0
        self.steps = 0
        self.line = Timeline(instance, 0)
        self.start: dict[int, int] = {}

    def run(self, priority: Sequence[float], soonest: bool = False, begin: int = 0) -> Start | None:
        """The schedule. Blocks go by the smallest ``priority`` of their tasks; or first the
        one that can start ``soonest``. None when one does not fit before its windows end."""
        self.line, self.start, self.begin = Timeline(self.instance, begin), {}, begin
        waits = self.among.waits[:]
        keys = [min(priority[i] for i in block) for block in self.blocks]
        queue = [(begin, key, k) for k, key in enumerate(keys) if not waits[k]]
        heapify(queue)
        while queue:
            bound, key, k = heappop(queue)
            placed = self._place(self._ordered(self.blocks[k], priority))
            if placed is None:
                return None
            first = min(placed.values())
            if soonest and first > bound and queue and queue[0] < (first, key, k):
                # What is occupied only grows: the bound stays one until the block is placed.
                self._clear(placed)
                heappush(queue, (first, key, k))
                continue
            self.start |= placed
            for after in self.among.after[k]:
                waits[after] -= 1
                if not waits[after]:
                    heappush(queue, (begin, keys[after], after))
        return [self.start[i] for i in range(self.instance.size)]

    def _ordered(self, block: Sequence[int], priority: Sequence[float]) -> list[int]:
        """The tasks of a block by priority, each after those that a lag puts before it."""
        if len(block) == 1:
            return list(block)
        waits = {i: self.within.waits[i] for i in block}
        ready = [(priority[i], i) for i in block if not waits[i]]
        heapify(ready)
        order = []
        while ready:
            _, i = heappop(ready)
            order.append(i)
            for j in self.within.after[i]:
                waits[j] -= 1
                if not waits[j]:
                    heappush(ready, (priority[j], j))
        return order

    def _place(self, block: Sequence[int]) -> dict[int, int] | None:
        """Occupy what the block needs as early as all its lags allow."""
        floor: dict[int, int] = {}
        for _ in range(TRIES * len(block)):
            placed: dict[int, int] = {}
            late = None
            for i in block:
                self.steps += 1
                moment = self._fit(i, placed, floor.get(i, self.begin))
                if moment is None:
                    self._clear(placed)
                    return None
                take(self.instance, self.line, i, moment)
                placed[i] = moment
                late = self._left_behind(i, placed)
                if late:
                    break
            if not late:
                return placed
            self._clear(placed)
            floor.update(late)
        return None

    def _fit(self, i: int, placed: dict[int, int], floor: int) -> int | None:
        """The first moment for a task under the lags to all that are placed."""
        instance = self.instance
        bound = floor
        for tail, weight in instance.into[i]:
            moment = placed.get(tail, self.start.get(tail))
            if moment is not None:
                bound = max(bound, moment + weight)
        for arc in instance.loose_into[i] if instance.loose else ():
            moment = placed.get(arc.tail, self.start.get(arc.tail))
            least = None if moment is None else pushed(instance, arc, moment)
            if moment is not None and least is None:
                return None
            bound = max(bound, least or 0)
        return first_fit(instance, self.line, i, bound)

    def _left_behind(self, i: int, placed: dict[int, int]) -> dict[int, int] | None:
        """Tasks of the block that stand too early for task ``i``, and where they may start."""
        instance, moment = self.instance, placed[i]
        late = {
            head: moment + weight
            for head, weight in instance.out[i]
            if head in placed and placed[head] < moment + weight
        }
        for arc in instance.loose_out[i] if instance.loose else ():
            least = pushed(instance, arc, moment) if arc.head in placed else None
            if least is not None and placed[arc.head] < least:
                late[arc.head] = max(least, late.get(arc.head, 0))
        return late

    def _clear(self, placed: dict[int, int]) -> None:
        for i, moment in placed.items():
            give_back(self.instance, self.line, i, moment)


class Follow:
    """What follows what: ``after`` each number, and how many each one ``waits`` for."""

    def __init__(self, size: int, pairs: Iterable[tuple[int, int]]) -> None:
        self.after: list[list[int]] = [[] for _ in range(size)]
        self.waits = [0] * size
        for before, after in sorted(set(pairs)):
            self.after[before].append(after)
            self.waits[after] += 1


def forward_arcs(instance: Instance) -> Iterator[tuple[int, int]]:
    """The lags by which one task starts after another, in no circle."""
    for i, arcs in enumerate(instance.out):
        yield from ((i, j) for j, weight in arcs if weight > 0)
