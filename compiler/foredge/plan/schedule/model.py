"""What goes into the scheduling engine and what comes out: plain data, integers in minutes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

Segment = tuple[int, int]
"""A stretch of work ``[start, end)`` in minutes."""


@dataclass(frozen=True, slots=True)
class Task:
    """One step that takes ``duration`` minutes and uses ``demand`` of each resource meanwhile.

    ``within`` names the calendars whose windows must all be open while the task is worked
    on; without a name it runs day and night. ``split`` lets work stop at the end of a window
    and go on at the start of the next. The resources in ``holds`` stay occupied over such a
    break (a sewing frame), the others are free meanwhile (a pair of hands).
    A task of zero minutes is a milestone: it uses nothing.
    """

    id: str
    duration: int
    demand: Mapping[str, int] = field(default_factory=dict)
    within: tuple[str, ...] = ()
    split: bool = False
    holds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Lag:
    """``after`` starts at least, and at most, so many minutes after ``before`` starts.

    Either number may be zero or negative, and ``at_least`` may be longer than the task.
    ``from_finish`` measures from the finish of ``before`` instead: needed when ``before``
    may be split, because its finish then depends on its start.
    """

    before: str
    after: str
    at_least: int
    at_most: int | None = None
    from_finish: bool = False


@dataclass(frozen=True, slots=True)
class Schedule:
    """A schedule, or the reason why there is none.

    ``feasible``: every lag, capacity and window is kept (checked before it is returned).
    ``proven``: no schedule finishes earlier; without ``feasible``, that none exists.
    ``start`` is empty and ``finish`` is 0 when not feasible; ``reason`` then says why.
    ``segments`` gives the stretches of work of each task, one unless it was split.
    ``slack``: minutes by which a task starts later when all tasks are moved as late as they
    go with the same finish.
    """

    start: Mapping[str, int]
    finish: int
    proven: bool
    feasible: bool
    reason: str = ""
    segments: Mapping[str, list[Segment]] = field(default_factory=dict)
    slack: Mapping[str, int] = field(default_factory=dict)

    @property
    def critical(self) -> tuple[str, ...]:
        """The tasks without slack, in the order of their start."""
        tight = [name for name, spare in self.slack.items() if spare == 0]
        return tuple(sorted(tight, key=lambda name: self.start[name]))
