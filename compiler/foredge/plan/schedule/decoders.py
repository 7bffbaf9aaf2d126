"""Turn an order of the tasks into a schedule, with or without maximum lags."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from .blocks import OnePass
from .instance import Start
from .justify import justified
from .propagate import Domain
from .rules import forward_order
from .schemes import order_by_start, parallel, serial, sorted_order
from .search import Search
from .unschedule import Builder, Ties, backward_builder, turned


class Decoder(Protocol):
    """Makes schedules and counts the steps they cost. None: no schedule came of it.

    ``population`` is how many schedules are bred together.
    """

    population: int

    def from_priority(self, priority: Sequence[float], variant: int) -> Start | None:
        """A schedule in which tasks of smaller priority go first."""

    def from_order(self, order: Sequence[int]) -> Start | None:
        """A schedule that takes the tasks in this order as far as lags allow."""

    def justified(self, start: Start) -> Start | None:
        """The schedule pushed right to its finish and then left again."""

    def order_of(self, start: Start) -> list[int]:
        """The order that leads to this schedule."""


class PlainDecoder:
    """For lags that close no circle: serial and parallel scheme."""

    population = 60

    def __init__(self, search: Search) -> None:
        self.search = search
        self.instance = search.instance

    def from_priority(self, priority: Sequence[float], variant: int) -> Start | None:
        """The serial scheme, or for an odd ``variant`` the parallel one."""
        size = self.instance.size
        self.search.spend(size * (2 + size // 8) if variant % 2 else size)
        if variant % 2:
            return parallel(self.instance, priority)
        return serial(self.instance, sorted_order(self.instance, priority))

    def from_order(self, order: Sequence[int]) -> Start | None:
        """The serial scheme in just this order."""
        self.search.spend(self.instance.size)
        return serial(self.instance, order)

    def justified(self, start: Start) -> Start | None:
        """One pass to the right and one to the left."""
        self.search.spend(2 * self.instance.size)
        return justified(self.instance, start)

    def order_of(self, start: Start) -> list[int]:
        """By start, each task after the tails of its arcs."""
        return order_by_start(self.instance, start)


class LagDecoder:
    """For maximum lags: the serial scheme with unscheduling.

    ``root`` holds the starts that lags and windows leave.
    """

    population = 24
    COST = 3
    """A placement here takes about as long as so many of the plain decoder."""

    def __init__(self, search: Search, root: Domain) -> None:
        self.search = search
        self.instance = search.instance
        self.root = root
        self.ties = Ties(self.instance)
        self.mirror_ties = Ties(self.instance.mirror)
        self.rank = {i: k for k, i in enumerate(forward_order(self.instance))}

    def from_priority(self, priority: Sequence[float], variant: int) -> Start | None:
        """The serial scheme with unscheduling; there is only one variant."""
        return self._run(Builder(self.ties, self.root.early, self.root.late, priority))

    def from_order(self, order: Sequence[int]) -> Start | None:
        """The order taken as priorities, which unscheduling may overrule."""
        return self.from_priority(_places(order), 0)

    def justified(self, start: Start) -> Start | None:
        """One pass to the right and one to the left, every maximum lag kept."""
        self.search.spend(4 * self.instance.size)
        builder = backward_builder(self.mirror_ties, self.instance, start)
        back = self._run(builder) if builder else None
        if back is None:
            return None
        right = turned(self.instance, back)
        return self.from_priority(right, 0)

    def order_of(self, start: Start) -> list[int]:
        """By start; tasks that start together as their lags run."""
        return sorted(range(len(start)), key=lambda i: (start[i], self.rank[i]))

    def _run(self, builder: Builder) -> Start | None:
        start = builder.build()
        self.search.spend(builder.steps * self.COST)
        return start


class BlockDecoder:
    """For maximum lags inside windows: block by block."""

    population = 24

    def __init__(self, search: Search) -> None:
        self.search = search
        self.instance = search.instance
        self.there = OnePass(self.instance)
        self.back = OnePass(self.instance.mirror)
        self.rank = {i: k for k, i in enumerate(forward_order(self.instance))}

    def from_priority(self, priority: Sequence[float], variant: int) -> Start | None:
        """In the order of the priorities, or for an odd ``variant`` what can start soonest."""
        return self._run(self.there, priority, soonest=variant % 2 == 1)

    def from_order(self, order: Sequence[int]) -> Start | None:
        """The blocks in this order, each by its first task."""
        return self.from_priority(_places(order), 0)

    def justified(self, start: Start) -> Start | None:
        """One pass to the right and one to the left, every maximum lag kept."""
        axis, finish = self.instance.axis, self.instance.finishes(start)
        begin = axis - max(finish, default=0)
        back = self._run(self.back, [axis - moment for moment in finish], begin=begin)
        return None if back is None else self.from_priority(turned(self.instance, back), 0)

    def order_of(self, start: Start) -> list[int]:
        """By start; tasks that start together as their lags run."""
        return sorted(range(len(start)), key=lambda i: (start[i], self.rank[i]))

    def _run(
        self, one: OnePass, priority: Sequence[float], soonest: bool = False, begin: int = 0
    ) -> Start | None:
        before = one.steps
        start = one.run(priority, soonest, begin)
        self.search.spend(one.steps - before)
        return start


def _places(order: Sequence[int]) -> list[int]:
    """The place of each task in the order."""
    places = [0] * len(order)
    for place, i in enumerate(order):
        places[i] = place
    return places
