"""The bench's own words for its sessions, read: ``Tue and Thu 19:30-21:30``."""

from __future__ import annotations

import re
from dataclasses import dataclass

from foredge.contract import Bench, Path, Problem, error

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")

_SEPARATOR = re.compile(r", | and ")


@dataclass(frozen=True, slots=True)
class Session:
    """On these days of the week (0 is Monday), from ``begin`` to ``end`` in minutes of the day."""

    days: frozenset[int]
    begin: int
    end: int


def read_sessions(bench: Bench) -> tuple[tuple[Session, ...], list[Problem]]:
    """The sessions that can be understood, and what is wrong with the others."""
    sessions: list[Session] = []
    problems: list[Problem] = []
    for place, text in enumerate(bench.sessions):
        path: Path = ("bench", "sessions", place)
        days_text, _, clock = text.rpartition(" ")
        days = _days(days_text)
        if days is None:
            problems.append(
                error(
                    path,
                    f"'{days_text}' gives more than two ends to one range of days",
                    "session-days",
                    remedy="Write one range, such as Mon-Fri, or the days one by one: Mon, Wed, "
                    "Fri",
                )
            )
        begin, end = clock_range(clock)
        if end <= begin:
            problems.append(_backwards(path, f"the session '{text}'", begin, end, _MIDNIGHT))
        elif days is not None:
            sessions.append(Session(days, begin, end))
    return tuple(sessions), problems


def read_daylight(bench: Bench) -> tuple[tuple[int, int] | None, list[Problem]]:
    """When it is light, in minutes of the day."""
    if bench.daylight is None:
        return None, []
    begin, end = clock_range(bench.daylight)
    if end <= begin:
        return None, [_backwards(("bench", "daylight"), "the daylight", begin, end, _LIGHT)]
    return (begin, end), []


def clock_range(text: str) -> tuple[int, int]:
    """``19:30-21:30`` in minutes of the day."""
    begin, _, end = text.partition("-")
    return _minute(begin), _minute(end)


def clock(minute: int) -> str:
    """``19:30`` of a minute of the day."""
    return f"{minute // 60:02d}:{minute % 60:02d}"


def _minute(text: str) -> int:
    hours, _, minutes = text.partition(":")
    return int(hours) * 60 + int(minutes)


def _days(text: str) -> frozenset[int] | None:
    """The days of ``Mon-Wed and Fri``; a range may run over the week's end. None: no range."""
    found: set[int] = set()
    for part in _SEPARATOR.split(text.lower()):
        ends = [DAYS.index(name) for name in part.split("-")]
        if len(ends) > 2:
            return None
        first, last = ends[0], ends[-1]
        found.update((first + step) % 7 for step in range((last - first) % 7 + 1))
    return frozenset(found)


_MIDNIGHT = "A session over midnight is two: one to 23:59, one from 00:00 on the next day"
_LIGHT = "Write when it grows light and when it grows dark, such as 09:00-16:00"


def _backwards(path: Path, what: str, begin: int, end: int, remedy: str) -> Problem:
    return error(
        path,
        f"{what} ends at {clock(end)}, which is not after it begins, at {clock(begin)}",
        "session-backwards",
        remedy=remedy,
    )
