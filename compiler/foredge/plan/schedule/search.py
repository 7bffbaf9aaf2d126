"""The state of a search: the best schedule, the steps it may still take, what is proven."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from .bounds import refuted
from .instance import Instance, Start

WINDOWED = 9
"""Steps counted for one placement when tasks are bound to windows: a maker's own plan should
be there at once, and its long waits leave less to choose than a benchmark does."""


class Search:
    """Keeps the best schedule and stops when it is proven or the steps are used up.

    A step is one task placed once. Steps are counted, never time, so the same problem ends
    with the same schedule on every machine.
    """

    def __init__(self, instance: Instance, steps: int) -> None:
        self.instance = instance
        self.steps = steps
        self.weight = WINDOWED if any(instance.openings) else 1
        self.best: Start | None = None
        self.finish = 0
        self.proven = False

    @property
    def done(self) -> bool:
        """Nothing more to do."""
        return self.proven or self.steps <= 0

    @contextmanager
    def part(self, share: float) -> Iterator[None]:
        """Leave only a share of the steps to what is done inside."""
        kept = round(self.steps * (1 - share))
        self.steps -= kept
        yield
        self.steps += kept

    def spend(self, steps: int) -> None:
        """Count steps."""
        self.steps -= steps * self.weight

    def offer(self, start: Start | None) -> int | None:
        """Take the schedule if it is the best so far; returns its finish."""
        if start is None:
            return None
        finish = max(self.instance.finishes(start), default=0)
        if self.best is None or finish < self.finish:
            self.best, self.finish = start, finish
            self.proven = finish == 0 or refuted(self.instance, finish - 1)
        return finish
