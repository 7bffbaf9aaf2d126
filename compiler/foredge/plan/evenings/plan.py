"""Operations on the calendar of the bench."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract import Build, Chain, Problem, Severity, WorkPlan
from foredge.plan.evenings.bench_calendar import read_calendar
from foredge.plan.evenings.chain import longest_chain
from foredge.plan.evenings.done import begun, misdated, too_late, undated, unknown_names
from foredge.plan.evenings.minutes import copies_of, hands_on, whole_minutes
from foredge.plan.evenings.room import room_problems
from foredge.plan.evenings.todo import Work
from foredge.plan.order import relations


def plan_work(build: Build) -> tuple[WorkPlan | None, list[Problem]]:
    """The schedule; without sessions only the shortest time. None where nothing is to be done
    at all, or no plan can be made."""
    if not build.order:
        return None, []
    known = {operation.id: operation for operation in build.order}
    before, _ = relations(known, {gate.id: gate.after for gate in build.whole.gates})
    bench, problems = read_calendar(build.book.bench)
    problems += room_problems(build.book.bench)
    problems += unknown_names(build.book, build.order)
    start = bench.start if bench is not None else None
    work = Work(build.book, build.order, before, begun(build.book, build.order, before, start))
    plan = WorkPlan(_chain(work), taken_as_done=work.begun.taken)
    if bench is None:
        return plan, problems
    problems += too_late(build.book, build.order, before, work.begun)
    problems += undated(build.book, bench.start)
    slips = misdated(build.book, before, work.begun, bench.start)
    problems += slips
    if any(one.severity is Severity.ERROR for one in slips):
        return plan, problems
    plan = replace(plan, start=bench.start.isoformat() if bench.start is not None else "")
    # The engine is loaded only where there is a calendar to plan on.
    from foredge.plan.evenings.calendar import on_calendar

    found, wrong = on_calendar(build, work, replace(bench, now=work.begun.now), plan)
    return found, [*problems, *wrong]


def _chain(work: Work) -> Chain:
    copies = copies_of(work.book)
    times = {
        one.id: (hands_on(work.book, one, copies), whole_minutes(one.wait)) for one in work.todo
    }
    return longest_chain([one.id for one in work.todo], times, work.before)
