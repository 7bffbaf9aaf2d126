"""A schedule told by operation and by evening."""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import Build, Evening, Stretch, TimedStep
from foredge.plan.evenings.bench_calendar import Window
from foredge.plan.evenings.minutes import whole_minutes
from foredge.plan.evenings.tasks import Job, Round
from foredge.plan.schedule import Schedule


def timed_steps(job: Job, schedule: Schedule, windows: Sequence[Window]) -> tuple[TimedStep, ...]:
    """Every planned operation, in the order of the sheet; ``windows`` are the sessions."""
    return tuple(_timed(rounds, schedule, windows) for rounds in job.rounds.values())


def _timed(rounds: Sequence[Round], schedule: Schedule, windows: Sequence[Window]) -> TimedStep:
    operation = rounds[0].operation
    pieces = [piece for one in rounds for piece in schedule.segments[one.task]]
    stretches = tuple(
        Stretch(operation.id, begin, end, place, len(pieces))
        for place, (begin, end) in enumerate(pieces, start=1)
    )
    ready = pieces[-1][1] + whole_minutes(operation.wait)
    slack = min(schedule.slack[one.task] for one in rounds)
    begin = pieces[0][0]
    over = next(end for start, end in windows if start <= begin < end)
    return TimedStep(operation.id, stretches, ready, slack, critical=begin + slack < over)


def evenings(steps: Sequence[TimedStep], windows: Sequence[Window]) -> tuple[Evening, ...]:
    """The sessions from the first to the last with work in it."""
    stretches = sorted(
        (stretch for step in steps for stretch in step.stretches), key=lambda one: one.begin
    )
    if not stretches:
        return ()
    last = max(stretch.end for stretch in stretches)
    found = []
    for number, (begin, end) in enumerate(windows, start=1):
        if begin >= last:
            break
        work = tuple(one for one in stretches if begin <= one.begin < end)
        found.append(Evening(number, begin, end, work, _resting(steps, end)))
    return tuple(found)


def _resting(steps: Sequence[TimedStep], end: int) -> tuple[str, ...]:
    """What rests when a session is over, in the order in which it gets ready."""
    resting = [step for step in steps if step.finish <= end < step.ready]
    return tuple(step.operation for step in sorted(resting, key=lambda one: one.ready))


def closing(build: Build, steps: Sequence[TimedStep]) -> tuple[int | None, int | None]:
    """The earliest minutes at which the finished book may be closed, and posted."""
    facts = dict(build.whole.facts)
    ready = {step.operation: step.ready for step in steps}
    close = ready.get(facts.get("finishing.may_close", ""))
    post = ready.get(facts.get("finishing.may_post", ""))
    if post is None or not steps:
        return close, None
    # What nothing is painted on has no rest of its own: the glue hardens from the last step on.
    own = facts["finishing.may_post"].startswith("finishing.")
    last = max(step.finish for step in steps)
    waits = {quantity.name: quantity for quantity in build.whole.quantities}
    cure = whole_minutes(waits.get("finishing.wait.post"))
    return close, post if own else max(post, last + cure)
