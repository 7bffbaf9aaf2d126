"""The work in time: when what is done, and what dries meanwhile.

Times are whole minutes from the midnight that begins the first day, in the bench's own
wall-clock time: no time zone, and every day has 1440 of them. Where the clocks change, what
dries over that night has an hour more or less than is counted.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

DAY = 1440
"""Minutes of a day on the wall clock."""


@dataclass(frozen=True, slots=True)
class Chain:
    """The longest chain of work and waits: no plan ends sooner, however many evenings there are.

    ``minutes`` from its first step to the end of its last wait; ``operations`` in order.
    """

    minutes: int
    hands_on: int
    operations: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of work ``[begin, end)`` on one operation.

    ``part`` of ``parts``: where the work is stopped at the end of a session, or copies are
    worked on in turn.
    """

    operation: str
    begin: int
    end: int
    part: int = 1
    parts: int = 1


@dataclass(frozen=True, slots=True)
class TimedStep:
    """One operation in time.

    ``finish`` of the hands-on work; ``ready`` when its wait is over. ``slack``: minutes by
    which it can begin later without moving the end; ``critical`` when that is not enough for
    a later session. ``stretches`` in order.
    """

    operation: str
    stretches: tuple[Stretch, ...]
    ready: int
    slack: int
    critical: bool = False

    @property
    def start(self) -> int:
        """When it is begun."""
        return self.stretches[0].begin

    @property
    def finish(self) -> int:
        """When the last of it is out of the hands."""
        return self.stretches[-1].end

    @property
    def latest(self) -> int:
        """When it can begin at the latest."""
        return self.start + self.slack


@dataclass(frozen=True, slots=True)
class Evening:
    """A session of the bench, ``[begin, end)``; ``number`` counts all of them from 1.

    ``work`` is empty where nothing can be done. ``resting`` are operations whose wait goes on
    when the session is over.
    """

    number: int
    begin: int
    end: int
    work: tuple[Stretch, ...] = ()
    resting: tuple[str, ...] = ()

    @property
    def hands_on(self) -> int:
        """Minutes of work."""
        return sum(stretch.end - stretch.begin for stretch in self.work)


@dataclass(frozen=True, slots=True)
class WorkPlan:
    """The schedule of the book, evening by evening.

    ``chain`` is always there. Without ``bench.sessions`` there are no ``steps`` and no
    ``evenings``. ``start`` is the first day as YYYY-MM-DD, empty where the spec has none: days
    are then counted from a Monday. ``evenings`` run from the first to the last with work in it.
    ``proven``: no plan on this calendar ends earlier. ``close`` and ``post``: the earliest
    minute at which the book may be closed, and posted. ``taken_as_done`` are operations that
    ``done`` does not name but that come before one it names.
    """

    chain: Chain
    start: str = ""
    steps: tuple[TimedStep, ...] = ()
    evenings: tuple[Evening, ...] = ()
    proven: bool = False
    close: int | None = None
    post: int | None = None
    taken_as_done: tuple[str, ...] = ()

    @property
    def dated(self) -> bool:
        """Whether the plan has dates."""
        return bool(self.start)

    @property
    def finish(self) -> int:
        """When the last work is done; 0 where nothing is planned."""
        return max((step.finish for step in self.steps), default=0)

    @property
    def idle(self) -> tuple[Evening, ...]:
        """Sessions in which nothing can be done."""
        return tuple(evening for evening in self.evenings if not evening.work)

    @property
    def critical(self) -> tuple[str, ...]:
        """Operations that move the end when they are put off to a later session, by their start."""
        tight = [step for step in self.steps if step.critical]
        return tuple(step.operation for step in sorted(tight, key=lambda step: step.start))

    def when(self, minute: int) -> datetime:
        """The wall-clock time of ``minute``; of a plan without dates only the clock counts."""
        first = date.fromisoformat(self.start) if self.start else date(2001, 1, 1)  # a Monday
        return datetime(first.year, first.month, first.day) + timedelta(minutes=minute)

    def step(self, operation: str) -> TimedStep | None:
        """The operation in time; None where it is done already, or nothing is planned."""
        return next((step for step in self.steps if step.operation == operation), None)
