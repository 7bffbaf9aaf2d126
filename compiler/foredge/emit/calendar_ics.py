"""``schedule.ics``: the evenings and the ends of drying, for a calendar.

RFC 5545 (Desruisseaux, 2009): floating local times (form 1 of section 3.3.5, neither UTC nor
a time zone), so that 19:30 stays 19:30 on the wall clock whatever the zone and the season.
DTSTAMP (3.8.7.2) must be UTC: it is the midnight of ``bench.start``, because a build knows
no clock. UIDs (3.8.4.7) come from the spec's name, so that a new build renews the entries.
"""

from __future__ import annotations

import hashlib
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from foredge.contract import Build, Evening, Operation, TimedStep, WorkPlan
from foredge.emit.calendar_words import clock_words
from foredge.emit.escape import one_line
from foredge.emit.work import step_numbers

if TYPE_CHECKING:
    from icalendar import Event

PRODID = "-//Foredge//Bench calendar//EN"


class BenchCalendarFile:
    """``schedule.ics``, where the bench has sessions and a first day."""

    kind = "emitter"
    name = "calendar"
    title = "Evenings and drying in a calendar"

    def emit(self, build: Build) -> dict[str, bytes]:
        """One entry an evening with work, one a wait, with an alarm at its end."""
        plan = build.plan.work
        if plan is None or not plan.dated or not plan.steps:
            return {}
        return {"schedule.ics": _Calendar(build, plan).content()}


class _Calendar:
    def __init__(self, build: Build, plan: WorkPlan) -> None:
        self._build = build
        self._plan = plan
        self._numbers = step_numbers(build)
        self._operations = {operation.id: operation for operation in build.order}
        self._stamp = plan.when(0).replace(tzinfo=UTC)

    def content(self) -> bytes:
        # Loaded only where a calendar is written.
        from icalendar import Calendar

        calendar = Calendar()
        calendar.add("prodid", PRODID)
        calendar.add("version", "2.0")
        calendar.add("x-wr-calname", one_line(self._build.book.title))
        for evening in self._plan.evenings:
            if evening.work:
                calendar.add_component(self._evening(evening))
        for step in self._plan.steps:
            if step.ready > step.finish:
                calendar.add_component(self._wait(step))
        content: bytes = calendar.to_ical()
        return content

    def _event(self, key: str, begin: int, end: int, summary: str, description: str) -> Event:
        from icalendar import Event

        event = Event()
        digest = hashlib.sha256(f"{self._build.name}\n{key}".encode()).hexdigest()[:32]
        event.add("uid", f"{digest}@foredge.invalid")
        event.add("dtstamp", self._stamp)
        event.add("dtstart", self._when(begin))
        event.add("dtend", self._when(end))
        event.add("summary", summary)
        event.add("description", description)
        return event

    def _when(self, minute: int) -> datetime:
        """Without a time zone: floating."""
        return self._plan.when(minute)

    def _evening(self, evening: Evening) -> Event:
        lines = [
            f"{clock_words(self._plan, stretch.begin)} "
            f"{self._named(self._operations[stretch.operation])}"
            for stretch in evening.work
        ]
        title = one_line(self._build.book.title)
        return self._event(
            f"evening {evening.number}",
            evening.begin,
            evening.end,
            f"{title}: session {evening.number}",
            "\n".join(lines),
        )

    def _wait(self, step: TimedStep) -> Event:
        from icalendar import Alarm

        operation = self._operations[step.operation]
        title = one_line(self._build.book.title)
        summary = f"{title}: {self._named(operation)}, wait"
        waiting = one_line(operation.waiting) or "nothing may be done to it"
        event = self._event(f"wait {step.operation}", step.finish, step.ready, summary, waiting)
        event.add("transp", "TRANSPARENT")
        alarm = Alarm()
        alarm.add("action", "DISPLAY")
        alarm.add("description", f"{title}: {self._named(operation)}, ready")
        alarm.add("trigger", timedelta(0), parameters={"RELATED": "END"})
        event.add_component(alarm)
        return event

    def _named(self, operation: Operation) -> str:
        return f"{self._numbers[operation.id]} {one_line(operation.title)}"
