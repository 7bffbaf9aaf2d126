"""Build a schedule from an order of the tasks: the serial and the parallel scheme.

Source: Kolisch, R. (1996), "Serial and parallel resource-constrained project scheduling
methods revisited", European Journal of Operational Research 90, pp. 320-333.
"""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heapify, heappop, heappush

from .instance import Instance, Start
from .timeline import Timeline, first_fit, take


def serial(instance: Instance, order: Sequence[int], begin: int = 0) -> Start | None:
    """Start each task, in this order, as soon as lags, windows and capacity allow.

    ``order`` lists the tail of an arc before its head. No task starts before ``begin``.
    None when the windows end before a task fits.
    """
    line = Timeline(instance, begin)
    put = line.put
    into, duration, demand = instance.into, instance.duration, instance.demand
    special = [bool(o) for o in instance.openings]
    for arc in instance.loose:
        special[arc.head] = True
    start = [begin] * instance.size
    for i in order:
        moment = begin
        for j, weight in into[i]:
            bound = start[j] + weight
            if bound > moment:
                moment = bound
        if special[i]:
            found = _special_start(instance, line, i, start, moment)
            if found is None:
                return None
            start[i] = found
        elif demand[i]:
            start[i] = put(moment, duration[i], demand[i])
        else:
            start[i] = moment
    return start


def _special_start(
    instance: Instance, line: Timeline, i: int, start: Start, moment: int
) -> int | None:
    bound = _loose_bound(instance, i, start, moment)
    found = None if bound is None else first_fit(instance, line, i, bound)
    if found is not None:
        take(instance, line, i, found)
    return found


def _loose_bound(instance: Instance, i: int, start: Start, moment: int) -> int | None:
    """The earliest start under the arcs that touch a split task's finish."""
    for arc in instance.loose_into[i]:
        tail = instance.end(arc.tail, start[arc.tail]) if arc.tail_finish else start[arc.tail]
        bound: int | None = tail + arc.weight
        if arc.head_finish:
            bound = start_to_finish(instance, i, tail + arc.weight)
        if bound is None:
            return None
        moment = max(moment, bound)
    return moment


def start_to_finish(instance: Instance, i: int, moment: int) -> int | None:
    """The earliest start of task ``i`` with its finish at or after ``moment``."""
    opening = instance.openings[i]
    return opening.first_start_to_finish(moment) if opening else moment - instance.duration[i]


def parallel(instance: Instance, priority: Sequence[float]) -> Start | None:
    """Start next whatever can start soonest; ties go to the smaller ``priority``.

    None when the windows end before a task fits.
    """
    line = Timeline(instance, 0)
    start = [0] * instance.size
    waiting = [len(tails) for tails in instance.before]
    heads = _heads(instance)
    bounds = {i: 0 for i in range(instance.size) if waiting[i] == 0}
    while bounds:
        found = []
        for i, bound in bounds.items():
            moment = first_fit(instance, line, i, bound)
            if moment is None:
                return None
            bounds[i] = moment
            found.append((moment, priority[i], i))
        moment, _, chosen = min(found)
        start[chosen] = moment
        take(instance, line, chosen, moment)
        del bounds[chosen]
        for head in heads[chosen]:
            waiting[head] -= 1
            if waiting[head] == 0:
                released = _released(instance, head, start)
                if released is None:
                    return None
                bounds[head] = released
    return start


def _released(instance: Instance, i: int, start: Start) -> int | None:
    moment = max([0, *(start[j] + weight for j, weight in instance.into[i])])
    return _loose_bound(instance, i, start, moment)


def _heads(instance: Instance) -> list[list[int]]:
    heads: list[list[int]] = [[] for _ in range(instance.size)]
    for head, tails in enumerate(instance.before):
        for tail in sorted(tails):
            heads[tail].append(head)
    return heads


def sorted_order(instance: Instance, key: Sequence[float]) -> list[int]:
    """The tasks by ``key``, smallest first, each after the tails of its arcs."""
    waiting = [len(tails) for tails in instance.before]
    heads = _heads(instance)
    ready = [(key[i], i) for i in range(instance.size) if waiting[i] == 0]
    heapify(ready)
    order = []
    while ready:
        _, i = heappop(ready)
        order.append(i)
        for head in heads[i]:
            waiting[head] -= 1
            if waiting[head] == 0:
                heappush(ready, (key[head], head))
    return order


def order_by_start(instance: Instance, start: Sequence[int]) -> list[int]:
    """The tasks by their start, each after the tails of its arcs."""
    if instance.by_start and instance.order is not None:
        return sorted(instance.order, key=start.__getitem__)
    return sorted_order(instance, start)
