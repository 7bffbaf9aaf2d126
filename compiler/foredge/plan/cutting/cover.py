"""A pool of well-filled sheets seen by the search, and sets of them that do not share an item.

The search finds good sheets one at a time and loses them again; a bounded depth-first search
over the pool puts them together.
"""

from __future__ import annotations

from random import Random

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import Bin

_MOST_KEPT = 2_000
_MOST_ITEMS = 16  # fuller sheets hardly ever go together
_MOST_NODES = 400
_MOST_TRIED = 6
_MOST_WORK = 30_000


class Pool:
    """Filled sheets by stock and set of items; the least wasteful are kept."""

    def __init__(self, job: Job) -> None:
        self.job = job
        self.least_fill = [0.86 * stock.width * stock.height for stock in job.stocks]
        self.bins: dict[tuple[int, int], Bin] = {}

    def note(self, bin_: Bin) -> None:
        """Keep the sheet when it is filled well."""
        if bin_.fill >= self.least_fill[bin_.stock] and bin_.mask.bit_count() <= _MOST_ITEMS:
            self.bins[(bin_.stock, bin_.mask)] = bin_
            if len(self.bins) >= 2 * _MOST_KEPT:
                self._prune()

    def waste(self, bin_: Bin) -> float:
        """Share of the sheet that is not used."""
        stock = self.job.stocks[bin_.stock]
        return 1.0 - bin_.fill / (stock.width * stock.height)

    def _prune(self) -> None:
        ranked = sorted(self.bins.items(), key=lambda entry: self.waste(entry[1]))
        self.bins = dict(ranked[:_MOST_KEPT])

    def add(self, bins: list[Bin]) -> None:
        """Keep these sheets whatever they are."""
        for bin_ in bins:
            self.bins[(bin_.stock, bin_.mask)] = bin_

    def cover(
        self, limit: float, rng: Random, *, rare_first: bool = False
    ) -> tuple[list[Bin], list[int], int]:
        """Disjoint sheets within the cost limit that leave little area: bins, items left, work.

        ``rare_first``: items that few sheets hold are covered first, else large ones.
        """
        return _Cover(self, limit, rng, rare_first).search()


class _Cover:
    """One bounded depth-first search over the pool."""

    def __init__(self, pool: Pool, limit: float, rng: Random, rare_first: bool) -> None:
        job = pool.job
        self.job, self.limit = job, limit
        # A little noise makes each search look at other sets first.
        keyed = [
            (pool.waste(bin_) + 0.02 * rng.random(), index, bin_)
            for index, bin_ in enumerate(pool.bins.values())
        ]
        self.shelf = [stock.count for stock in job.stocks]
        self.nodes = 0
        self.work = len(keyed) * 8
        self.ranked = [bin_ for _, _, bin_ in sorted(keyed)]
        self.holding: list[list[Bin]] = [[] for _ in job.area]
        for bin_ in self.ranked:
            self.work += 2 * bin_.mask.bit_count()
            for item in members(bin_.mask):
                self.holding[item].append(bin_)
        self.end = self.work + _MOST_WORK
        self.rate = min((s.cost / (s.width * s.height) for s in job.stocks if s.count), default=0.0)
        self.best: list[Bin] = []
        self.best_left = sum(job.area)
        self.order = sorted(
            range(len(job.area)),
            key=lambda i: (
                len(self.holding[i]) == 0,
                len(self.holding[i]) if rare_first else 0,
                -job.area[i] * (0.8 + 0.4 * rng.random()),
            ),
        )

    def search(self) -> tuple[list[Bin], list[int], int]:
        """The set that leaves the least item area."""
        everything = (1 << len(self.job.area)) - 1
        self._dive(everything, 0, sum(self.job.area), [], 0)
        left = everything
        for bin_ in self.best:
            left &= ~bin_.mask
        return list(self.best), members(left), self.work

    def _dive(self, open_: int, cost: int, area: float, chosen: list[Bin], start: int) -> None:
        """Choose a sheet for the next uncovered item; ``open_`` are the uncovered ones."""
        self.nodes += 1
        if area < self.best_left:
            self.best, self.best_left = list(chosen), area
        for position in range(start, len(self.order)):
            if self._spent() or not self.best_left > 0.5:
                return
            item = self.order[position]
            if not open_ >> item & 1:
                continue
            tried = 0
            for bin_ in self.holding[item]:
                self.work += 1
                if bin_.mask & ~open_ or not self.shelf[bin_.stock]:
                    continue
                total = cost + self.job.stocks[bin_.stock].cost
                if total + (area - bin_.fill) * self.rate > self.limit:
                    continue
                self.shelf[bin_.stock] -= 1
                chosen.append(bin_)
                self._dive(open_ & ~bin_.mask, total, area - bin_.fill, chosen, position + 1)
                chosen.pop()
                self.shelf[bin_.stock] += 1
                tried += 1
                if tried >= _MOST_TRIED or self._spent():
                    break
            if tried:
                return

    def _spent(self) -> bool:
        return self.nodes > _MOST_NODES or self.work > self.end


def members(mask: int) -> list[int]:
    """The items of a set."""
    found = []
    while mask:
        low = mask & -mask
        found.append(low.bit_length() - 1)
        mask ^= low
    return found
