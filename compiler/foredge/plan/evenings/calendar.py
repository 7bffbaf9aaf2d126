"""The work on the bench's calendar: the evenings, or why there are none."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from foredge.contract import Book, Build, Chain, Operation, Problem, WorkPlan, error, note, warning
from foredge.contract.work_plan import DAY
from foredge.display import duration
from foredge.plan.cost.money import worked
from foredge.plan.evenings.bench_calendar import LONGEST, BenchCalendar
from foredge.plan.evenings.evenings import closing, evenings, timed_steps
from foredge.plan.evenings.minutes import hands_on
from foredge.plan.evenings.solve import Answer, answer, gap
from foredge.plan.evenings.tasks import Job, Soon, job
from foredge.plan.evenings.todo import Work
from foredge.plan.schedule import Calendar

MOST_ROUNDS = 2500
"""More steps and rounds of copies than that are no plan of evenings any more."""

COUNTED = 180
"""Longer times are told in hours."""

SESSIONS = ("bench", "sessions")


def on_calendar(
    build: Build, work: Work, bench: BenchCalendar, plan: WorkPlan
) -> tuple[WorkPlan, list[Problem]]:
    """``plan`` with its evenings; without them where something does not fit."""
    if not work.todo:
        return plan, []
    days = _days(plan.chain, bench)
    longest = _longest(bench, min(days, LONGEST))
    if not longest[False]:
        return plan, [_never_at_the_bench(min(days, LONGEST))]
    problems = [*_misfits(work, longest), *_too_long(plan.chain, bench)]
    if problems:
        return plan, problems
    problems = _in_the_dark(work)
    asked = job(work.book, work.order, work.before, work.begun, longest)
    if len(asked.tasks) > MOST_ROUNDS:
        return plan, [*problems, _too_many(asked)]
    try:
        found = answer(asked, bench, days, _method(work.book))
    except ImportError:
        return plan, [*problems, _not_installed()]
    if found.schedule is None:
        return plan, [*problems, _no_schedule(found)]
    problems += _spoilt(found)
    windows = bench.windows(found.schedule.finish // DAY + 1)
    steps = timed_steps(asked, found.schedule, windows)
    close, post = closing(build, steps)
    made = replace(
        plan,
        steps=steps,
        evenings=evenings(steps, windows),
        proven=found.schedule.proven,
        close=close,
        post=post,
    )
    return made, problems


def _method(book: Book) -> str:
    return "optimal" if book.bench.plan == "optimal" else "default"


def _days(chain: Chain, bench: BenchCalendar) -> int:
    """Days in which a plan should be found: room for waits that end on the wrong day."""
    weeks = math.ceil(chain.hands_on / bench.week)
    return bench.now // DAY + 2 * math.ceil(chain.minutes / DAY) + 14 * weeks + 28


def _longest(bench: BenchCalendar, days: int) -> dict[bool, int]:
    """The longest session: of all, and of those with daylight (key True)."""
    indoors = bench.windows(bench.now // DAY + days)
    light = bench.light(bench.now // DAY + days)
    outdoors = Calendar({"bench": indoors, "light": light}).open_for(("bench", "light"))
    return {
        False: max((end - begin for begin, end in indoors), default=0),
        True: max((end - begin for begin, end in outdoors), default=0),
    }


def _never_at_the_bench(days: int) -> Problem:
    return error(
        ("bench", "off"),
        f"the days off leave no session in the {days} days from the bench's first on",
        "no-schedule",
        remedy="Look at the year of the days off, or give the bench more sessions",
    )


def _misfits(work: Work, longest: Mapping[bool, int]) -> list[Problem]:
    """Steps that fit no session of the bench."""
    problems = []
    for one in work.todo:
        most, minutes = longest[one.outdoors], hands_on(work.book, one, 1)
        if most >= minutes or (most and one.splits):
            continue
        place = " with daylight" if one.outdoors else ""
        if not most:
            text = f"'{one.id}' is done outdoors, and no session has daylight"
        else:
            text = (
                f"'{one.id}' takes {_long(minutes)} in one go, and the longest session"
                f"{place} has {most if minutes <= COUNTED else _long(most)}"
            )
        problems.append(error(SESSIONS, text, "step-fits-no-session", remedy=_room(one, minutes)))
    return problems


def _room(one: Operation, minutes: int) -> str:
    if one.outdoors:
        time = _long(minutes)
        return f"Add a session by day with {time} in it, such as 'Sat 13:00-15:00'"
    if minutes > DAY:
        return "No session is that long: look at 'slower', which makes every step longer"
    return f"Add a session of {_long(minutes)} or more"


def _long(minutes: int) -> str:
    return f"{minutes} minutes" if minutes <= COUNTED else worked(minutes * 60.0)


def _too_long(chain: Chain, bench: BenchCalendar) -> list[Problem]:
    if chain.hands_on <= bench.week * LONGEST / 7:
        return []
    hours = math.ceil(chain.hands_on / 60)
    text = (
        f"the work takes {hours} hours, and the sessions of a week have "
        f"{duration(bench.week * 60.0)}: that is more than two years"
    )
    return [error(SESSIONS, text, "schedule-too-long", remedy="Give it more or longer sessions")]


def _in_the_dark(work: Work) -> list[Problem]:
    outdoors = [one for one in work.todo if one.outdoors]
    if not outdoors or work.book.bench.daylight is not None:
        return []
    return [
        note(
            SESSIONS,
            f"'{outdoors[0].id}' is done outdoors, and the bench does not say when it is light",
            "daylight-unknown",
            consequence="It may be planned for the dark",
            remedy="Add daylight to the bench, such as 09:00-16:00",
        )
    ]


def _too_many(asked: Job) -> Problem:
    return warning(
        SESSIONS,
        f"so many copies make {len(asked.tasks)} steps, and more than {MOST_ROUNDS} are not "
        "planned by sessions",
        "schedule-too-large",
        remedy="Plan fewer copies at a time",
    )


def _not_installed() -> Problem:
    return error(
        ("bench", "plan"),
        "plan: optimal needs OR-tools, which is not installed",
        "optimal-not-installed",
        remedy="Install it with: pip install 'foredge[optimal]', or take plan: quick",
    )


def _no_schedule(found: Answer) -> Problem:
    if not found.proven:
        return warning(
            SESSIONS,
            "no plan was found for these sessions within two years; there may be one all the same",
            "schedule-not-found",
            consequence="The sheet has no plan by sessions",
            remedy="Give it more or longer sessions, plan fewer copies at a time, or take "
            "plan: optimal, which searches further",
        )
    return error(
        SESSIONS,
        f"no plan keeps to these sessions within two years: {found.reason}",
        "no-schedule",
        remedy="Give it more or longer sessions, or fewer days off",
    )


def _spoilt(found: Answer) -> list[Problem]:
    """What the sessions lie too far apart for. Only a warning: keeping times are estimates.

    Of what is made once and used several times, the last use is told.
    """
    assert found.schedule is not None
    latest: dict[str, Soon] = {}
    for soon in found.spoilt:
        known = latest.get(soon.before)
        if known is None or gap(soon, found.schedule) > gap(known, found.schedule):
            latest[soon.before] = soon
    return [_too_far_apart(soon, gap(soon, found.schedule)) for soon in latest.values()]


def _too_far_apart(soon: Soon, minutes: int) -> Problem:
    most = soon.lag.at_most or 0
    return warning(
        SESSIONS,
        f"'{soon.after.id}' begins {duration(minutes * 60.0)} after '{soon.before}', which asks "
        f"for {duration(most * 60.0)} at the most: {soon.why}",
        "sessions-too-far-apart",
        remedy="Add a session long enough for both"
        if most < DAY
        else "Add a session between them, or make a fresh batch",
    )
