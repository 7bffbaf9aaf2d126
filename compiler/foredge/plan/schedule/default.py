"""The default method: pure Python, bounded by steps, the same result in every process."""

from __future__ import annotations

from random import Random

from .bounds import refuted
from .branch import Brancher
from .decoders import BlockDecoder, Decoder, LagDecoder, PlainDecoder
from .evolve import Rules, evolve, follow_rules
from .instance import Instance
from .orders import Orders
from .propagate import LONG_PATIENCE, Domain
from .relax import Relaxer
from .rules import priorities
from .search import Search

STEPS = 150_000
"""Placements of one task, at most. About 0.3 seconds, with maximum lags a little more."""
SHARE_BRED = 0.3
"""How much of the steps goes to breeding, with maximum lags and no windows, before a schedule
is relaxed: what many small tasks share is ordered better that way."""
NODES = 60
"""Nodes of one depth-first search."""
COST_OF_NODE = 12
"""A node of the depth-first search takes about as long as so many placements."""


def latest_finish(instance: Instance) -> int:
    """A finish by which some schedule ends, if there is any: nothing happens one at a time
    for longer than all tasks and their lags together, after the last window."""
    longest = (
        max([minutes, *(weight for _, weight in instance.out[i])])
        for i, minutes in enumerate(instance.duration)
    )
    return instance.axis + sum(longest)


def search_default(instance: Instance, root: Domain, seed: int, steps: int = STEPS) -> Search:
    """Search for the earliest finish. ``root`` holds the starts left by lags and windows."""
    search = Search(instance, steps)
    finish = max((instance.end(i, root.early[i]) for i in range(instance.size)), default=0)
    rules = list(priorities(instance, Domain.up_to(instance, finish, LONG_PATIENCE)).values())
    rng = Random(seed)
    if instance.order is not None:
        _breed(search, PlainDecoder(search), rules, rng)
    elif any(instance.openings):
        _breed(search, BlockDecoder(search), rules, rng)
    else:
        decoder = LagDecoder(search, root)
        follow_rules(search, decoder, rules)
        if search.best is not None:
            with search.part(SHARE_BRED):
                while not search.done:
                    evolve(search, decoder, rules, rng)
        Relaxer(search, Orders(instance, decoder.ties.ahead), latest_finish(instance), rng).run()
    if search.best is None and not search.proven:
        search.proven = refuted(instance, latest_finish(instance))
    return search


def _breed(search: Search, decoder: Decoder, rules: Rules, rng: Random) -> None:
    """The rules first, then depth-first search and populations in turn."""
    follow_rules(search, decoder, rules)
    while not search.done:
        _branch(search, latest_finish(search.instance), rng)
        evolve(search, decoder, rules, rng)


def _branch(search: Search, latest: int, rng: Random) -> None:
    """Depth-first search for ever shorter schedules, as long as it goes well."""
    while not search.done:
        finish = latest if search.best is None else search.finish - 1
        brancher = Brancher(search.instance, finish, NODES, rng)
        start = brancher.run()
        search.spend((NODES - brancher.nodes) * COST_OF_NODE)
        search.offer(start)
        if start is None:
            search.proven = brancher.exhausted
            return
