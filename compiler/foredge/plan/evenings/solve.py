"""The engine asked: the earliest finish, in the sheet's own order where that costs nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from foredge.contract.work_plan import DAY
from foredge.plan.evenings.bench_calendar import LONGEST, BenchCalendar
from foredge.plan.evenings.tasks import BENCH, LIGHT, Job, Soon
from foredge.plan.schedule import Calendar, Lag, Schedule, solve, verify
from foredge.plan.schedule.instance import compile_instance
from foredge.plan.schedule.optimal import load_solver
from foredge.plan.schedule.slack import latest_starts

QUICK = "default"
"""The method of the engine that needs nothing installed."""

MOST_TRIED = 16
"""Maximum lags tried one by one, where not all of them can be kept."""

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
    read = solve(job.tasks, job.capacity, [*job.lags, *_as_printed(job)], calendar=calendar)
    if read.feasible and read.finish == best.finish:
        best = replace(read, proven=best.proven, slack=_slack(job, calendar, read))
    broken = verify(job.tasks, job.capacity, job.lags, best, calendar)
    if broken:
        raise RuntimeError(f"the schedule is wrong, please report it: {broken[0]}")
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
