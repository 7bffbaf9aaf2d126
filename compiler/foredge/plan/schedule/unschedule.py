"""Serial scheme for maximum lags: when a task comes too late, move what it is tied to.

Source: Franck, B., Neumann, K., Schwindt, C. (2001), "Truncated branch-and-bound, schedule-
construction, and schedule-improvement procedures for resource-constrained project scheduling",
OR Spektrum 23, pp. 297-324 (the unscheduling step). Windows and split tasks are looked at when
a task is placed; the matrix of distances knows lags only.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from operator import add, sub

from .distances import NEVER, distances
from .instance import Arc, Instance, Start
from .propagate import Conflict, Domain
from .schemes import start_to_finish
from .timeline import Timeline, first_fit, give_back, take

PLACEMENTS = 6
"""Placements allowed, per task, before a construction is given up."""


@dataclass
class Ties:
    """How the lags tie every two tasks, worked out once for a problem."""

    instance: Instance

    @cached_property
    def ahead(self) -> list[list[int]]:
        """Longest chains from each task."""
        return distances(self.instance)

    @cached_property
    def behind(self) -> list[list[int]]:
        """Longest chains to each task."""
        return [list(column) for column in zip(*self.ahead, strict=True)]

    @cached_property
    def needs(self) -> list[int]:
        """The tasks, as bits, that start before each task."""
        return [sum(1 << j for j, d in enumerate(column) if d > 0) for column in self.behind]


class Builder:
    """One schedule under construction.

    ``low`` and ``high`` hold the start of a placed task, else its earliest and latest start.
    Unscheduling raises ``floor``, the earliest starts, so the same clash cannot come back.
    """

    def __init__(
        self, ties: Ties, early: list[int], late: list[int], priority: Sequence[float]
    ) -> None:
        self.instance = ties.instance
        self.ties = ties
        self.queue = sorted(range(self.instance.size), key=lambda i: (priority[i], i))
        self.floor, self.ceiling = early[:], late
        self.low, self.high = early[:], late[:]
        self.line = Timeline(self.instance, 0)
        self.start: dict[int, int] = {}
        self.placed = 0
        self.steps = 0

    def build(self) -> Start | None:
        """The schedule, or None when it was given up."""
        size = self.instance.size
        while len(self.start) < size:
            self.steps += 1
            if self.steps > PLACEMENTS * size:
                return None
            i = self._next_task()
            bounds = self._bounds(i)
            moment = None if bounds is None else self._occupied(i, bounds[0])
            if bounds is None or moment is None:
                return None
            if moment > bounds[1]:
                give_back(self.instance, self.line, i, moment)
                if not self._make_room(i, moment):
                    return None
            else:
                self.start[i] = self.low[i] = self.high[i] = moment
                self.placed |= 1 << i
        return [self.start[i] for i in range(size)]

    def _next_task(self) -> int:
        """The free task of best priority among those whose forerunners are all placed."""
        placed, needs = self.placed, self.ties.needs
        for i in self.queue:
            if not placed >> i & 1 and not needs[i] & ~placed:
                return i
        raise RuntimeError("the lags contradict each other")

    def _bounds(self, i: int) -> tuple[int, int] | None:
        """The earliest and latest start of task ``i`` as far as placed tasks decide it."""
        early = max(map(add, self.low, self.ties.behind[i]))
        late = min(map(sub, self.high, self.ties.ahead[i]))
        for arc in self.instance.loose_into[i] if self.instance.loose else ():
            if arc.tail in self.start:
                bound = pushed(self.instance, arc, self.start[arc.tail])
                if bound is None:
                    return None
                early = max(early, bound)
        for arc in self.instance.loose_out[i] if self.instance.loose else ():
            if arc.head in self.start:
                late = min(late, self._latest(arc))
        return early, late

    def _latest(self, arc: Arc) -> int:
        """The latest start of the arc's tail under its placed head."""
        head = self.start[arc.head]
        moment = (self.instance.end(arc.head, head) if arc.head_finish else head) - arc.weight
        if not arc.tail_finish:
            return moment
        opening = self.instance.openings[arc.tail]
        if opening is None:
            return moment - self.instance.duration[arc.tail]
        last = opening.last_start_to_finish(moment)
        return NEVER if last is None else last

    def _occupied(self, i: int, early: int) -> int | None:
        """The first moment from ``early`` on where task ``i`` fits, now occupied by it."""
        instance = self.instance
        if instance.openings[i] is None:
            amount = instance.demand[i]
            return self.line.put(early, instance.duration[i], amount) if amount else early
        moment = first_fit(instance, self.line, i, early)
        if moment is not None:
            take(instance, self.line, i, moment)
        return moment

    def _make_room(self, i: int, moment: int) -> bool:
        """Free the tasks that must move when ``i`` starts at ``moment``, and all that started
        after the first of them; raise their floor to where ``i`` needs them."""
        ahead = self.ties.ahead[i]
        moved: list[int] = []
        wanted = {j: moment + ahead[j] for j in self.start}
        for arc in self.instance.loose_out[i] if self.instance.loose else ():
            if arc.head in self.start:
                bound = pushed(self.instance, arc, moment)
                if bound is None:
                    return False
                wanted[arc.head] = max(wanted[arc.head], bound)
        for j, bound in wanted.items():
            if bound > self.start[j]:
                if bound > self.ceiling[j]:
                    return False
                self.floor[j] = max(self.floor[j], bound)
                moved.append(j)
        if not moved:
            return False
        self._free_from(min(self.start[j] for j in moved), set(moved))
        return True

    def _free_from(self, first: int, moved: set[int]) -> None:
        """Keep what started by ``first`` and need not move; free the rest."""
        for j, start in list(self.start.items()):
            if j in moved or start > first:
                give_back(self.instance, self.line, j, start)
                del self.start[j]
                self.placed ^= 1 << j
                self.low[j], self.high[j] = self.floor[j], self.ceiling[j]


def pushed(instance: Instance, arc: Arc, tail: int) -> int | None:
    """The earliest start of the arc's head when its tail starts at ``tail``."""
    moment = (instance.end(arc.tail, tail) if arc.tail_finish else tail) + arc.weight
    return start_to_finish(instance, arc.head, moment) if arc.head_finish else moment


def backward_builder(mirror_ties: Ties, instance: Instance, start: Start) -> Builder | None:
    """Builds, in the mirrored problem, this schedule pushed right against its finish."""
    axis, finish = instance.axis, instance.finishes(start)
    try:
        domain = Domain.up_to(instance, max(finish, default=0))
    except Conflict:
        return None
    early = [axis - instance.end(i, moment) for i, moment in enumerate(domain.late)]
    late = [axis - instance.end(i, moment) for i, moment in enumerate(domain.early)]
    return Builder(mirror_ties, early, late, [axis - moment for moment in finish])


def turned(instance: Instance, mirrored: Start) -> Start:
    """A schedule of the mirrored problem as one of the problem itself."""
    return [instance.axis - moment for moment in instance.mirror.finishes(mirrored)]
