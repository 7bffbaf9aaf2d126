"""The bench's calendar: its sessions and its daylight as windows in minutes.

Minute 0 is the midnight that begins the first day, in the bench's own wall-clock time.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from foredge.contract import Bench, Path, Problem, error, note, warning
from foredge.contract.work_plan import DAY
from foredge.plan.evenings.sessions import Session, read_daylight, read_sessions

Window = tuple[int, int]

LONGEST = 731
"""Days that a plan may take: two years."""

LAST_YEAR = date.max.year - 20
"""A first day later than that leaves dates no room for a plan and the waits after it."""


@dataclass(frozen=True, slots=True)
class BenchCalendar:
    """``start`` is day 0; a bench without one counts its days from a Monday.

    ``off`` are days counted from it, ``daylight`` minutes of a day, ``now`` the minute from
    which work can be planned.
    """

    sessions: tuple[Session, ...]
    start: date | None = None
    off: frozenset[int] = frozenset()
    daylight: Window | None = None
    now: int = 0

    def windows(self, days: int) -> list[Window]:
        """The sessions of the first ``days`` days, sorted and apart; none before ``now``."""
        found: list[Window] = []
        for day in range(days):
            if day not in self.off:
                found += _joined(
                    (day * DAY + one.begin, day * DAY + one.end)
                    for one in self.sessions
                    if (self._weekday + day) % 7 in one.days
                )
        return [(max(begin, self.now), end) for begin, end in found if end > self.now]

    def light(self, days: int) -> list[Window]:
        """When it is light enough for work outdoors; all day where the spec does not say."""
        begin, end = self.daylight or (0, DAY)
        return [(day * DAY + begin, day * DAY + end) for day in range(days)]

    @property
    def _weekday(self) -> int:
        return self.start.weekday() if self.start is not None else 0

    @property
    def week(self) -> int:
        """Minutes at the bench in a week without days off."""
        whole = BenchCalendar(self.sessions, self.start)
        return sum(end - begin for begin, end in whole.windows(7))


def _joined(windows: Iterable[Window]) -> list[Window]:
    result: list[Window] = []
    for begin, end in sorted(windows):
        if result and begin <= result[-1][1]:
            result[-1] = (result[-1][0], max(end, result[-1][1]))
        else:
            result.append((begin, end))
    return result


def read_calendar(bench: Bench) -> tuple[BenchCalendar | None, list[Problem]]:
    """The calendar of a bench; None where it has no sessions or they cannot be understood.

    Its days are real ones: the schema has refused 30 February.
    """
    sessions, problems = read_sessions(bench)
    daylight, dark = read_daylight(bench)
    problems += dark
    start = date.fromisoformat(bench.start) if bench.start is not None else None
    if start is not None and start.year > LAST_YEAR:
        problems.append(_no_years_left(start))
    off, odd = _off(bench, start)
    if problems or not sessions:
        return None, [*problems, *odd]
    return BenchCalendar(sessions, start, off, daylight), odd


def _no_years_left(start: date) -> Problem:
    text = f"a plan from {start} on could run past the last year there is, {date.max.year}"
    return error(("bench", "start"), text, "start-too-late", remedy="Look at the year")


def _off(bench: Bench, start: date | None) -> tuple[frozenset[int], list[Problem]]:
    if not bench.off:
        return frozenset(), []
    if start is None:
        text = "days off say nothing without a first day"
        remedy = "Add start: YYYY-MM-DD to the bench"
        return frozenset(), [warning(("bench", "off"), text, "off-without-start", remedy=remedy)]
    days = [date.fromisoformat(text) for text in bench.off]
    problems: list[Problem] = []
    for place, day in enumerate(days):
        last = days[place - 1] if place else None
        problems += _odd(("bench", "off", place), day, start, last)
    return frozenset((day - start).days for day in days), problems


def _odd(path: Path, day: date, start: date, last: date | None) -> list[Problem]:
    """A day off that is likely a slip: it comes too early, twice, or out of order."""
    if day < start:
        text = f"the day off {day} is before the bench's first day, {start}"
        return [warning(path, text, "off-before-start", remedy="Look at its year")]
    if last is not None and day == last:
        return [note(path, f"the day off {day} stands twice", "off-out-of-order")]
    if last is not None and day < last:
        text = f"the day off {day} stands after {last}"
        return [note(path, text, "off-out-of-order", remedy="Look at its year and month")]
    return []
