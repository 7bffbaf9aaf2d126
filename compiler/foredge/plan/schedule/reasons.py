"""Why there is no schedule, in one plain sentence with names and minutes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .calendar import Calendar
from .distances import contradiction
from .instance import Instance
from .model import Task
from .propagate import Conflict


def plain_reason(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    calendar: Calendar | None,
    instance: Instance,
) -> str | None:
    """A reason that needs no search: one task asks for too much, or lags contradict."""
    for task in tasks:
        reason = _too_much(task, capacity) or (calendar and _no_window(task, calendar))
        if reason:
            return reason
    shortage = calendar and _too_few_windows(tasks, capacity, calendar)
    if shortage:
        return shortage
    circle = contradiction(instance)
    if circle is None:
        return None
    members, excess = circle
    names = " -> ".join(repr(instance.names[i]) for i in [*members, members[0]])
    return f"the lags {names} contradict each other: they ask for {excess} minutes too many"


def _too_much(task: Task, capacity: Mapping[str, int]) -> str | None:
    for name, amount in task.demand.items():
        if amount > capacity[name] and task.duration:
            return f"task {task.id!r} needs {amount} of {name!r}, and there are {capacity[name]}"
    return None


def _no_window(task: Task, calendar: Calendar) -> str | None:
    if not task.within:
        return None
    where = _listed(task.within)
    lengths = [end - start for start, end in calendar.open_for(task.within)]
    if not lengths:
        return f"task {task.id!r} needs a window of {where}, and there is none"
    if task.split and sum(lengths) < task.duration:
        return (
            f"task {task.id!r} needs {task.duration} minutes of {where}, "
            f"and all windows together have {sum(lengths)}"
        )
    if not task.split and max(lengths) < task.duration:
        return (
            f"task {task.id!r} needs {task.duration} minutes in one piece and does not fit "
            f"{where}: its longest window has {max(lengths)} minutes"
        )
    return None


def _too_few_windows(
    tasks: Sequence[Task], capacity: Mapping[str, int], calendar: Calendar
) -> str | None:
    """Tasks with the same windows that together need more of a resource than these offer."""
    for within in sorted({task.within for task in tasks if task.within}):
        offered = sum(end - start for start, end in calendar.open_for(within))
        for name, amount in capacity.items():
            needed = sum(
                task.duration * task.demand.get(name, 0) for task in tasks if task.within == within
            )
            if needed > amount * offered:
                return (
                    f"the tasks in {_listed(within)} need {needed} minutes of {name!r}, "
                    f"and its windows offer {amount * offered}"
                )
    return None


def conflict_reason(tasks: Sequence[Task], conflict: Conflict) -> str:
    """What the propagation of lags and windows ran into."""
    task = tasks[conflict.task]
    where = f" in {_listed(task.within)}" if task.within else ""
    if conflict.cause < 0:
        return (
            f"task {task.id!r} ({task.duration} minutes) finds no place{where}: "
            "the tasks that come before and after it leave it no time"
        )
    other = tasks[conflict.cause]
    return (
        f"task {task.id!r} ({task.duration} minutes) finds no place{where} that keeps its lag "
        f"to task {other.id!r}"
    )


def search_reason(
    tasks: Sequence[Task], calendar: Calendar | None, proven: bool, method: str
) -> str:
    """What to say when a search came back empty."""
    ends = [
        end for t in tasks if calendar and t.within for _, end in calendar.open_for(t.within)[-1:]
    ]
    until = f" before the windows end at minute {max(ends)}" if ends else ""
    if proven:
        return f"no schedule keeps all lags and capacities{until}: every way was ruled out"
    hint = "; method 'optimal' searches further" if method == "default" else ""
    return f"no schedule of the {len(tasks)} tasks was found{until} within the step limit{hint}"


def _listed(names: Sequence[str]) -> str:
    return " and ".join(repr(name) for name in names)
