"""How much later each task could start: a backward pass over a finished schedule."""

from __future__ import annotations

from .instance import Arc, Instance, Start
from .large import too_large
from .timeline import Timeline, first_fit, give_back, take
from .unschedule import Ties, backward_builder, turned


def latest_starts(instance: Instance, start: Start) -> Start:
    """The start of each task when all are as late as they go without a later finish.

    Tasks tied by maximum lags only move together, so there a rebuilt schedule is tried first.
    """
    base = start
    if instance.order is None and not too_large(instance):
        builder = backward_builder(Ties(instance.mirror), instance, start)
        back = builder.build() if builder else None
        late = turned(instance, back) if back else start
        if all(after >= before for after, before in zip(late, start, strict=True)):
            base = late
    return pushed_right_one_by_one(instance, base)


def pushed_right_one_by_one(instance: Instance, start: Start) -> Start:
    """Each task as late as the others and the finish allow, those that finish last first.

    Unlike a rebuilt schedule this keeps every lag at every step, maximum lags too, and no
    task ever moves to the left.
    """
    mirror, axis = instance.mirror, instance.axis
    finish = instance.finishes(start)
    begin = axis - max(finish, default=0)
    mirrored = [axis - moment for moment in finish]
    line = Timeline(mirror, begin)
    for i in range(mirror.size):
        take(mirror, line, i, mirrored[i])
    for i in sorted(range(mirror.size), key=lambda i: (mirrored[i], i)):
        bound = max([begin, *(mirrored[j] + weight for j, weight in mirror.into[i])])
        for arc in mirror.loose_into[i] if mirror.loose else ():
            bound = max(bound, _bound(mirror, arc, mirrored[arc.tail], mirrored[i]))
        give_back(mirror, line, i, mirrored[i])
        found = first_fit(mirror, line, i, bound)
        if found is not None and found < mirrored[i]:
            mirrored[i] = found
        take(mirror, line, i, mirrored[i])
    return [axis - moment for moment in mirror.finishes(mirrored)]


def _bound(mirror: Instance, arc: Arc, tail: int, now: int) -> int:
    """The earliest start of the arc's head; ``now``, where it stands, when there is none."""
    moment = (mirror.end(arc.tail, tail) if arc.tail_finish else tail) + arc.weight
    opening = mirror.openings[arc.head]
    if not arc.head_finish:
        return moment
    if opening is None:
        return moment - mirror.duration[arc.head]
    found = opening.first_start_to_finish(moment)
    return now if found is None else found
