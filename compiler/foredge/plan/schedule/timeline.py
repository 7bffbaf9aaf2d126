"""What is free when: a step function of packed resource amounts over time."""

from __future__ import annotations

from bisect import bisect_left, bisect_right

from .instance import Instance

ALWAYS = 1 << 62
"""Later than every moment of a schedule."""


class Timeline:
    """``free[k]`` holds from ``times[k]`` until ``times[k + 1]``."""

    __slots__ = ("free", "guard", "times")

    def __init__(self, instance: Instance, begin: int) -> None:
        self.times = [begin, ALWAYS]
        self.free = [instance.full, instance.full]
        self.guard = instance.guard

    def put(self, start: int, duration: int, amount: int) -> int:
        """Occupy ``amount`` at the first fitting moment from ``start`` on; return the moment."""
        times, free, guard = self.times, self.free, self.guard
        first = last = bisect_right(times, start) - 1
        end = start + duration
        while True:
            blocked = (free[last] - amount) & guard != guard
            last += 1
            if blocked:
                first = last
                start = times[last]
                end = start + duration
            elif times[last] >= end:
                break
        if times[first] != start:
            first += 1
            last += 1
            times.insert(first, start)
            free.insert(first, free[first - 1])
        if times[last] != end:
            times.insert(last, end)
            free.insert(last, free[last - 1])
        for k in range(first, last):
            free[k] -= amount
        return start

    def blocked_until(self, start: int, end: int, amount: int) -> int | None:
        """When the first conflict in ``[start, end)`` is over; None when ``amount`` fits."""
        times, free, guard = self.times, self.free, self.guard
        if start >= end:
            return None
        k = bisect_right(times, start) - 1
        while times[k] < end:
            if (free[k] - amount) & guard != guard:
                return times[k + 1]
            k += 1
        return None

    def occupy(self, start: int, end: int, amount: int) -> None:
        """Take ``amount`` away in ``[start, end)``; a negative amount gives it back."""
        if start >= end:
            return
        first = self._cut(start)
        last = self._cut(end)
        for k in range(first, last):
            self.free[k] -= amount

    def _cut(self, moment: int) -> int:
        k = bisect_left(self.times, moment)
        if self.times[k] != moment:
            self.times.insert(k, moment)
            self.free.insert(k, self.free[k - 1])
        return k


def first_fit(instance: Instance, line: Timeline, i: int, moment: int) -> int | None:
    """The first start of task ``i`` from ``moment`` on inside its windows and the free amounts.

    None when its windows end before it fits.
    """
    opening = instance.openings[i]
    start: int | None = moment
    while start is not None:
        if opening:
            start = opening.first_start(start)
            if start is None:
                return None
        free_at = _free_at(instance, line, i, start)
        if free_at is None:
            return start
        # Work is steady from start to finish, so any start before this moment meets it too.
        start = free_at
    return None


def _free_at(instance: Instance, line: Timeline, i: int, start: int) -> int | None:
    """When the first conflict of task ``i``, started at ``start``, is over; None: no conflict."""
    if not instance.split[i]:
        return line.blocked_until(start, start + instance.duration[i], instance.demand[i])
    for begin, end, amount in instance.pieces(i, start):
        free_at = line.blocked_until(begin, end, amount)
        if free_at is not None:
            return free_at
    return None


def take(instance: Instance, line: Timeline, i: int, start: int) -> None:
    """Occupy what task ``i`` uses when it starts at ``start``."""
    if not instance.split[i]:
        line.occupy(start, start + instance.duration[i], instance.demand[i])
        return
    for begin, end, amount in instance.pieces(i, start):
        line.occupy(begin, end, amount)


def give_back(instance: Instance, line: Timeline, i: int, start: int) -> None:
    """The reverse of :func:`take`."""
    for begin, end, amount in instance.pieces(i, start):
        line.occupy(begin, end, -amount)
