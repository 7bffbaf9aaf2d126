"""Working windows by name: bench sessions, daylight, a borrowed press."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

Window = tuple[int, int]
"""A stretch of time ``[start, end)`` in minutes."""


@dataclass(frozen=True, slots=True)
class Calendar:
    """Windows in minutes ``[start, end)`` under each name a task can give in ``within``.

    The windows of one name may touch or overlap; they are then one window.
    """

    windows: Mapping[str, Sequence[Window]]

    def open_for(self, names: Iterable[str]) -> list[Window]:
        """The windows in which every named calendar is open, sorted and apart."""
        lists = [merged(self.windows[name]) for name in names]
        common = lists[0]
        for other in lists[1:]:
            common = _intersection(common, other)
        return common


def merged(windows: Iterable[Window]) -> list[Window]:
    """The same time as sorted windows that neither touch nor overlap."""
    result: list[Window] = []
    for start, end in sorted(windows):
        if result and start <= result[-1][1]:
            result[-1] = (result[-1][0], max(end, result[-1][1]))
        else:
            result.append((start, end))
    return result


def _intersection(left: list[Window], right: list[Window]) -> list[Window]:
    result: list[Window] = []
    i = j = 0
    while i < len(left) and j < len(right):
        start = max(left[i][0], right[j][0])
        end = min(left[i][1], right[j][1])
        if start < end:
            result.append((start, end))
        if left[i][1] < right[j][1]:
            i += 1
        else:
            j += 1
    return result
