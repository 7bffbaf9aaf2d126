"""A genetic algorithm over orders of the tasks, every child justified.

Sources: Hartmann, S. (1998), "A competitive genetic algorithm for resource-constrained project
scheduling", Naval Research Logistics 45, pp. 733-750 (order representation, two-point
crossover); Valls, Ballestín and Quintanilla (2005), see ``justify``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from .decoders import Decoder
from .instance import Start
from .search import Search

CHANCE_OF_SWAP = 0.1
NOISE = (0.0, 0.15, 0.3, 0.6)
"""Random share of a rule's spread added to its priorities in the first population."""
PATIENCE = 8
"""Children in vain, per member, after which a new population begins."""

Rules = Sequence[Sequence[int]]


@dataclass(frozen=True, slots=True)
class Member:
    """One schedule of the population: its order; ``rank`` is its finish and sum of starts."""

    rank: tuple[int, int]
    order: list[int]


def follow_rules(search: Search, decoder: Decoder, rules: Rules) -> None:
    """Offer the schedule of each rule, in each scheme, and what justification makes of it."""
    for priority in rules:
        for variant in (0, 1):
            if not search.done:
                _member(search, decoder, decoder.from_priority(priority, variant))


def evolve(search: Search, decoder: Decoder, rules: Rules, rng: Random) -> None:
    """One population, bred until its members are alike or the steps are used up."""
    members = _first_population(search, decoder, rules, rng)
    if len(members) < 2:
        return
    ranked = [members[rank] for rank in sorted(members)]
    idle = 0
    while not search.done and idle < PATIENCE * len(ranked):
        idle += 1
        mother, father = _pick(ranked, rng), _pick(ranked, rng)
        order = _mutated(search, _crossed(mother.order, father.order, rng), rng)
        child = _member(search, decoder, decoder.from_order(order))
        if child is None or child.rank in members or child.rank > ranked[-1].rank:
            continue
        del members[ranked[-1].rank]
        members[child.rank] = ranked[-1] = child
        ranked.sort(key=lambda member: member.rank)
        idle = 0


def _member(search: Search, decoder: Decoder, start: Start | None) -> Member | None:
    """Offer a schedule, justify it while that helps, and return it as a member."""
    finish = search.offer(start)
    if start is None or finish is None:
        return None
    while not search.done:
        better = decoder.justified(start)
        shorter = search.offer(better)
        if better is None or shorter is None or shorter > finish:
            break
        start, gain, finish = better, finish - shorter, shorter
        if gain == 0:
            break
    return Member((finish, sum(start)), decoder.order_of(start))


def _first_population(
    search: Search, decoder: Decoder, rules: Rules, rng: Random
) -> dict[tuple[int, int], Member]:
    members: dict[tuple[int, int], Member] = {}
    for attempt in range(4 * decoder.population):
        if search.done or len(members) == decoder.population:
            break
        rule = rules[attempt % len(rules)]
        spread = NOISE[attempt // len(rules) % len(NOISE)] * (max(rule) - min(rule) + 1)
        priority = [value + rng.random() * spread for value in rule]
        member = _member(search, decoder, decoder.from_priority(priority, attempt))
        if member:
            members.setdefault(member.rank, member)
    return members


def _pick(ranked: list[Member], rng: Random) -> Member:
    """The better of two random members."""
    return ranked[min(rng.randrange(len(ranked)), rng.randrange(len(ranked)))]


def _crossed(mother: list[int], father: list[int], rng: Random) -> list[int]:
    """The mother's order, with a middle part in the order the father gives those tasks."""
    first, last = sorted((rng.randrange(len(mother) + 1), rng.randrange(len(mother) + 1)))
    head = mother[:first]
    seen = set(head)
    middle = [i for i in father if i not in seen][: last - first]
    seen.update(middle)
    return head + middle + [i for i in mother if i not in seen]


def _mutated(search: Search, order: list[int], rng: Random) -> list[int]:
    """Neighbours that no arc ties change places now and then."""
    before = search.instance.before
    for k in range(1, len(order)):
        if rng.random() < CHANCE_OF_SWAP and order[k - 1] not in before[order[k]]:
            order[k - 1], order[k] = order[k], order[k - 1]
    return order
