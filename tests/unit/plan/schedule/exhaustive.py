"""Slow, obvious references: try every start, or model the problem anew for CP-SAT."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ortools.sat.python import cp_model

from foredge.plan.schedule import Calendar, Lag, Task

Run = tuple[int, list[int]]
"""A start and the minutes of work."""


def best_finish(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    lags: Sequence[Lag],
    horizon: int,
    calendar: Calendar | None = None,
) -> int | None:
    """The earliest finish over all starts up to ``horizon``; None when there is none."""
    choices = [_runs(task, horizon, calendar) for task in tasks]
    best: int | None = None

    def place(runs: list[Run], finish: int) -> None:
        nonlocal best
        if best is not None and finish >= best:
            return
        if not _keeps(tasks[: len(runs)], capacity, lags, runs):
            return
        if len(runs) == len(tasks):
            best = finish
            return
        for start, minutes in choices[len(runs)]:
            end = minutes[-1] + 1 if minutes else start
            place([*runs, (start, minutes)], max(finish, end))

    place([], 0)
    return best


def _runs(task: Task, horizon: int, calendar: Calendar | None) -> list[Run]:
    """Each start with the minutes of work that follow from it."""

    def is_open(minute: int) -> bool:
        return not calendar or all(
            any(a <= minute < b for a, b in calendar.windows[name]) for name in task.within
        )

    found = []
    for start in range(horizon + 1):
        if task.duration == 0:
            if is_open(start) or is_open(start - 1):
                found.append((start, []))
            continue
        minutes = [m for m in range(start, horizon) if is_open(m)][: task.duration]
        whole = len(minutes) == task.duration and minutes[0] == start
        if whole and (task.split or minutes[-1] - start + 1 == task.duration):
            found.append((start, minutes))
    return found


def _keeps(
    tasks: Sequence[Task],
    capacity: Mapping[str, int],
    lags: Sequence[Lag],
    runs: Sequence[Run],
) -> bool:
    start = {t.id: s for t, (s, _) in zip(tasks, runs, strict=True)}
    end = {t.id: run[-1] + 1 if run else s for t, (s, run) in zip(tasks, runs, strict=True)}
    for lag in lags:
        if lag.before not in start or lag.after not in start:
            continue
        gap = start[lag.after] - (end if lag.from_finish else start)[lag.before]
        if gap < lag.at_least or (lag.at_most is not None and gap > lag.at_most):
            return False
    for name, amount in capacity.items():
        used: dict[int, int] = {}
        for task, (begin, run) in zip(tasks, runs, strict=True):
            held = range(begin, end[task.id]) if name in task.holds else run
            for minute in held if task.duration else ():
                used[minute] = used.get(minute, 0) + task.demand.get(name, 0)
        if any(total > amount for total in used.values()):
            return False
    return True


def solved_by_cp_sat(
    tasks: Sequence[Task], capacity: Mapping[str, int], lags: Sequence[Lag], effort: float = 20.0
) -> tuple[str, int]:
    """``("optimal", finish)``, ``("infeasible", 0)`` or ``("open", 0)``. No calendars."""
    horizon = sum(t.duration for t in tasks) + sum(max(lag.at_least, 0) for lag in lags)
    model = cp_model.CpModel()
    start = {t.id: model.new_int_var(0, horizon, t.id) for t in tasks}
    for lag in lags:
        gap = start[lag.after] - start[lag.before]
        model.add(gap >= lag.at_least)
        if lag.at_most is not None:
            model.add(gap <= lag.at_most)
    for name, amount in capacity.items():
        users = [t for t in tasks if t.duration and t.demand.get(name)]
        spans = [model.new_fixed_size_interval_var(start[t.id], t.duration, t.id) for t in users]
        model.add_cumulative(spans, [t.demand[name] for t in users], amount)
    finish = model.new_int_var(0, horizon, "finish")
    for task in tasks:
        model.add(finish >= start[task.id] + task.duration)
    model.minimize(finish)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 0
    solver.parameters.max_deterministic_time = effort
    status = solver.solve(model)
    if status == cp_model.OPTIMAL:
        return "optimal", solver.value(finish)
    return ("infeasible", 0) if status == cp_model.INFEASIBLE else ("open", 0)
