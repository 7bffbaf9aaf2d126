"""When one task may start inside its windows, and when it is then finished."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import accumulate

from .calendar import Window


class Openings:
    """The possible starts of a task of ``duration`` minutes in sorted, separate windows.

    An unsplit task lies in one window. A split one works through as many windows as it
    needs, without a pause inside a window. ``cumulated[k]`` is the working time before
    window k; a moment of work is a position on that axis.
    """

    __slots__ = ("cumulated", "duration", "ends", "lasts", "split", "starts", "windows")

    def __init__(self, windows: Sequence[Window], duration: int, split: bool) -> None:
        self.duration = duration
        self.split = split and duration > 0
        fits = [w for w in windows if self.split or w[1] - w[0] >= duration]
        self.windows = fits
        self.starts = [w[0] for w in fits]
        self.ends = [w[1] for w in fits]
        self.cumulated = [0, *accumulate(end - start for start, end in fits)]
        self.lasts = self._last_starts()

    def _last_starts(self) -> list[int]:
        if not self.split:
            return [end - self.duration for end in self.ends]
        lasts = []
        for k, (start, end) in enumerate(self.windows):
            spare = self.cumulated[-1] - self.duration - self.cumulated[k]
            lasts.append(min(end - 1, start + spare))
        return lasts

    def first_start(self, moment: int) -> int | None:
        """The earliest possible start at or after ``moment``; None when there is none."""
        k = bisect_left(self.lasts, moment)
        if k == len(self.lasts):
            return None
        start = self.starts[k]
        if start >= moment:
            return start if start <= self.lasts[k] else None
        return moment

    def last_start(self, moment: int) -> int | None:
        """The latest possible start at or before ``moment``; None when there is none."""
        k = bisect_right(self.starts, moment) - 1
        while k >= 0 and self.lasts[k] < self.starts[k]:
            k -= 1
        return min(moment, self.lasts[k]) if k >= 0 else None

    def finish(self, start: int) -> int:
        """The finish of the task when it starts at the possible start ``start``."""
        if not self.split:
            return start + self.duration
        k = bisect_right(self.starts, start) - 1
        return self._end_at(self.cumulated[k] + start - self.starts[k] + self.duration)

    def first_start_to_finish(self, moment: int) -> int | None:
        """The earliest start whose finish is at or after ``moment``; None when there is none."""
        if not self.split:
            return self.first_start(moment - self.duration)
        k = bisect_left(self.ends, moment)
        if k == len(self.ends):
            return None
        done = self.cumulated[k] + max(moment - self.starts[k], 1)
        return self._start_at(max(done - self.duration, 0))

    def last_start_to_finish(self, moment: int) -> int | None:
        """The latest start whose finish is at or before ``moment``; None when there is none."""
        if not self.split:
            return self.last_start(moment - self.duration)
        k = bisect_left(self.starts, moment) - 1
        if k < 0:
            return None
        done = self.cumulated[k] + min(moment, self.ends[k]) - self.starts[k]
        return self._start_at(done - self.duration) if done >= self.duration else None

    def segments(self, start: int) -> list[Window]:
        """The stretches of work of the task when it starts at ``start``."""
        end = self.finish(start)
        k = bisect_right(self.starts, start) - 1
        pieces = [(start, min(end, self.ends[k]))]
        while pieces[-1][1] < end:
            k += 1
            pieces.append((self.starts[k], min(end, self.ends[k])))
        return pieces

    def _start_at(self, position: int) -> int | None:
        if position + self.duration > self.cumulated[-1]:
            return None
        k = bisect_right(self.cumulated, position) - 1
        return self.starts[k] + position - self.cumulated[k]

    def _end_at(self, position: int) -> int:
        k = bisect_left(self.cumulated, position) - 1
        return self.starts[k] + position - self.cumulated[k]

    def mirrored(self, axis: int) -> Openings:
        """The same openings with time running backwards from ``axis``."""
        windows = [(axis - end, axis - start) for start, end in reversed(self.windows)]
        return Openings(windows, self.duration, self.split)
