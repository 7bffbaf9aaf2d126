"""Depth-first search over resource conflicts: settle each by letting one task wait.

The earliest starts allowed by lags, windows and decisions so far are tried as a schedule.
Where it needs more than there is, a small set of tasks that cannot run together is chosen, and
one of them must be finished before another starts: each choice is one branch. Sources: De
Reyck, B., Herroelen, W. (1998), "A branch-and-bound procedure for the resource-constrained
project scheduling problem with generalized precedence relations", European Journal of
Operational Research 111, pp. 152-174 (minimal forbidden sets); Cesta, A., Oddi, A., Smith, S.
(2002), "A constraint-based method for project scheduling with time windows", Journal of
Heuristics 8, pp. 109-136 (first the order that keeps the most slack).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from .bounds import order_pairs, rival_pairs
from .instance import Instance, Start
from .propagate import Conflict, Domain


class Brancher:
    """A search with a limit on nodes. ``exhausted`` is true when every branch was refuted,
    which proves that no schedule finishes in time (never claimed with split tasks)."""

    def __init__(self, instance: Instance, finish: int, nodes: int, rng: Random | None) -> None:
        self.instance = instance
        self.finish = finish
        self.nodes = nodes
        self.rng = rng
        self.pairs = rival_pairs(instance)
        self.exhausted = False
        self.spread = 1 + finish // 20
        self._complete = not any(instance.split)

    def run(self) -> Start | None:
        """A schedule that finishes by ``finish``, or None."""
        try:
            domain = Domain.up_to(self.instance, self.finish)
            order_pairs(domain, self.pairs)
        except Conflict as conflict:
            self.exhausted = conflict.proven
            return None
        stack: list[Iterator[Domain]] = [iter([domain])]
        while stack:
            here = next(stack[-1], None)
            if here is None:
                stack.pop()
                continue
            self.nodes -= 1
            if self.nodes < 0:
                return None
            peak = first_peak(self.instance, here.early)
            if peak is None:
                return here.early
            stack.append(self._children(here, peak))
        self.exhausted = self._complete
        return None

    def _children(self, domain: Domain, peak: Sequence[int]) -> Iterator[Domain]:
        """One domain for each pair of the conflict that can be put in order; best first."""
        instance, late, early = self.instance, domain.late, domain.early
        members = _minimal(instance, peak, late)
        choices = []
        for i in members:
            finish = instance.end(i, early[i])
            for j in members:
                if i != j and finish <= late[j]:
                    noise = self.rng.random() * self.spread if self.rng else 0
                    choices.append((finish - late[j] + noise, i, j))
        choices.sort()
        for _, i, j in choices:
            child = domain.copy()
            try:
                child.put_before(i, j)
                order_pairs(child, self.pairs)
            except Conflict as conflict:
                self._complete = self._complete and conflict.proven
                continue
            yield child


def first_peak(instance: Instance, start: Sequence[int]) -> list[int] | None:
    """The tasks that run at the first moment at which a capacity is exceeded."""
    events = []
    for i in range(instance.size):
        if instance.demand[i]:
            for begin, end, amount in instance.pieces(i, start[i]):
                events.append((begin, 1, i, amount))
                events.append((end, 0, i, amount))
    events.sort()
    free, guard = instance.full, instance.guard
    running: dict[int, int] = {}
    for _, opens, i, amount in events:
        if not opens:
            free += amount
            del running[i]
            continue
        free -= amount
        running[i] = amount
        if free & guard != guard:
            return list(running)
    return None


def _minimal(instance: Instance, peak: Sequence[int], late: Sequence[int]) -> list[int]:
    """A subset that still exceeds a capacity, but no longer when any one member is taken away.

    Tasks with the latest starts stay in: they can wait most easily.
    """
    members = sorted(peak, key=lambda i: (-late[i], i))
    for i in sorted(peak, key=lambda i: (late[i], i)):
        rest = [j for j in members if j != i]
        if _exceeds(instance, rest):
            members = rest
    return members


def _exceeds(instance: Instance, members: Sequence[int]) -> bool:
    return any(
        sum(instance.uses[i][r] for i in members) > capacity
        for r, capacity in enumerate(instance.capacity)
    )
