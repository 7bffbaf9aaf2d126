"""The bench's calendar: its sessions and its daylight as windows in minutes.

Minute 0 is the midnight that begins the first day, in the bench's own wall-clock time.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from foredge.contract import Bench, Problem, error, note, warning
from foredge.contract.work_plan import DAY
from foredge.plan.bench_sessions import Session, read_daylight, read_sessions

Window = tuple[int, int]

LONGEST = 731
"""Days that a plan may take: two years."""


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
    """The calendar of a bench; None where it has no sessions or cannot be understood."""
    sessions, problems = read_sessions(bench)
    daylight, dark = read_daylight(bench)
    start, wrong = _start(bench)
    off, odd = _off(bench, start)
    problems += [*dark, *wrong, *odd]
    bad = any(problem.rule in _FATAL for problem in problems)
    if bad or not sessions:
        return None, problems
    return BenchCalendar(sessions, start, off, daylight), problems


_FATAL = ("session-days", "session-backwards", "no-such-day")


def _start(bench: Bench) -> tuple[date | None, list[Problem]]:
    if bench.start is None:
        return None, []
    day = day_of(bench.start)
    if day is None:
        return None, [error(("bench", "start"), f"there is no {bench.start}", "no-such-day")]
    return day, []


def _off(bench: Bench, start: date | None) -> tuple[frozenset[int], list[Problem]]:
    if not bench.off:
        return frozenset(), []
    if bench.start is None:
        text = "days off say nothing without a first day"
        remedy = "Add start: YYYY-MM-DD to the bench"
        return frozenset(), [warning(("bench", "off"), text, "off-without-start", remedy=remedy)]
    days: set[int] = set()
    problems: list[Problem] = []
    last: date | None = None
    for place, text in enumerate(bench.off):
        day = day_of(text)
        path = ("bench", "off", place)
        if day is None:
            problems.append(error(path, f"there is no {text}", "no-such-day"))
            continue
        if start is not None:
            problems += _odd(path, day, start, last)
            days.add((day - start).days)
        last = day
    return frozenset(days), problems


def _odd(path: tuple[str | int, ...], day: date, start: date, last: date | None) -> list[Problem]:
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


def day_of(text: str) -> date | None:
    """The day of ``YYYY-MM-DD``; None where no calendar has it."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
