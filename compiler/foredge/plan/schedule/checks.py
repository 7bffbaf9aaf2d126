"""Refuse input that cannot mean anything: each mistake is one plain sentence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .calendar import Calendar
from .model import Lag, Task

METHODS = ("default", "optimal")


def check_input(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    lags: Sequence[Lag],
    calendar: Calendar | None,
    seed: int,
    method: str,
) -> None:
    """Raise ValueError for the first thing that is wrong."""
    if method not in METHODS:
        raise ValueError(f"unknown method {method!r}: use one of {', '.join(METHODS)}")
    _whole(seed, "the seed")
    for name, amount in capacity.items():
        _not_negative(amount, f"the capacity of {name!r}")
    known = set(calendar.windows) if calendar else set()
    if calendar:
        _check_calendar(calendar)
    seen: set[str] = set()
    for task in tasks:
        if task.id in seen:
            raise ValueError(f"two tasks have the id {task.id!r}")
        seen.add(task.id)
        _check_task(task, capacity, known)
    for lag in lags:
        _check_lag(lag, seen)


def _check_task(task: Task, capacity: Mapping[str, int], calendars: set[str]) -> None:
    _not_negative(task.duration, f"the duration of task {task.id!r}")
    for name, amount in task.demand.items():
        if name not in capacity:
            raise ValueError(f"task {task.id!r} needs the resource {name!r}, which has no capacity")
        _not_negative(amount, f"the demand of task {task.id!r} for {name!r}")
    for name in task.holds:
        if name not in task.demand:
            raise ValueError(f"task {task.id!r} holds {name!r}, which it does not demand")
    if isinstance(task.within, str):
        raise ValueError(f"'within' of task {task.id!r} is a tuple of names, not one text")
    for name in task.within:
        if name not in calendars:
            raise ValueError(f"task {task.id!r} runs within {name!r}, which is no calendar")


def _check_lag(lag: Lag, ids: set[str]) -> None:
    where = f"the lag from {lag.before!r} to {lag.after!r}"
    for name in (lag.before, lag.after):
        if name not in ids:
            raise ValueError(f"{where} names {name!r}, which is no task")
    if lag.before == lag.after:
        raise ValueError(f"{where} ties a task to itself")
    _whole(lag.at_least, f"at_least of {where}")
    if lag.at_most is not None:
        _whole(lag.at_most, f"at_most of {where}")


def _check_calendar(calendar: Calendar) -> None:
    for name, windows in calendar.windows.items():
        for start, end in windows:
            _not_negative(start, f"the start of a window of {name!r}")
            _whole(end, f"the end of a window of {name!r}")
            if end <= start:
                raise ValueError(f"a window of {name!r} ends at {end}, not after its start {start}")


def _whole(value: object, what: str) -> int:
    if not isinstance(value, int) or isinstance(value, bool):
        raise ValueError(f"{what} is {value!r}, not a whole number")
    return value


def _not_negative(value: object, what: str) -> None:
    if _whole(value, what) < 0:
        raise ValueError(f"{what} is {value}, less than zero")
