"""The engine asked: the earliest finish, in the sheet's own order where that costs nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from foredge.contract.work_plan import DAY
from foredge.plan.bench_calendar import LONGEST, BenchCalendar
from foredge.plan.schedule import Calendar, Lag, Schedule, solve, verify
from foredge.plan.schedule.instance import compile_instance
from foredge.plan.schedule.slack import latest_starts
from foredge.plan.work_tasks import BENCH, LIGHT, Job, Soon


@dataclass(frozen=True, slots=True)
class Answer:
    """A schedule, or the reason why there is none. ``spoilt`` are lags that could not be kept."""

    schedule: Schedule | None
    reason: str = ""
    spoilt: tuple[Soon, ...] = ()


def answer(job: Job, bench: BenchCalendar, days: int, method: str) -> Answer:
    """The best schedule found within ``days``, then within two years.

    What keeps things from spoiling is kept where it can be: first all of it, then all but
    one, then none. ImportError where ``method`` needs what is not installed.
    """
    most = LONGEST + bench.now // DAY
    reason = ""
    for horizon in dict.fromkeys((min(days, most), most)):
        calendar = Calendar({BENCH: bench.windows(horizon), LIGHT: bench.light(horizon)})
        for dropped in _drops(job.soon):
            kept = [soon.lag for soon in job.soon if soon not in dropped]
            found = _ask(replace(job, lags=(*job.lags, *kept)), calendar, method)
            if found.feasible:
                return Answer(found, spoilt=_spoilt(dropped, found))
            reason = reason or found.reason
    return Answer(None, reason)


def _drops(soon: Sequence[Soon]) -> list[tuple[Soon, ...]]:
    """Which of them to go without, in the order of trying."""
    ones = [(one,) for one in soon] if len(soon) > 1 else []
    return [(), *ones, tuple(soon)] if soon else [()]


def _spoilt(dropped: Sequence[Soon], found: Schedule) -> tuple[Soon, ...]:
    return tuple(soon for soon in dropped if gap(soon, found) > (soon.lag.at_most or 0))


def gap(soon: Soon, found: Schedule) -> int:
    """Minutes from the end of the one to the beginning of the other."""
    return found.start[soon.lag.after] - found.segments[soon.lag.before][-1][1]


def _ask(job: Job, calendar: Calendar, method: str) -> Schedule:
    best = solve(job.tasks, job.capacity, job.lags, calendar=calendar, method=method)
    if not best.feasible:
        return best
    read = solve(job.tasks, job.capacity, [*job.lags, *_as_printed(job)], calendar=calendar)
    if read.feasible and read.finish == best.finish:
        best = replace(read, proven=best.proven, slack=_slack(job, calendar, read))
    broken = verify(job.tasks, job.capacity, job.lags, best, calendar)
    if broken:
        raise RuntimeError(f"the schedule is wrong, please report it: {broken[0]}")
    return best


def _as_printed(job: Job) -> list[Lag]:
    """One thing after the other, in the order of the sheet."""
    row = [one.task for rounds in job.rounds.values() for one in rounds]
    return [Lag(one, other, 0, from_finish=True) for one, other in pairwise(row)]


def _slack(job: Job, calendar: Calendar, found: Schedule) -> dict[str, int]:
    """What each task could wait, were the sheet's order not kept."""
    instance = compile_instance(list(job.tasks), job.capacity, list(job.lags), calendar)
    late = latest_starts(instance, [found.start[name] for name in instance.names])
    return {name: late[i] - found.start[name] for i, name in enumerate(instance.names)}
