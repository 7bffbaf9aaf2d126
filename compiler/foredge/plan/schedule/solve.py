"""The public face: check the input, search, check the result."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from .blame import first_left_over, pair_that_fails
from .calendar import Calendar
from .checks import check_input
from .default import STEPS, latest_finish, search_default
from .instance import Instance, Start, compile_instance
from .large import placed_once, too_large
from .model import Lag, Schedule, Task
from .optimal import exact, load_solver
from .propagate import LONG_PATIENCE, Conflict, Domain
from .reasons import conflict_reason, plain_reason, search_reason
from .slack import latest_starts
from .verify import verify

FIRST_STEPS = STEPS // 2
"""Steps of the default method before the exact one takes over."""


@dataclass(frozen=True, slots=True)
class Found:
    """What a method came back with."""

    start: Start | None
    proven: bool


def solve(
    tasks: Iterable[Task],
    capacity: Mapping[str, int],
    lags: Iterable[Lag],
    *,
    calendar: Calendar | None = None,
    seed: int = 0,
    method: str = "default",
) -> Schedule:
    """The earliest finish found for the tasks. All numbers are whole minutes from 0.

    ``capacity`` gives the amount of each resource. Method ``default`` is pure Python and
    bounded by steps; ``optimal`` goes on with CP-SAT. More than 250 tasks with windows or
    maximum lags are placed once and not searched, by either method. The same input and seed
    give the same schedule in every process. ValueError when the input is wrong, ImportError
    when ``optimal`` is asked for without OR-tools. A problem without a schedule is no error:
    see ``Schedule.feasible`` and ``Schedule.reason``.
    """
    tasks, lags = list(tasks), list(lags)
    check_input(tasks, capacity, lags, calendar, seed, method)
    if method == "optimal":
        load_solver()
    instance = compile_instance(tasks, capacity, lags, calendar)
    reason = plain_reason(tasks, capacity, calendar, instance)
    if reason:
        return _none(reason, proven=True)
    if too_large(instance):
        start = placed_once(instance)
        if start is None:
            return _none(search_reason(tasks, calendar, False, method), proven=False)
        return _checked(tasks, capacity, lags, calendar, _schedule(instance, start, False))
    try:
        root = Domain.up_to(instance, latest_finish(instance), LONG_PATIENCE)
    except Conflict as conflict:
        if conflict.proven or method == "default":
            return _none(conflict_reason(tasks, conflict), conflict.proven)
        found = _exact(instance, Found(None, False), 0, seed)
    else:
        found = _search(instance, root, seed, method)
    if found.start is None:
        pair = pair_that_fails(tasks, capacity, lags, calendar)
        if pair:
            return _none(pair, proven=True)
        return _none(_reason(tasks, calendar, instance, found, method), found.proven)
    return _checked(tasks, capacity, lags, calendar, _schedule(instance, found.start, found.proven))


def _checked(
    tasks: list[Task],
    capacity: Mapping[str, int],
    lags: list[Lag],
    calendar: Calendar | None,
    schedule: Schedule,
) -> Schedule:
    """A schedule that breaks anything is a fault of ours: never hand it out."""
    broken = verify(tasks, capacity, lags, schedule, calendar)
    if broken:
        raise RuntimeError(f"the schedule found is wrong, please report it: {broken[0]}")
    return schedule


def _reason(
    tasks: list[Task], calendar: Calendar | None, instance: Instance, found: Found, method: str
) -> str:
    left_over = first_left_over(tasks, instance)
    reason = search_reason(tasks, calendar, found.proven, method)
    return f"{reason}; {left_over}" if left_over else reason


def _search(instance: Instance, root: Domain, seed: int, method: str) -> Found:
    steps = STEPS if method == "default" else FIRST_STEPS
    search = search_default(instance, root, seed, steps)
    found = Found(search.best, search.proven)
    if method == "default" or search.proven:
        return found
    found = _exact(instance, found, search.finish, seed)
    if found.start is not None or found.proven:
        return found
    # Neither a quick look nor the exact search found one: look as long as the default does.
    search = search_default(instance, root, seed, STEPS)
    return Found(search.best, search.proven)


def _exact(instance: Instance, found: Found, finish: int, seed: int) -> Found:
    latest = finish if found.start is not None else latest_finish(instance)
    outcome = exact(instance, latest, found.start, seed)
    if outcome.start is None:
        return Found(found.start, outcome.exhausted)
    return Found(outcome.start, outcome.exhausted)


def _none(reason: str, proven: bool) -> Schedule:
    return Schedule(start={}, finish=0, proven=proven, feasible=False, reason=reason)


def _schedule(instance: Instance, start: Start, proven: bool) -> Schedule:
    late = latest_starts(instance, start)
    names = instance.names
    segments = {}
    for i, name in enumerate(names):
        opening = instance.openings[i]
        whole = [(start[i], start[i] + instance.duration[i])]
        segments[name] = opening.segments(start[i]) if opening else whole
    return Schedule(
        start=dict(zip(names, start, strict=True)),
        finish=max(instance.finishes(start), default=0),
        proven=proven,
        feasible=True,
        segments=segments,
        slack={name: late[i] - start[i] for i, name in enumerate(names)},
    )
