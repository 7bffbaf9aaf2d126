"""The problem compiled for search: numbers instead of names, and its mirror in time."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from graphlib import CycleError, TopologicalSorter
from operator import add

from .calendar import Calendar
from .model import Lag, Task
from .openings import Openings

Start = list[int]
"""The start of each task, by its number."""


@dataclass(frozen=True, slots=True)
class Arc:
    """One end of ``head`` comes at least ``weight`` minutes after one end of ``tail``."""

    tail: int
    tail_finish: bool
    head: int
    head_finish: bool
    weight: int

    def mirrored(self) -> Arc:
        """The same condition with time running backwards."""
        return Arc(self.head, not self.head_finish, self.tail, not self.tail_finish, self.weight)


@dataclass
class Instance:
    """Tasks by number. Resource amounts are packed into one integer each.

    Each resource has a field of bits with a guard bit on top: ``full`` is the capacity with
    every guard set, and a demand fits into a free amount when all guards survive the
    subtraction. ``into[i]`` lists ``(j, w)``: i starts at least w minutes after j starts
    (``out`` is the same from the other side). Only a split task has a finish that depends on
    its start; arcs at such a finish are kept apart in ``loose``.
    """

    names: list[str]
    duration: list[int]
    uses: list[list[int]]
    held: list[list[int]]
    demand: list[int]
    kept: list[int]
    capacity: list[int]
    full: int
    guard: int
    openings: list[Openings | None]
    arcs: list[Arc]
    axis: int
    into: list[list[tuple[int, int]]] = field(init=False)
    out: list[list[tuple[int, int]]] = field(init=False)
    loose: list[Arc] = field(init=False)
    split: list[bool] = field(init=False)

    def __post_init__(self) -> None:
        self.split = [o is not None and o.split for o in self.openings]
        weights: dict[tuple[int, int], int] = {}
        self.loose = []
        for arc in self.arcs:
            weight = arc.weight
            if arc.tail_finish:
                weight += self.duration[arc.tail]
            if arc.head_finish:
                weight -= self.duration[arc.head]
            ends = (
                arc.tail_finish and self.split[arc.tail],
                arc.head_finish and self.split[arc.head],
            )
            if any(ends):
                self.loose.append(arc)
            if not ends[1]:
                key = arc.tail, arc.head
                weights[key] = max(weight, weights.get(key, weight))
        self.into = [[] for _ in self.names]
        self.out = [[] for _ in self.names]
        for (tail, head), weight in weights.items():
            self.into[head].append((tail, weight))
            self.out[tail].append((head, weight))

    @property
    def size(self) -> int:
        """How many tasks there are."""
        return len(self.names)

    @cached_property
    def loose_into(self) -> list[list[Arc]]:
        """The arcs at a split task's finish, by head."""
        return [[arc for arc in self.loose if arc.head == i] for i in range(self.size)]

    @cached_property
    def loose_out(self) -> list[list[Arc]]:
        """The arcs at a split task's finish, by tail."""
        return [[arc for arc in self.loose if arc.tail == i] for i in range(self.size)]

    @cached_property
    def order(self) -> list[int] | None:
        """The tasks so that no arc runs backwards; None when maximum lags close a circle."""
        graph = {i: sorted(self.before[i]) for i in range(self.size)}
        try:
            return list(TopologicalSorter(graph).static_order())
        except CycleError:
            return None

    @cached_property
    def before(self) -> list[set[int]]:
        """The tails of all arcs into each task."""
        tails = [{j for j, _ in arcs} for arcs in self.into]
        for arc in self.loose:
            tails[arc.head].add(arc.tail)
        return tails

    @cached_property
    def by_start(self) -> bool:
        """Whether sorting tasks by start keeps every arc: no weight below zero."""
        return not self.loose and all(w >= 0 for arcs in self.into for _, w in arcs)

    @cached_property
    def mirror(self) -> Instance:
        """The problem with time running backwards from ``axis``."""
        openings = [o.mirrored(self.axis) if o else None for o in self.openings]
        arcs = [arc.mirrored() for arc in self.arcs]
        common = self.names, self.duration, self.uses, self.held, self.demand, self.kept
        return Instance(*common, self.capacity, self.full, self.guard, openings, arcs, self.axis)

    def finishes(self, start: Start) -> list[int]:
        """The finish of each task."""
        finish = list(map(add, start, self.duration))
        if any(self.split):
            for i, opening in enumerate(self.openings):
                if opening and opening.split:
                    finish[i] = opening.finish(start[i])
        return finish

    def end(self, i: int, start: int) -> int:
        """The finish of task ``i`` when it starts at ``start``."""
        opening = self.openings[i]
        return opening.finish(start) if opening else start + self.duration[i]

    def pieces(self, i: int, start: int) -> list[tuple[int, int, int]]:
        """``(start, end, packed amount)`` of everything task ``i`` occupies."""
        opening = self.openings[i]
        if not opening or not opening.split:
            return [(start, start + self.duration[i], self.demand[i])]
        result: list[tuple[int, int, int]] = []
        for begin, end in opening.segments(start):
            if result and self.kept[i]:
                result.append((result[-1][1], begin, self.kept[i]))
            result.append((begin, end, self.demand[i]))
        return result


def compile_instance(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    lags: Sequence[Lag],
    calendar: Calendar | None,
) -> Instance:
    """Number the tasks, pack the resources that can run short, and open the windows."""
    number = {task.id: i for i, task in enumerate(tasks)}
    scarce = [r for r in capacity if sum(t.demand.get(r, 0) for t in tasks) > capacity[r]]
    uses = [[t.demand.get(r, 0) if t.duration else 0 for r in scarce] for t in tasks]
    widths = [max([capacity[r], *(u[k] for u in uses)]).bit_length() for k, r in enumerate(scarce)]
    offsets = [sum(widths[:k]) + k for k in range(len(scarce))]
    guard = sum(1 << (offset + width) for offset, width in zip(offsets, widths, strict=True))
    limits = [capacity[r] for r in scarce]
    held = [
        [u if r in t.holds else 0 for u, r in zip(use, scarce, strict=True)]
        for use, t in zip(uses, tasks, strict=True)
    ]
    asked = {t.within for t in tasks if t.within}
    windows = {within: calendar.open_for(within) for within in asked} if calendar else {}
    openings = [
        Openings(windows[t.within], t.duration, t.split) if t.within in windows else None
        for t in tasks
    ]
    ends = [o.ends[-1] for o in openings if o and o.ends]
    return Instance(
        names=[task.id for task in tasks],
        duration=[task.duration for task in tasks],
        uses=uses,
        held=held,
        demand=[_packed(use, offsets) for use in uses],
        kept=[_packed(use, offsets) for use in held],
        capacity=limits,
        full=_packed(limits, offsets) + guard,
        guard=guard,
        openings=openings,
        arcs=[arc for lag in lags for arc in _arcs(lag, number)],
        axis=max(ends, default=0),
    )


def _packed(amounts: Sequence[int], offsets: Sequence[int]) -> int:
    return sum(amount << offset for amount, offset in zip(amounts, offsets, strict=True))


def _arcs(lag: Lag, number: Mapping[str, int]) -> list[Arc]:
    before, after = number[lag.before], number[lag.after]
    arcs = [Arc(before, lag.from_finish, after, False, lag.at_least)]
    if lag.at_most is not None:
        arcs.append(Arc(after, False, before, lag.from_finish, -lag.at_most))
    return arcs
