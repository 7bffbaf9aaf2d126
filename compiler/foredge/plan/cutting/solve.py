"""From a job to the best plan found: starts, goal-driven search, a last look at the cuts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from foredge.plan.cutting.blocks import perfect_bins
from foredge.plan.cutting.bounds import area_cost, cheapest_cover, scaled_cost
from foredge.plan.cutting.insert import Style
from foredge.plan.cutting.job import Job
from foredge.plan.cutting.repeats import patterned, renamed, repeats, rest_of
from foredge.plan.cutting.search import Search, State
from foredge.plan.cutting.start import Yields, fill_all
from foredge.plan.cutting.tidy import tidy
from foredge.plan.cutting.tiny import cheapest, small
from foredge.plan.cutting.tree import Bin, bin_items

_POWERS = (1.5, 1.05, 2.0, 1.2)
_WORK_PER_ITEM = 20_000
_LEAST_WORK_WHEN_SHORT = 400_000
_MOST_WORK = 3_400_000
_MOST_EQUAL = 12
_PLACE_ROUNDS = 6
_SEGMENTS = 12
_CLOSE = 0.03  # slack of the bound up to which sheets without waste are looked for at length
_NONE = 1e-6  # slack that is only rounding: nothing but sheets without waste will do
_PERFECT_ROUNDS = 12
_PERFECT_ITEMS = 32  # of so few all perfect sheets are soon found
_GATHER = 0.3  # what free area in large panels is worth beside loose items
_HEATS = (0.1, 0.3, 0.04)  # in shares of a mean item
_THRIFTS = (0.0, 0.3)  # how much a sheet in use counts beside loose items


@dataclass(frozen=True, slots=True)
class Found:
    """The sheets in work, the items left over, and the lower bound on the cost."""

    bins: list[Bin]
    left: list[int]
    cost: int
    bound: int


def solve(job: Job, seed: int, effort: float) -> Found:
    """The best plan within the work that ``effort`` allows; the same for the same arguments."""
    if not job.area:
        return Found([], [], 0, 0)
    rng = Random(seed)
    budget = int(effort * _work_for(job))
    state, work, bound = _first(job, rng, budget // 12)
    if state.loose:
        most = max(budget // 2, int(effort * _LEAST_WORK_WHEN_SHORT))
        state, work = _place_most(job, state, rng, most, work)
        bound = _bound_of(job, state)
    lost = state.loose
    state = State(job, state.bins, [])
    if small(job) and not lost and state.cost > bound:
        bins, _, proven = cheapest(job, state.cost)
        state = state if bins is None else State(job, bins, [])
        bound = state.cost if proven else bound
    if repeats(job) and not lost and state.cost > bound:
        state, work = _by_patterns(job, state, seed, budget, work)
    state = _improve(job, state, rng, budget - work, bound)
    final = State(job, tidy(job, state.bins, rng), [])
    return Found(final.bins, lost, final.cost, bound)


def _work_for(job: Job) -> float:
    """Few items have few plans: the work grows faster than their number until it is capped.

    Of equal items only the first few count.
    """
    items = sum(min(number, _MOST_EQUAL) for number in Counter(job.kind).values())
    each = _WORK_PER_ITEM * (1.5 if len(job.stocks) > 1 else 1.0)
    return float(min(_MOST_WORK, each * items * max(1.0, items / 10) ** 1.6))


def _by_patterns(job: Job, state: State, seed: int, budget: int, work: int) -> tuple[State, int]:
    """The plan by patterns when it is better than ``state``; also the work done till now."""
    bins, left, done = patterned(job, budget // 2)
    work += done
    if bins and left:
        rest = rest_of(job, bins, left)
        part = max(min(budget - work, budget // 2), 0)
        found = solve(rest, seed, part / _work_for(rest))
        work += part
        bins += renamed(found.bins, left)
        left = [left[item] for item in found.left]
    other = State(job, bins, [])
    return (state if left or other.cost >= state.cost else other), work


def _bound_of(job: Job, state: State) -> int:
    gap = job.kerf
    need = 0.0
    for bin_ in state.bins:
        for item in bin_items(bin_):
            w, h = job.sides[item][0]
            need += (w - gap) * (h - gap)
    return cheapest_cover([stock for stock in job.stocks if stock.count], need)


def _orders(job: Job) -> Iterator[list[int]]:
    """Items from large to small in several senses."""
    items = range(len(job.area))
    sides, area = job.sides, job.area
    yield sorted(items, key=lambda i: -area[i])
    yield sorted(items, key=lambda i: (-max(sides[i][0]), -area[i]))
    yield sorted(items, key=lambda i: (-sides[i][0][1], -sides[i][0][0]))
    yield sorted(items, key=lambda i: (-sides[i][0][0], -sides[i][0][1]))
    yield sorted(items, key=lambda i: (-min(sides[i][0]), -area[i]))


def _first(job: Job, rng: Random, budget: int) -> tuple[State, int, int]:
    """The best of several constructed plans (fewest items left, then least cost); work; bound.

    The stronger bound is asked for only when a plan is above the bound by area.
    """
    best: State | None = None
    bound, strong = area_cost(job), False
    work = 0
    yields: Yields = {}
    repeats = len(set(job.kind)) < len(job.kind)
    for power in _POWERS:
        for number, order in enumerate(_orders(job)):
            table = yields if repeats and number % 2 == 0 else None
            bins, left, done = fill_all(job, order, Style(power), rng.random, table)
            work += done
            state = State(job, bins, left)
            if best is None or _rank(state) < _rank(best):
                best = state
            if not (best.loose or strong or best.cost <= bound):
                bound, strong = scaled_cost(job, bound), True
            if work > budget or (not best.loose and best.cost <= bound):
                return best, work, bound
    assert best is not None
    return best, work, bound


def _rank(state: State) -> tuple[int, int]:
    return len(state.loose), state.cost


def _place_most(job: Job, state: State, rng: Random, budget: int, work: int) -> tuple[State, int]:
    """Use every sheet there is to place as many items as possible."""
    small_first = sorted(range(len(job.area)), key=job.area.__getitem__)
    bins, left, done = fill_all(job, small_first, Style(1.5), rng.random, {})
    work += done
    other = State(job, bins, left)
    state = min(state, other, key=_rank)
    if not state.loose:
        return state, work
    total = sum(job.area)
    limit = sum(stock.cost * stock.count for stock in job.stocks)
    search = Search(job, [1.0 + area / total for area in job.area], limit, rng)
    best, part = state, max(budget - work, 0) // _PLACE_ROUNDS
    for number in range(_PLACE_ROUNDS):
        search.heat = _HEATS[number % 3]
        found, done = search.run(search.start(state), part)
        if not done:
            bins, left, extra = search.pool.cover(limit, rng)
            search.work += extra
            found = min(found, State(job, bins, left), key=_rank)
        best = min(best, found, key=_rank)
        if not best.loose:
            break
    return best, work + search.work


def _improve(job: Job, state: State, rng: Random, budget: int, bound: int) -> State:
    """Lower the cost limit below the best plan as long as the work lasts."""
    largest = max(stock.area for stock in job.stocks)
    search = Search(job, [area / largest for area in job.area], 0, rng)
    search.gather = _GATHER if len(job.stocks) == 1 else 0.0
    best, current = state, state
    segment = max(budget // _SEGMENTS, 1)
    turn = 0
    if best.cost > bound:
        slack = 1 - sum(job.area) * job.unit / bound
        share = 10 if len(job.stocks) > 1 or slack >= _CLOSE else 4 if slack > _NONE else 2
        current = _perfect_first(search, state, rng, budget // share)
        if not current.loose:
            best = current
    while best.cost > bound and search.work < budget:
        if best.cost // job.unit <= bound // job.unit and search.work > budget // 4:
            break  # the area is the least there can be; only the number of sheets may be not
        search.limit = best.cost - 1
        search.heat, search.thrift = _HEATS[turn % 3], _THRIFTS[turn % 2]
        turn += 1
        found, done = search.run(search.start(current), min(segment, budget - search.work))
        if not done:
            bins, left, work = search.pool.cover(search.limit, rng)
            search.work += work
            found = State(job, bins, left)
            done = not left
        current = found
        if done:
            best = found
    return best


def _perfect_first(search: Search, state: State, rng: Random, budget: int) -> State:
    """A plan below the cost of ``state`` that starts from sheets without waste, or ``state``.

    After a first look at all items, those not covered are looked at again, alone or together
    with what lies on a few of the chosen sheets: of few items all perfect sheets are soon found.
    """
    job, limit = search.job, state.cost - 1
    best, least = state, float(sum(job.area)) + 1.0
    items = list(range(len(job.area)))
    end = search.work + budget
    for number in range(_PERFECT_ROUNDS):
        part = (end - search.work) // 2
        if part <= 0:
            break
        bins, work = perfect_bins(job, items, part)
        search.work += work
        if not bins and not number:
            break
        search.pool.add(bins)
        chosen, left, work = search.pool.cover(limit, rng, rare_first=number % 3 < 2)
        search.work += work
        if (area := sum(job.area[item] for item in left)) < least:
            best, least = State(job, chosen, left), area
        if not left:
            break
        items = list(left)
        for bin_ in rng.sample(chosen, len(chosen)) if number else []:
            if len(items) + bin_.mask.bit_count() <= _PERFECT_ITEMS:
                items += bin_items(bin_)
    return best
