"""An independent check of a schedule: it shares nothing with the search but the plain data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise

from .calendar import Calendar
from .model import Lag, Schedule, Segment, Task


def verify(
    tasks: Iterable[Task],
    capacity: Mapping[str, int],
    lags: Iterable[Lag],
    schedule: Schedule,
    calendar: Calendar | None = None,
) -> list[str]:
    """Everything the schedule breaks, one sentence each; empty when it keeps all.

    Checks that every task is there once, its segments add up to its duration and lie in its
    windows, no lag is broken, and no resource is over capacity at any moment.
    """
    tasks = list(tasks)
    wanted, given = {task.id for task in tasks}, set(schedule.start)
    wrong = [f"task {name!r} is not in the schedule" for name in _named(wanted - given)]
    wrong += [f"the schedule has an unknown task {name!r}" for name in _named(given - wanted)]
    if wrong:
        return wrong
    pieces = {task.id: list(schedule.segments.get(task.id, [])) for task in tasks}
    for task in tasks:
        wrong += _task_faults(task, schedule.start[task.id], pieces[task.id], calendar)
    if wrong:
        return wrong
    finish = {task.id: pieces[task.id][-1][1] for task in tasks}
    last = max(finish.values(), default=0)
    if schedule.finish != last:
        wrong.append(f"the finish is given as {schedule.finish}, but the last task ends at {last}")
    for lag in lags:
        wrong += _lag_faults(lag, schedule.start, finish)
    for name, amount in capacity.items():
        wrong += _capacity_faults(name, amount, tasks, pieces)
    return wrong


def _named(names: Iterable[str]) -> list[str]:
    return sorted(names, key=str)


def _task_faults(
    task: Task, start: int, pieces: Sequence[Segment], calendar: Calendar | None
) -> list[str]:
    if not pieces:
        return [f"task {task.id!r} has no segments"]
    wrong = []
    if start < 0:
        wrong.append(f"task {task.id!r} starts at {start}, before minute 0")
    if pieces[0][0] != start:
        wrong.append(f"task {task.id!r} starts at {start}, its first segment at {pieces[0][0]}")
    worked = sum(end - begin for begin, end in pieces)
    if worked != task.duration:
        wrong.append(f"task {task.id!r} is worked on for {worked} of {task.duration} minutes")
    if len(pieces) > 1 and not task.split:
        wrong.append(f"task {task.id!r} may not be split but has {len(pieces)} segments")
    for begin, end in pieces:
        if end < begin or (end == begin and task.duration):
            wrong.append(f"task {task.id!r} has a segment from {begin} to {end}")
        for name in task.within if calendar else ():
            if not _inside(begin, end, calendar.windows[name] if calendar else ()):
                wrong.append(f"task {task.id!r} runs from {begin} to {end}, outside {name!r}")
    for (_, left), (right, _) in pairwise(pieces):
        if right < left:
            wrong.append(f"task {task.id!r} has segments that overlap at {right}")
        elif calendar and _pauses(left, right, [calendar.windows[n] for n in task.within]):
            wrong.append(f"task {task.id!r} pauses from {left} to {right} inside its windows")
    return wrong


def _inside(begin: int, end: int, windows: Sequence[Segment]) -> bool:
    """Whether the windows, however they touch or overlap, cover the stretch."""
    if begin == end:
        return any(opens <= begin <= closes for opens, closes in windows)
    covered = begin
    for opens, closes in sorted(windows):
        if opens <= covered < closes:
            covered = closes
    return covered >= end


def _pauses(left: int, right: int, calendars: Sequence[Sequence[Segment]]) -> bool:
    """Whether all calendars are open at some moment of the gap."""
    edges = {left} | {m for windows in calendars for w in windows for m in w if left < m < right}
    return any(
        all(any(opens <= moment < closes for opens, closes in windows) for windows in calendars)
        for moment in edges
        if moment < right
    )


def _lag_faults(lag: Lag, start: Mapping[str, int], finish: Mapping[str, int]) -> list[str]:
    origin = (finish if lag.from_finish else start)[lag.before]
    gap = start[lag.after] - origin
    since = "finishes" if lag.from_finish else "starts"
    said = f"task {lag.after!r} starts {gap} minutes after task {lag.before!r} {since}"
    if gap < lag.at_least:
        return [f"{said}, less than {lag.at_least}"]
    if lag.at_most is not None and gap > lag.at_most:
        return [f"{said}, more than {lag.at_most}"]
    return []


def _capacity_faults(
    name: str, capacity: int, tasks: Sequence[Task], pieces: Mapping[str, Sequence[Segment]]
) -> list[str]:
    changes: dict[int, int] = {}
    for task in tasks:
        amount = task.demand.get(name, 0)
        occupied = list(pieces[task.id])
        if name in task.holds:
            occupied = [(occupied[0][0], occupied[-1][1])]
        for begin, end in occupied if amount else ():
            changes[begin] = changes.get(begin, 0) + amount
            changes[end] = changes.get(end, 0) - amount
    used = 0
    for moment in sorted(changes):
        used += changes[moment]
        if used > capacity:
            return [f"{used} of {name!r} are used at minute {moment}, and there are {capacity}"]
    return []
