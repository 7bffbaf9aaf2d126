"""Large neighbourhood search: keep a part of a schedule's order, search the rest anew.

Sources: Godard, D., Laborie, P., Nuijten, W. (2005), "Randomized large neighborhood search for
cumulative scheduling", Proc. ICAPS, pp. 81-89 (kept order, freed stretch of time); Policella,
N., Cesta, A., Oddi, A., Smith, S. (2007), "From precedence constraint posting to partial order
schedules", AI Communications 20, pp. 163-180 (chains).
"""

from __future__ import annotations

from bisect import bisect_right, insort
from collections.abc import Sequence
from operator import itemgetter
from random import Random

from .instance import Instance, Start
from .orders import Orders, Outcome, Pairs, noise
from .search import Search

NODES = 30
"""Nodes of one search around a schedule, and of the searches that shorten the first one twice
as many. Many short searches beat few long ones."""
FIRST_NODES = 100
"""Nodes of the first search for any schedule; later ones are up to four times as long."""
SHARE_OF_STRETCHES = 0.7
"""How often one stretch of time is freed; else tasks here and there."""
SHARE_OF_SIDESTEPS = 0.3
"""How often a schedule that is just as long is welcome."""
COST_OF_RUN = 100
"""Placements that take as long as one run by itself, however short the search."""
COST_OF_LINK = 0.5
"""The same for handing on one resource to one task that keeps its order."""
COST_OF_NODE = 0.12
"""The same for looking for a clash, for each task."""
COST_OF_ORDER = 0.08
"""The same for imposing an order, for each task."""
COST_OF_ROW = 0.5
"""The same for renewing one row of the matrix of distances."""
COST_OF_PAIR = 0.03
"""The same for looking at a pair of rivals."""


class Relaxer:
    """Improves the best schedule of a search until its steps are used up.

    ``freed`` is the share of the schedule that is searched anew. It grows when a neighbourhood
    is exhausted and shrinks when one is too large to be.
    """

    def __init__(self, search: Search, orders: Orders, latest: int, rng: Random) -> None:
        self.search = search
        self.orders = orders
        self.latest = latest
        self.rng = rng
        self.freed = 0.3
        self.current: Start = []

    def run(self) -> None:
        """Find a schedule, shorten it as long as that goes well, then search around it."""
        search = self.search
        nodes, spread = FIRST_NODES, 0.0
        while search.best is None and not search.done:
            self._try(self.latest, nodes, spread)
            nodes, spread = min(2 * nodes, 4 * FIRST_NODES), spread + self.latest / 20
        better = True
        while better and not search.done:
            better = bool(self._try(search.finish - 1, 2 * NODES, search.finish / 20).start)
        self.current = search.best or []
        while not search.done:
            self._improve()

    def _try(self, finish: int, nodes: int, spread: float, arcs: Pairs = ()) -> Outcome:
        """One run of the depth-first search, counted in steps and offered."""
        orders, search = self.orders, self.search
        before = orders.work
        outcome = orders.run(finish, nodes, noise(self.rng, spread), arcs)
        nodes, posts, rows = map(int.__sub__, orders.work, before)
        each = COST_OF_NODE * nodes + COST_OF_ORDER * posts
        pairs = (nodes + 2) * len(orders.pairs)
        search.spend(
            COST_OF_RUN
            + round(each * search.instance.size + COST_OF_ROW * rows + COST_OF_PAIR * pairs)
        )
        search.offer(outcome.start)
        if outcome.exhausted and not arcs and finish >= self._aim():
            search.proven = True
        return outcome

    def _aim(self) -> int:
        """The latest finish that would be better than what is known."""
        return self.latest if self.search.best is None else self.search.finish - 1

    def _improve(self) -> None:
        """Search around the current schedule."""
        search, rng = self.search, self.rng
        finish = search.finish
        kept = self._kept(finish)
        search.spend(round(COST_OF_LINK * len(kept) * len(search.instance.capacity)))
        arcs = chains(search.instance, self.current, kept, rng)
        aside = rng.random() < SHARE_OF_SIDESTEPS
        outcome = self._try(finish if aside else finish - 1, NODES, 3 + finish / 40, arcs)
        if outcome.start is not None:
            self.current = outcome.start
        elif outcome.exhausted:
            self.freed = min(0.9, self.freed * 1.01 + 0.001)
        else:
            self.freed = max(0.1, self.freed * 0.97)

    def _kept(self, finish: int) -> list[int]:
        """The tasks that keep their order: those outside a stretch, or any."""
        instance, start, rng = self.search.instance, self.current, self.rng
        busy = [i for i in range(instance.size) if instance.demand[i]]
        if rng.random() >= SHARE_OF_STRETCHES:
            return [i for i in busy if rng.random() > self.freed]
        middle, width = 2 * rng.randrange(finish), self.freed * finish
        return [i for i in busy if abs(2 * start[i] + instance.duration[i] - middle) > width]


def chains(
    instance: Instance, start: Start, kept: Sequence[int], rng: Random
) -> list[tuple[int, int]]:
    """Orders that keep every capacity among the ``kept`` tasks, however their starts move.

    Each unit of a resource is handed on from task to task; an order that stands already is
    used again where it can be.
    """
    arcs: dict[tuple[int, int], None] = {}
    order = sorted((start[i], rng.random(), i) for i in kept)
    for r, capacity in enumerate(instance.capacity):
        pools = [(0, -1, capacity)]
        for moment, _, i in order:
            need = instance.uses[i][r]
            if need:
                _hand_on(pools, arcs, i, need, moment)
                insort(pools, (moment + instance.duration[i], i, need))
    return list(arcs)


def _hand_on(
    pools: list[tuple[int, int, int]],
    arcs: dict[tuple[int, int], None],
    i: int,
    need: int,
    moment: int,
) -> None:
    """Take what task ``i`` needs from the pools ``(free from, last task, units)``, first where
    it waits already, then from those that got free last."""
    ready = pools[: bisect_right(pools, moment, key=itemgetter(0))]
    ready.reverse()
    ready.sort(key=lambda pool: (pool[1], i) not in arcs)
    for pool in ready:
        free_from, last, units = pool
        pools.remove(pool)
        if last >= 0:
            arcs[last, i] = None
        if units >= need:
            if units > need:
                insort(pools, (free_from, last, units - need))
            return
        need -= units
