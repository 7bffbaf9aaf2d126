"""Earliest and latest starts that follow from lags and windows, kept up to date in a search."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable

from .instance import Arc, Instance
from .openings import Openings

PATIENCE = 40
"""Updates per task after which a run counts as a circle (a bound on steps, not a proof)."""
LONG_PATIENCE = 1000
"""The same where a wrong guess would cost more than the steps."""


class Conflict(Exception):
    """Task ``task`` cannot start any more; ``cause`` pushed it (-1: its own windows).

    ``proven`` is false when the work was cut off rather than refuted.
    """

    def __init__(self, task: int, cause: int, proven: bool = True) -> None:
        super().__init__(task, cause)
        self.task = task
        self.cause = cause
        self.proven = proven


class Domain:
    """The interval ``[early[i], late[i]]`` of starts left to each task."""

    __slots__ = ("early", "instance", "late", "patience", "updates")

    def __init__(
        self, instance: Instance, early: list[int], late: list[int], patience: int = PATIENCE
    ) -> None:
        self.instance = instance
        self.early = early
        self.late = late
        self.patience = patience
        self.updates = 0

    @classmethod
    def up_to(cls, instance: Instance, finish: int, patience: int = PATIENCE) -> Domain:
        """The starts of every schedule that finishes by ``finish``; raises Conflict if none."""
        size = instance.size
        domain = cls(instance, [0] * size, [finish] * size, patience)
        for i in range(size):
            domain._set_late(i, _latest(instance, i, finish), -1)
            domain._set_early(i, 0, -1)
        domain.settle(range(size), range(size))
        return domain

    def copy(self) -> Domain:
        """The same intervals, to be changed on their own."""
        return Domain(self.instance, self.early[:], self.late[:])

    def put_before(self, i: int, j: int) -> bool:
        """Task ``i`` is finished when task ``j`` starts; returns whether anything changed."""
        raised = self._set_early(j, self.instance.end(i, self.early[i]), i)
        lowered = self._set_late(i, _latest(self.instance, i, self.late[j]), j)
        if raised or lowered:
            self.settle([j] if raised else [], [i] if lowered else [])
        return raised or lowered

    def settle(self, raised: Iterable[int], lowered: Iterable[int]) -> None:
        """Carry changed bounds along the arcs until nothing changes."""
        self.updates = 0
        self._carry_early(deque(raised))
        self._carry_late(deque(lowered))

    def _carry_early(self, queue: deque[int]) -> None:
        out, early, loose = self.instance.out, self.early, self.instance.loose
        while queue:
            i = queue.popleft()
            here = early[i]
            for j, weight in out[i]:
                if here + weight > early[j] and self._set_early(j, here + weight, i):
                    queue.append(j)
            if loose:
                for arc in self.instance.loose_out[i]:
                    if self._raise_along(arc):
                        queue.append(arc.head)

    def _carry_late(self, queue: deque[int]) -> None:
        into, late, loose = self.instance.into, self.late, self.instance.loose
        while queue:
            j = queue.popleft()
            there = late[j]
            for i, weight in into[j]:
                if there - weight < late[i] and self._set_late(i, there - weight, j):
                    queue.append(i)
            if loose:
                for arc in self.instance.loose_into[j]:
                    if self._lower_along(arc):
                        queue.append(arc.tail)

    def _raise_along(self, arc: Arc) -> bool:
        tail, head = arc.tail, arc.head
        early = self.early[tail]
        moment = (self.instance.end(tail, early) if arc.tail_finish else early) + arc.weight
        bound: int | None = moment
        if arc.head_finish:
            opening = self.instance.openings[head]
            bound = (
                opening.first_start_to_finish(moment)
                if opening
                else moment - self.instance.duration[head]
            )
        return self._set_early(head, bound, tail)

    def _lower_along(self, arc: Arc) -> bool:
        tail, head = arc.tail, arc.head
        late = self.late[head]
        moment = (self.instance.end(head, late) if arc.head_finish else late) - arc.weight
        bound = _latest(self.instance, tail, moment) if arc.tail_finish else moment
        return self._set_late(tail, bound, head)

    def _set_early(self, i: int, moment: int | None, cause: int) -> bool:
        opening = self.instance.openings[i]
        if opening and moment is not None:
            moment = opening.first_start(max(moment, self.early[i]))
        if moment is None or moment > self.late[i]:
            raise Conflict(i, cause)
        if moment <= self.early[i]:
            return False
        self.early[i] = moment
        self._count(i, cause)
        return True

    def _set_late(self, i: int, moment: int | None, cause: int) -> bool:
        opening = self.instance.openings[i]
        if opening and moment is not None:
            moment = opening.last_start(min(moment, self.late[i]))
        if moment is None or moment < self.early[i]:
            raise Conflict(i, cause)
        if moment >= self.late[i]:
            return False
        self.late[i] = moment
        self._count(i, cause)
        return True

    def _count(self, i: int, cause: int) -> None:
        self.updates += 1
        if self.updates > self.patience * (self.instance.size + 5):
            raise Conflict(i, cause, proven=False)


def _latest(instance: Instance, i: int, finish: int) -> int | None:
    opening: Openings | None = instance.openings[i]
    return opening.last_start_to_finish(finish) if opening else finish - instance.duration[i]
