"""Cuts in the order of the hands: like strips one after another, then the same to each of them."""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from foredge.plan.cutting import Cut, Part, UsedSheet

Where = Literal["", "first", "second", "strips"]
"""What of the run before is cut: its first parts, its second (or last) parts, all its strips."""

_PLACES = 6
"""Decimals of a millimetre to which two sizes are one."""


@dataclass(frozen=True, slots=True)
class Run:
    """``times`` like cuts across each of ``panels`` like panels; ``cuts`` are all of them.

    ``parent`` is the place of the run that the panels come from, None for the sheet itself.
    ``even``: what is left after the last cut is like the strips that came off.
    """

    cuts: tuple[Cut, ...]
    times: int
    panels: int
    even: bool
    parent: int | None = None
    where: Where = ""

    @property
    def first(self) -> Part:
        """What comes off with each cut, as it is on the first panel."""
        return self.cuts[0].first

    @property
    def rest(self) -> Part:
        """What is left after the last cut of the first panel."""
        return self.cuts[self.times - 1].second

    @property
    def strips(self) -> int:
        """How many parts are alike, on all panels together."""
        return self.panels * (self.times + self.even)


def in_runs(used: UsedSheet) -> UsedSheet:
    """``used`` with its cuts numbered so that those of a run follow each other."""
    order = [cut.order for run in runs_of(used) for cut in run.cuts]
    number = {old: new for new, old in enumerate(order, start=1)}
    cuts = {cut.order: cut for cut in used.cuts}

    def moved(part: Part) -> Part:
        return part if part.next_cut is None else replace(part, next_cut=number[part.next_cut])

    return replace(
        used,
        cuts=tuple(
            replace(
                cuts[old], order=number[old], first=moved(cuts[old].first),
                second=moved(cuts[old].second),
            )
            for old in order
        ),
    )  # fmt: skip


def runs_of(used: UsedSheet) -> tuple[Run, ...]:
    """The cuts of ``used`` as runs, each after the run its panels come from."""
    return tuple(_Runs(used).all()) if used.cuts else ()


class _Runs:
    def __init__(self, used: UsedSheet) -> None:
        self._placements = used.placements
        self._cuts = {cut.order: cut for cut in used.cuts}
        self._kinds: dict[Hashable, int] = {}
        self._of_cut: dict[int, int] = {}
        below = {part.next_cut for cut in used.cuts for part in (cut.first, cut.second)}
        (self._root,) = self._cuts.keys() - below
        for cut in self._deepest_first():
            parts = self._like(cut.first), self._like(cut.second)
            self._of_cut[cut.order] = self._kind(("cut", *_way(cut), *parts))

    def all(self) -> Iterator[Run]:
        """Depth first: what has come off is cut up before what is left."""
        waiting: list[tuple[list[int], int | None, Where]] = [([self._root], None, "")]
        told = 0
        while waiting:
            roots, parent, where = waiting.pop()
            rows = [self._row(self._cuts[root]) for root in roots]
            cuts = tuple(cut for row in rows for cut in row)
            even = self._like(rows[0][-1].second) == self._like(rows[0][0].first)
            yield Run(cuts, len(rows[0]), len(roots), even, parent, where)
            off = [cut.first for cut in cuts]
            left = [row[-1].second for row in rows]
            if even:
                groups: list[tuple[list[Part], Where]] = [([*off, *left], "strips")]
            else:
                groups = [(left, "second"), (off, "first" if len(rows[0]) == 1 else "strips")]
            for parts, which in groups:
                below = [part.next_cut for part in parts if part.next_cut is not None]
                if below:
                    waiting.append((below, told, which))
            told += 1

    def _row(self, cut: Cut) -> list[Cut]:
        """``cut`` and those that go on beside it in the same way."""
        row = [cut]
        while row[-1].second.next_cut is not None:
            other = self._cuts[row[-1].second.next_cut]
            if _way(other) != _way(cut) or self._like(other.first) != self._like(cut.first):
                break
            row.append(other)
        return row

    def _like(self, part: Part) -> int:
        """A number that two parts share where they have one size and become the same."""
        if part.next_cut is not None:
            what: Hashable = self._of_cut[part.next_cut]
        elif part.placement is not None:
            what = self._placements[part.placement].piece.name
        else:
            what = ("off-cut", part.off_cut)
        size = round(part.panel.width, _PLACES), round(part.panel.height, _PLACES)
        return self._kind((size, what))

    def _kind(self, what: Hashable) -> int:
        return self._kinds.setdefault(what, len(self._kinds))

    def _deepest_first(self) -> list[Cut]:
        found, queue = [], [self._root]
        while queue:
            cut = self._cuts[queue.pop()]
            found.append(cut)
            queue += [p.next_cut for p in (cut.first, cut.second) if p.next_cut is not None]
        return found[::-1]


def _way(cut: Cut) -> tuple[str, float]:
    return cut.axis, round(cut.at, _PLACES)
