"""The engine asked: the earliest finish, in the sheet's own order where that costs nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from foredge.contract.work_plan import DAY
from foredge.plan.evenings.bench_calendar import LONGEST, BenchCalendar
from foredge.plan.evenings.tasks import BENCH, LIGHT, ORIGIN, Job, Soon
from foredge.plan.schedule import Calendar, Lag, Schedule, solve, verify
from foredge.plan.schedule.instance import compile_instance
from foredge.plan.schedule.optimal import load_solver
from foredge.plan.schedule.slack import latest_starts

QUICK = "default"
"""The method of the engine that needs nothing installed."""

MOST_TRIED = 16
"""Maximum lags tried one by one, where not all of them can be kept."""

LEAST_BEGUN = 15
"""Minutes at the end of a session for which work that may be split is worth laying out."""

MOST_PUT_OFF = 3
"""Searches for a plan without such scraps; each may make new ones."""

LARGE = 150
"""From so many tasks on each search takes seconds: then none is tried by itself."""


@dataclass(frozen=True, slots=True)
class Answer:
    """A schedule, or the reason why there is none. ``spoilt`` are lags that could not be kept;
    ``proven`` says that there is no schedule at all."""

    schedule: Schedule | None
    reason: str = ""
    proven: bool = False
    spoilt: tuple[Soon, ...] = ()


def answer(job: Job, bench: BenchCalendar, days: int, method: str) -> Answer:
    """The best schedule found within ``days``, then within two years.

    What keeps things from spoiling is kept where it can be, the most pressing first.
    ImportError where ``method`` needs what is not installed.
    """
    if method != QUICK:
        load_solver()
    most = LONGEST + bench.now // DAY
    found = None
    for horizon in dict.fromkeys((min(days, most), most)):
        found = _ask(job, job.soon, _calendar(bench, horizon), method)
        if found.feasible:
            return Answer(found)
    if job.soon:
        return _without_some(job, _calendar(bench, most), method)
    return _none(found)


def _calendar(bench: BenchCalendar, days: int) -> Calendar:
    return Calendar({BENCH: bench.windows(days), LIGHT: bench.light(days)})


def _without_some(job: Job, calendar: Calendar, method: str) -> Answer:
    """As many of the maximum lags as can be kept together, the shortest first."""
    kept: list[Soon] = []
    pressing = sorted(job.soon, key=lambda soon: soon.lag.at_most or 0)
    for soon in pressing[: MOST_TRIED if len(job.tasks) < LARGE else 0]:
        if _ask(job, (*kept, soon), calendar, QUICK).feasible:
            kept.append(soon)
    best = _ask(job, kept, calendar, method)
    if not best.feasible:
        return _none(best)
    return Answer(best, spoilt=tuple(soon for soon in job.soon if _late(soon, best)))


def _none(found: Schedule | None) -> Answer:
    return Answer(None) if found is None else Answer(None, found.reason, found.proven)


def _late(soon: Soon, found: Schedule) -> bool:
    return gap(soon, found) > (soon.lag.at_most or 0)


def gap(soon: Soon, found: Schedule) -> int:
    """Minutes from the end of the one to the beginning of the other."""
    return found.start[soon.lag.after] - found.segments[soon.lag.before][-1][1]


def _ask(job: Job, soon: Sequence[Soon], calendar: Calendar, method: str) -> Schedule:
    job = replace(job, lags=(*job.lags, *(one.lag for one in soon)))
    best = _best(job, calendar, method)
    if not best.feasible:
        return best
    best = _no_later(job, _as_printed(job), calendar, best)
    best = _worth_beginning(job, calendar, best)
    broken = verify(job.tasks, job.capacity, job.lags, best, calendar)
    if broken:
        raise RuntimeError(f"the schedule is wrong, please report it: {broken[0]}")
    return best


def _no_later(job: Job, wished: Sequence[Lag], calendar: Calendar, best: Schedule) -> Schedule:
    """A schedule that keeps the ``wished`` lags too, where it ends as early as ``best``."""
    found = solve(job.tasks, job.capacity, [*job.lags, *wished], calendar=calendar)
    if not found.feasible or found.finish != best.finish:
        return best
    return replace(found, proven=best.proven, slack=_slack(job, calendar, found))


def _worth_beginning(job: Job, calendar: Calendar, best: Schedule) -> Schedule:
    """``best`` with no work begun for a few minutes before a session ends, where that is free."""
    waits: list[Lag] = []
    for _ in range(MOST_PUT_OFF):
        slivers = [
            Lag(ORIGIN, name, parts[1][0])
            for name, parts in best.segments.items()
            if len(parts) > 1 and parts[0][1] - parts[0][0] < LEAST_BEGUN
        ]
        if not slivers:
            break
        waits += slivers
        for wished in ([*waits, *_as_printed(job)], waits):
            found = _no_later(job, wished, calendar, best)
            if found is not best:
                best = found
                break
        else:
            break
    return best


def _best(job: Job, calendar: Calendar, method: str) -> Schedule:
    """The quick answer; with ``optimal`` the exact solver goes on from there."""
    quick = solve(job.tasks, job.capacity, job.lags, calendar=calendar)
    if method == QUICK or quick.proven:
        return quick
    if quick.feasible:  # what lies behind the finish that is known only makes its work harder
        calendar = Calendar(
            {
                name: [(begin, end) for begin, end in windows if begin < quick.finish]
                for name, windows in calendar.windows.items()
            }
        )
    exact = solve(job.tasks, job.capacity, job.lags, calendar=calendar, method=method)
    if not quick.feasible:
        return exact
    better = exact.feasible and (exact.proven or exact.finish < quick.finish)
    return exact if better else quick


def _as_printed(job: Job) -> list[Lag]:
    """One thing after the other, in the order of the sheet."""
    row = [one.task for rounds in job.rounds.values() for one in rounds]
    return [Lag(one, other, 0, from_finish=True) for one, other in pairwise(row)]


def _slack(job: Job, calendar: Calendar, found: Schedule) -> dict[str, int]:
    """What each task could wait, were the sheet's order not kept."""
    instance = compile_instance(list(job.tasks), job.capacity, list(job.lags), calendar)
    late = latest_starts(instance, [found.start[name] for name in instance.names])
    return {name: late[i] - found.start[name] for i, name in enumerate(instance.names)}
