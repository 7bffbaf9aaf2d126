"""Many equal pieces: how often to cut which pattern, by a linear programme over patterns.

Column generation after P. C. Gilmore and R. E. Gomory, "A linear programming approach to the
cutting-stock problem", Operations Research 9 (1961), pp. 849-859. The programme is solved by the
revised simplex method; patterns are cut as often as the rounded-down solution says, and the
pieces that are left make a small task of their own.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.strips import Stack, Strip, best_strips, stacks_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

_MOST_PIVOTS = 400
_DEAR = 20.0  # cost of leaving one piece uncut, in sheets of the dearest size
_SLACK = 1e-7


@dataclass(frozen=True, slots=True)
class Pattern:
    """Strips on one panel of a stock: its way of pre-cutting, the axis of the first cuts."""

    stock: int
    way: int
    panel: int
    axis: int
    strips: tuple[Strip, ...]

    def counts(self, kinds: int) -> list[int]:
        """How many pieces of each kind."""
        found = [0] * kinds
        for strip in self.strips:
            for stack in strip.stacks:
                found[stack.kind] += stack.number
        return found


@dataclass(slots=True)
class Kinds:
    """The items of a job grouped by kind."""

    sides: list[tuple[tuple[float, float], ...]] = field(default_factory=list)
    items: list[list[int]] = field(default_factory=list)


def kinds_of(job: Job) -> Kinds:
    """Kinds in the order of their first items."""
    found, places = Kinds(), dict[int, int]()
    for item, kind in enumerate(job.kind):
        at = places.setdefault(kind, len(places))
        if at == len(found.items):
            found.sides.append(job.sides[item])
            found.items.append([])
        found.items[at].append(item)
    return found


def often(job: Job, kinds: Kinds, budget: int) -> tuple[list[tuple[Pattern, int]], int]:
    """Patterns and how often to cut each, in whole sheets; and the work done."""
    programme = Programme(job, kinds, budget)
    programme.solve()
    return programme.rounded(), programme.work


class Programme:
    """Rows: one for each kind (at least the wanted number), one for each stock (at most)."""

    def __init__(self, job: Job, kinds: Kinds, budget: int) -> None:
        import numpy as np

        self.np = np
        self.job, self.budget, self.work = job, budget, 0
        self.wanted = [len(items) for items in kinds.items]
        self.stocks = job.stocks
        self.unit = max(stock.cost for stock in job.stocks)
        rows = len(self.wanted) + len(self.stocks)
        self.right = np.array([*self.wanted, *(s.count for s in self.stocks)], dtype=float)
        # In the basis at first: every piece uncut, every sheet on the shelf.
        self.names: list[Pattern | int] = list(range(rows))
        self.basis = np.eye(rows)
        self.costs = np.array([_DEAR] * len(self.wanted) + [0.0] * len(self.stocks))
        self.makers: list[tuple[int, int, int, list[Stack]]] = []
        for index, stock in enumerate(self.stocks):
            for way, panels in enumerate(stock.panels):
                if stock.count and len(panels) == 1:
                    for axis in (0, 1):
                        stacks = stacks_of(kinds.sides, self.wanted, axis, panels[0][1 - axis])
                        self.makers.append((index, way, axis, stacks))
        self.x: Floats = self.right.copy()
        self.known: list[Pattern] = []

    def solve(self) -> None:
        """Bring in better patterns until there is none, or the budget is spent."""
        np, rows = self.np, len(self.right)
        known = self.known
        matrix: Floats = np.zeros((rows, 0))
        costs: Floats = np.zeros(0)
        for _ in range(_MOST_PIVOTS):
            prices = np.linalg.solve(self.basis.T, self.costs)
            self.work += rows * rows + 400
            gain = prices @ matrix - costs if len(known) else np.zeros(1)
            kinds = len(self.wanted)
            worst = int(np.argmin(prices[:kinds]))
            if prices[worst] < -_SLACK:  # more pieces than wanted may be left over
                moved = self._pivot(-np.eye(rows)[worst], -1 - worst, 0.0)
            elif gain.max() > _SLACK:
                at = int(np.argmax(gain))
                moved = self._pivot(matrix[:, at], known[at], float(costs[at]))
            else:
                fresh = self._fresh(prices) if self.work < self.budget else []
                if not fresh:
                    return
                known += fresh
                matrix = np.column_stack([matrix, *(self._column(p) for p in fresh)])
                paid = [self.stocks[p.stock].cost / self.unit for p in fresh]
                costs = np.concatenate([costs, paid])
                moved = True
            if not moved:
                return

    def _pivot(self, column: Floats, name: Pattern | int, cost: float) -> bool:
        np = self.np
        step = np.linalg.solve(self.basis, column)
        self.work += len(step) ** 2 + 200
        rising = np.where(step > 1e-9)[0]
        if not len(rising):
            return False
        ratios = self.x[rising] / step[rising]
        leave = int(rising[np.argmin(ratios)])
        self.basis[:, leave] = column
        self.names[leave] = name
        self.costs[leave] = cost
        self.x = np.maximum(np.linalg.solve(self.basis, self.right), 0.0)
        return True

    def _column(self, pattern: Pattern) -> Floats:
        column = self.np.zeros(len(self.right))
        column[: len(self.wanted)] = pattern.counts(len(self.wanted))
        column[len(self.wanted) + pattern.stock] = 1.0
        return column

    def _fresh(self, prices: Floats) -> list[Pattern]:
        """The best pattern of every sheet size and first cut that betters the plan."""
        values = [max(float(price), 0.0) for price in prices[: len(self.wanted)]]
        found: list[Pattern] = []
        for index, way, axis, stacks in self.makers:
            stock = self.stocks[index]
            panel = stock.panels[way][0]
            value, strips, work = best_strips(
                panel[axis], panel[1 - axis], stacks, values, self.wanted
            )
            self.work += work + 10 * len(stacks)
            limit = stock.cost / self.unit - float(prices[len(self.wanted) + index])
            if value > limit + _SLACK:
                found.append(Pattern(index, way, 0, axis, strips))
        return found

    def value(self) -> float:
        """What the plan costs, in sheets of the dearest size."""
        return float(self.costs @ self.x)

    def rounded(self) -> list[tuple[Pattern, int]]:
        """The patterns of the plan, most often cut first, rounded down."""
        chosen = [
            (name, int(times + 1e-6))
            for name, times in zip(self.names, self.x, strict=True)
            if isinstance(name, Pattern) and times >= 1 - 1e-6
        ]
        return sorted(chosen, key=lambda entry: -entry[1])
