"""Which task to name when a search came back empty: the smallest part that fails by itself."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .branch import Brancher
from .calendar import Calendar
from .default import latest_finish
from .instance import Instance, compile_instance
from .model import Lag, Task
from .schemes import serial

NODES = 200


def pair_that_fails(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    lags: Sequence[Lag],
    calendar: Calendar | None,
) -> str | None:
    """Two tasks tied by a maximum lag that cannot both be placed, all others left out."""
    by_id = {task.id: task for task in tasks}
    for lag in lags:
        if lag.at_most is None:
            continue
        ends = {lag.before, lag.after}
        pair = [by_id[lag.before], by_id[lag.after]]
        between = [other for other in lags if {other.before, other.after} == ends]
        instance = compile_instance(pair, capacity, between, calendar)
        brancher = Brancher(instance, latest_finish(instance), NODES, None)
        if brancher.run() is None and brancher.exhausted:
            return _pair_sentence(pair, lag)
    return None


def _pair_sentence(pair: Sequence[Task], lag: Lag) -> str:
    first, second = (f"task {task.id!r} ({task.duration} minutes)" for task in pair)
    names = sorted({name for task in pair for name in task.within})
    where = f" in {' and '.join(repr(name) for name in names)}" if names else ""
    since = "finishes" if lag.from_finish else "starts"
    return (
        f"{second} must start at most {lag.at_most} minutes after {first} {since}, "
        f"and the two do not fit together{where}"
    )


def first_left_over(tasks: Sequence[Task], instance: Instance) -> str | None:
    """The first task that finds no room before its windows end, in the order of the lags."""
    order = instance.order
    if order is None:
        return None
    for count, i in enumerate(order, start=1):
        if serial(instance, order[:count]) is None:
            where = " and ".join(repr(name) for name in tasks[i].within)
            return f"task {tasks[i].id!r} ({tasks[i].duration} minutes) finds no room in {where}"
    return None
