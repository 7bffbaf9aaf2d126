"""Refute a finish: show that no schedule ends that early.

Each check relaxes the problem. Lags and windows narrow the interval of starts; two tasks
that cannot run together must follow each other; the work that must lie in a stretch of time
may not exceed what the resource offers there. Source of the last two: Baptiste, P., Le Pape,
C., Nuijten, W. (2001), Constraint-Based Scheduling, Kluwer, chapters 3 and 4.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import accumulate, combinations

from .calendar import Window
from .instance import Instance
from .propagate import Conflict, Domain

EXACT_UP_TO = 40
"""Number of tasks up to which partly overlapping work is counted too (cubic effort)."""


def refuted(instance: Instance, finish: int) -> bool:
    """True when it is certain that no schedule finishes by ``finish``."""
    try:
        domain = Domain.up_to(instance, finish)
        order_pairs(domain, rival_pairs(instance))
    except Conflict as conflict:
        return conflict.proven
    if any(_overloaded(domain, load) for load in loads(instance)):
        return True
    return instance.size <= EXACT_UP_TO and _overlap_overloaded(domain)


def rival_pairs(instance: Instance) -> list[tuple[int, int]]:
    """Pairs of unsplit tasks that together exceed a capacity, so one follows the other."""
    busy = [i for i in range(instance.size) if instance.demand[i] and not instance.split[i]]
    return [
        (i, j)
        for i, j in combinations(busy, 2)
        if any(
            a + b > c
            for a, b, c in zip(instance.uses[i], instance.uses[j], instance.capacity, strict=True)
        )
    ]


def order_pairs(domain: Domain, pairs: Sequence[tuple[int, int]]) -> None:
    """Where only one order of a rival pair is left, impose it; raises Conflict if none is."""
    duration, early, late = domain.instance.duration, domain.early, domain.late
    changed = True
    while changed:
        changed = False
        for i, j in pairs:
            first, second = i, j
            if early[i] + duration[i] > late[j]:
                first, second = j, i
                if early[j] + duration[j] > late[i]:
                    raise Conflict(j, i)
            elif early[j] + duration[j] <= late[i]:
                continue
            minutes = duration[first]
            if early[first] + minutes > early[second] or late[second] - minutes < late[first]:
                changed |= domain.put_before(first, second)


class Load:
    """Tasks that share ``capacity`` of something which is open in ``windows`` only.

    ``work`` is minutes times amount. Of a window a set of unsplit tasks that exclude each
    other can use no more than the best sum of their durations.
    """

    def __init__(
        self, instance: Instance, tasks: Sequence[int], use: Sequence[int], capacity: int
    ) -> None:
        self.tasks = tasks
        self.work = [instance.duration[i] * use[i] for i in tasks]
        self.capacity = capacity
        opening = instance.openings[tasks[0]]
        self.windows: list[Window] | None = None
        if opening and all(_windows(instance, i) == _windows(instance, tasks[0]) for i in tasks):
            self.windows = list(opening.windows)
            alone = all(2 * use[i] > capacity and not instance.split[i] for i in tasks)
            sums = _sums([instance.duration[i] for i in tasks]) if alone else 0
            self.usable = [_best_sum(end - start, sums) for start, end in self.windows]
            self.total = [0, *accumulate(self.usable)]
            self.ends = [end for _, end in self.windows]
            self.starts = [start for start, _ in self.windows]

    def offered(self, begin: int, end: int) -> int:
        """The most minutes that can be worked in ``[begin, end)``."""
        if self.windows is None:
            return end - begin
        first = bisect_left(self.starts, begin)
        last = bisect_left(self.ends, end + 1)
        inside = self.total[last] - self.total[first] if last > first else 0
        cut = 0
        for k in {first - 1, last}:
            if 0 <= k < len(self.windows) and not first <= k < last:
                start, stop = self.windows[k]
                cut += min(max(0, min(stop, end) - max(start, begin)), self.usable[k])
        return inside + cut


def _windows(instance: Instance, i: int) -> list[Window] | None:
    opening = instance.openings[i]
    return list(opening.windows) if opening else None


def _sums(durations: Sequence[int]) -> int:
    """The sums that can be made of the durations, as bits."""
    bits = 1
    for minutes in durations:
        bits |= bits << minutes
    return bits


def _best_sum(length: int, sums: int) -> int:
    if not sums:
        return length
    return (sums & ((1 << (length + 1)) - 1)).bit_length() - 1


def loads(instance: Instance) -> list[Load]:
    """Every resource over all tasks, over the tasks of each set of windows, and over the tasks
    that need more than half of it."""
    result = []
    for r, capacity in enumerate(instance.capacity):
        users = [i for i in range(instance.size) if instance.uses[i][r] and not instance.split[i]]
        users += [i for i in range(instance.size) if instance.uses[i][r] and instance.split[i]]
        column = [use[r] for use in instance.uses]
        ones = [1] * instance.size
        groups: dict[tuple[Window, ...] | None, list[int]] = {}
        for i in users:
            opening = instance.openings[i]
            groups.setdefault(tuple(opening.windows) if opening else None, []).append(i)
        for group in [users, *(groups.values() if len(groups) > 1 else [])]:
            big = [i for i in group if 2 * column[i] > capacity]
            if group:
                result.append(Load(instance, group, column, capacity))
            if len(big) > 1 and capacity > 1:
                result.append(Load(instance, big, ones, 1))
    return result


def _overloaded(domain: Domain, load: Load) -> bool:
    """Whether the tasks that lie wholly in some stretch need more than it offers."""
    instance = domain.instance
    spans = sorted(
        (instance.end(i, domain.late[i]), domain.early[i], work)
        for i, work in zip(load.tasks, load.work, strict=True)
    )
    for begin in {early for _, early, _ in spans}:
        needed = 0
        for end, early, work in spans:
            if early >= begin:
                needed += work
                if needed > load.capacity * load.offered(begin, end):
                    return True
    return False


def _overlap_overloaded(domain: Domain) -> bool:
    """Whether the work that must overlap some stretch, by any amount, exceeds its capacity."""
    instance = domain.instance
    whole = [
        (domain.early[i], domain.early[i] + d, domain.late[i], domain.late[i] + d, d, use)
        for i, (d, use) in enumerate(zip(instance.duration, instance.uses, strict=True))
        if instance.demand[i] and not instance.split[i]
    ]
    begins = sorted({t[0] for t in whole} | {t[2] for t in whole})
    ends = sorted({t[1] for t in whole} | {t[3] for t in whole})
    for r, capacity in enumerate(instance.capacity):
        parts = [(*t[:5], t[5][r]) for t in whole if t[5][r]]
        for begin in begins:
            inside = sorted(
                (late, min(minutes, early_end - begin), use)
                for _, early_end, late, _, minutes, use in parts
                if early_end > begin
            )
            if any(
                _needed(inside, end, end - begin) > capacity * (end - begin)
                for end in ends
                if end > begin
            ):
                return True
    return False


def _needed(inside: Sequence[tuple[int, int, int]], end: int, length: int) -> int:
    """The least work in a stretch: each task pushed out of it to the side where less is left.

    ``inside`` has latest start, minutes left when pushed to the left, and use, by latest start.
    """
    needed = 0
    for late, left, use in inside:
        part = end - late
        if part <= 0:
            break
        if part > left:
            part = left
        needed += use * (part if part < length else length)
    return needed
