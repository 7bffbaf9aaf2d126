"""Goal-driven ruin and recreate over cut trees.

A state is a set of sheets in work and the items that lie nowhere. The goal is to place all items
at a cost below the best plan so far. Each step frees panels on a few sheets (or whole sheets),
puts the loose items back, opens other sheets while the goal's cost allows, and keeps the outcome
by the rule of simulated annealing. The idea is that of S. Gardeyn and T. Wauters, "A goal-driven
ruin and recreate heuristic for the 2D variable-sized bin packing problem with guillotine
constraints", European Journal of Operational Research 301 (2022), pp. 432-444; details are ours.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from random import Random

from foredge.plan.cutting.cover import Pool
from foredge.plan.cutting.insert import Style, insert_all, insert_closest
from foredge.plan.cutting.job import Job
from foredge.plan.cutting.start import fill_sheet
from foredge.plan.cutting.tree import Bin, Node, bin_items, copy_without, items_of, parts_of

_POWERS = (1.05, 1.2, 1.5, 2.0)
_SKIP = 0.04  # share of places passed over
_SWAP = 0.12  # share of insertions with the less likely first cut
_EXACT = 0.25  # an insertion that fits a free panel exactly in one length costs this much of it
_CLOSEST = 0.6  # share of steps that insert what fits closest, not what comes first
_COOLING = 0.02  # heat at the end of a run, of that at its start
_MOST_SHEETS = 4
_MOST_PANELS = 4
_DEAREST = 0.3  # chance to open the dearest sheet that the limit allows
_MOST_LOOSE = 8
_CLIMB = 0.5  # chance that a freed panel grows to the panel it was cut from


class State:
    """Sheets in work, loose items, and how many sheets of each size are still on the shelf."""

    __slots__ = ("bins", "cost", "loose", "shelf")

    def __init__(self, job: Job, bins: list[Bin], loose: list[int]) -> None:
        self.bins = bins
        self.loose = loose
        self.shelf = [stock.count for stock in job.stocks]
        for bin_ in bins:
            self.shelf[bin_.stock] -= 1
        self.cost = sum(job.stocks[bin_.stock].cost for bin_ in bins)


class Search:
    """Ruin and recreate under a cost limit, with its own random numbers and work count."""

    def __init__(self, job: Job, worth: list[float], limit: float, rng: Random) -> None:
        self.job = job
        self.limit = limit
        self.rng = rng
        self.random: Callable[[], float] = rng.random
        self.worth = worth
        self.trouble = [1.0] * len(worth)
        largest = max(stock.area for stock in job.stocks)
        costs = sum(stock.cost for stock in job.stocks)
        self.per_cost = sum(stock.area for stock in job.stocks) / costs / largest
        self.heat = 0.1
        self.thrift = 0.0
        self.gather = 0.0
        self.mean_area = sum(job.area) / len(job.area)
        self.largest = largest
        self.work = 0
        self.pool = Pool(job)
        self.whole = 0.3 if len(job.stocks) > 1 else 0.05
        self.climb = _CLIMB

    def start(self, state: State) -> State:
        """Give up the emptiest sheets until the cost is under the limit."""
        stocks = self.job.stocks
        bins = sorted(state.bins, key=lambda b: b.fill / stocks[b.stock].area, reverse=True)
        cost = state.cost
        dropped: list[Bin] = []
        while bins and cost > self.limit:
            dropped.append(bins.pop())
            cost -= stocks[dropped[-1].stock].cost
        loose = list(state.loose)
        for bin_ in dropped:
            loose += bin_items(bin_)
        return State(self.job, bins, loose)

    def run(self, state: State, budget: int) -> tuple[State, bool]:
        """Search until nothing is loose or the work ``budget`` is spent: best state, success."""
        end = self.work + budget
        begin = self.work
        best, best_score = state, self._loss(state)
        score = best_score
        first = self.heat * sum(self.worth) / len(self.worth)
        while state.loose and self.work < end:
            heat = first * _COOLING ** ((self.work - begin) / budget)
            found = self._step(state)
            loss = self._loss(found)
            worse = loss - score
            if worse <= 0 or self.random() < math.exp(-worse / heat):
                state, score = found, loss
                if loss < best_score or not found.loose:
                    best, best_score = found, loss
        return best, not best.loose

    def _loss(self, state: State) -> float:
        worth = self.worth
        loss = sum([worth[item] for item in state.loose])
        if self.gather:
            loss -= self.gather * sum([bin_.room for bin_ in state.bins]) / self.largest
        return loss + self.thrift * state.cost * self.per_cost

    def _step(self, state: State) -> State:
        """One ruin and recreate."""
        job = self.job
        chosen = self._choose(state)
        new = State.__new__(State)
        new.cost, new.shelf = state.cost, list(state.shelf)
        leaves: list[Node] = []
        touched, loose = self._ruin(state, chosen, new, leaves)
        style = Style(_POWERS[int(self.random() * 4)], _SKIP, _SWAP, _EXACT)
        leaves = self._wide_enough(leaves, loose)
        if self.random() < _CLOSEST:
            left, work = insert_closest(job, leaves, loose, style, self.random)
        else:
            left, work = insert_all(job, leaves, self._order(loose), style, self.random)
        self.work += 180 + 10 * len(chosen) + len(state.bins) + work + 3 * len(loose)
        if self.gather:
            self._rate_room(leaves)
        if left and new.cost < self.limit:
            left = self._open(left, new, touched, style)
        new.loose = left
        picked = set(chosen)
        new.bins = [bin_ for index, bin_ in enumerate(state.bins) if index not in picked]
        for twin in touched:
            if twin.mask:
                new.bins.append(twin)
                self.pool.note(twin)
            else:
                new.shelf[twin.stock] += 1
                new.cost -= job.stocks[twin.stock].cost
        for item in left:
            self.trouble[item] *= 1.02
        return new

    def _rate_room(self, leaves: list[Node]) -> None:
        """Free area counts in full only in panels as large as a mean item."""
        mean = self.mean_area
        for leaf in leaves:
            area = leaf.w * leaf.h
            leaf.home.room += area if area > mean else area * area / mean

    def _wide_enough(self, leaves: list[Node], loose: list[int]) -> list[Node]:
        """The free panels no narrower or lower than every loose item."""
        sides = [side for item in loose for side in self.job.sides[item]]
        if not sides:
            return leaves
        w, h = min([side[0] for side in sides]), min([side[1] for side in sides])
        return [leaf for leaf in leaves if leaf.w >= w and leaf.h >= h]

    def _ruin(
        self, state: State, chosen: list[int], new: State, leaves: list[Node]
    ) -> tuple[list[Bin], list[int]]:
        """Copies of the chosen sheets with some panels freed; all loose items.

        Now and then the first chosen sheet goes back on the shelf whole.
        """
        job = self.job
        touched: list[Bin] = []
        loose: list[int] = []
        first = state.bins[chosen[0]] if chosen else None
        if first and self.random() < self.whole * min(1.0, _MOST_LOOSE / first.mask.bit_count()):
            gone = first
            loose += bin_items(gone)
            self.work += 2 * len(loose)
            new.shelf[gone.stock] += 1
            new.cost -= job.stocks[gone.stock].cost
            kept = chosen[1:]
        else:
            kept = chosen
        for number, index in enumerate(kept):
            if len(loose) > _MOST_LOOSE:
                del chosen[len(chosen) - len(kept) + number :]
                break
            bin_ = state.bins[index]
            touched.append(copy_without(bin_, self._dropped(bin_), leaves, loose, job.area))
        return touched, loose + state.loose

    def _choose(self, state: State) -> list[int]:
        """One to four sheets, the first by preference one with much free area."""
        number = len(state.bins)
        if not number:
            return []
        random = self.random
        stocks = self.job.stocks
        first = int(random() * number)
        if random() < 0.5:
            other = int(random() * number)
            a, b = state.bins[first], state.bins[other]
            if stocks[b.stock].area - b.fill > stocks[a.stock].area - a.fill:
                first = other
        chosen = [first]
        for _ in range(int(random() * _MOST_SHEETS)):
            other = int(random() * number)
            if other not in chosen:
                chosen.append(other)
        return chosen

    def _dropped(self, bin_: Bin) -> set[Node]:
        """Panels to free: a few random ones, each an item or a panel some levels above it."""
        random = self.random
        parts = parts_of(bin_)
        self.work += 5 * len(parts)
        if not parts:
            return set()
        dropped: set[Node] = set()
        number = 0
        for _ in range(1 + int(random() * random() * _MOST_PANELS)):
            node, items = parts[int(random() * len(parts))]
            while node.up is not None and random() < self.climb:
                node = node.up
                items = 0
            if node in dropped:
                continue
            dropped.add(node)
            number += items or len(items_of(node))
            if number >= _MOST_LOOSE:
                break
        return dropped

    def _order(self, loose: list[int]) -> list[int]:
        random, area, trouble = self.random, self.job.area, self.trouble
        way = random()
        if way < 0.1:
            sides = self.job.sides
            keys = {i: max(sides[i][0]) * (0.8 + 0.4 * random()) for i in loose}
        else:
            keys = {i: area[i] * trouble[i] * (0.6 + 0.8 * random()) for i in loose}
        return sorted(loose, key=keys.__getitem__, reverse=True)

    def _open(self, left: list[int], new: State, touched: list[Bin], style: Style) -> list[int]:
        """Open further sheets for the items left while the limit allows; what is still left."""
        stocks, random = self.job.stocks, self.random
        fitting = list(range(len(stocks)))
        while left:
            room = self.limit - new.cost
            fitting = [i for i in fitting if new.shelf[i] and stocks[i].cost <= room]
            if not fitting:
                break
            if random() < _DEAREST:  # little of the room stays unused
                index = max(fitting, key=lambda i: stocks[i].cost)
            else:
                index = fitting[int(random() * len(fitting))]
            way = int(random() * len(stocks[index].ways))
            bin_, left, work = fill_sheet(self.job, index, way, left, style, random)
            self.work += work + 10
            if bin_.mask:
                new.shelf[index] -= 1
                new.cost += stocks[index].cost
                touched.append(bin_)
            else:
                fitting.remove(index)
        return left
