"""Generated project instances with fixed seeds, in the style of the published sets.

Source of the parameters (network complexity, resource factor, resource strength): Kolisch, R.,
Sprecher, A., Drexl, A. (1995), "Characterization and generation of a general class of
resource-constrained project scheduling problems", Management Science 41, pp. 1693-1703.
These are not the published files; the generator follows the description.
"""

from __future__ import annotations

from itertools import product
from random import Random

from foredge.plan.schedule import Lag, Task

Instance = tuple[list[Task], dict[str, int], list[Lag]]

COMPLEXITY = (1.5, 1.8, 2.1)
FACTOR = (0.25, 0.5, 0.75, 1.0)
STRENGTH = (0.2, 0.5, 0.7, 1.0)
MOST_LINKS = 3


def project(
    size: int, complexity: float, factor: float, strength: float, seed: int, resources: int = 4
) -> Instance:
    """A project with source and sink milestones, ``size`` tasks of 1 to 10 minutes between."""
    rng = Random(f"{size} {complexity} {factor} {strength} {seed}")
    links = _network(size, complexity, rng)
    names = [f"r{k}" for k in range(resources)]
    duration = [0, *(rng.randint(1, 10) for _ in range(size)), 0]
    cells = list(product(range(1, size + 1), range(resources)))
    chosen = set(rng.sample(cells, round(len(cells) * factor)))
    demand = {cell: rng.randint(1, 10) if cell in chosen else 0 for cell in cells}
    tasks = [
        Task(str(i), duration[i], {n: demand.get((i, k), 0) for k, n in enumerate(names)})
        for i in range(size + 2)
    ]
    lags = [Lag(str(i), str(j), duration[i]) for i, j in sorted(links)]
    peaks = _peaks(tasks, lags, names)
    capacity = {}
    for k, name in enumerate(names):
        least = max(demand[i, k] for i in range(1, size + 1))
        capacity[name] = max(least, round(least + strength * (peaks[name] - least)))
    return tasks, capacity, lags


def j30_style(count: int, size: int = 30) -> list[Instance]:
    """``count`` projects spread evenly over the 48 cells of the published design."""
    cells = list(product(COMPLEXITY, FACTOR, STRENGTH))
    step = max(1, len(cells) // count)
    order = [cells[(k * step + k * step // len(cells)) % len(cells)] for k in range(count)]
    return [project(size, *cell, seed=k) for k, cell in enumerate(order)]


def with_maximum_lags(size: int, strength: float, seed: int, count: int = 6) -> Instance:
    """A project with loosened or tightened minimum lags and ``count`` maximum lags.

    Minimum lags may be shorter than the task, zero or negative. Maximum lags close circles
    over several tasks and can be kept as long as resources do not count, as in the sets of
    Kolisch, R., Schwindt, C., Sprecher, A. (1999), "Benchmark instances for project scheduling
    problems", in Weglarz (ed.), Project Scheduling, Kluwer, pp. 197-212. With resources some
    of these projects have no schedule.
    """
    tasks, capacity, lags = project(size, 1.8, 0.75, strength, seed)
    rng = Random(f"max {size} {strength} {seed}")
    duration = {t.id: t.duration for t in tasks}
    changed = []
    for lag in lags:
        inner = lag.before != "0" and lag.after != str(size + 1)
        least = rng.randint(-1, 2 * duration[lag.before]) if inner else lag.at_least
        changed.append(Lag(lag.before, lag.after, least))
    early = _early(tasks, changed)
    links = {(int(lag.before), int(lag.after)) for lag in lags}
    pairs = [(i, j) for i in range(1, size) for j in sorted(_reach(links, i)) if j <= size]
    for i, j in rng.sample(pairs, min(count, len(pairs))):
        spread = early[str(j)] - early[str(i)]
        changed.append(Lag(str(i), str(j), -10_000, spread + rng.randint(0, 2 * spread + 8)))
    return tasks, capacity, changed


def planted(size: int, strength: float, share: float, seed: int) -> Instance:
    """A project with ``share`` times as many tight maximum lags as links, all kept by some
    schedule: a random one is drawn first and the maximum lags are laid around it."""
    tasks, capacity, lags = project(size, 1.8, 0.75, strength, seed)
    rng = Random(f"planted {size} {strength} {share} {seed}")
    duration = {t.id: t.duration for t in tasks}
    loose = [
        Lag(lag.before, lag.after, rng.randint(0, duration[lag.before] * 3 // 2)) for lag in lags
    ]
    plan = _one_by_one(tasks, capacity, loose, rng)
    links = {(int(lag.before), int(lag.after)) for lag in lags}
    pairs = [(i, j) for i in range(1, size) for j in sorted(_reach(links, i)) if j <= size]
    pairs.sort(key=lambda p: plan[str(p[1])] - plan[str(p[0])] + rng.random() * 12)
    for i, j in pairs[: round(share * len(links))]:
        gap = plan[str(j)] - plan[str(i)]
        loose.append(Lag(str(i), str(j), -10_000, gap + rng.randint(0, 1 + gap // 3)))
    return tasks, capacity, loose


def _one_by_one(
    tasks: list[Task], capacity: dict[str, int], lags: list[Lag], rng: Random
) -> dict[str, int]:
    """Starts in a random order that keeps the minimum lags and capacities, minute by minute."""
    start: dict[str, int] = {}
    used: dict[tuple[str, int], int] = {}
    waiting = list(tasks)
    while waiting:
        names = {t.id for t in waiting}
        held_up = {lag.after for lag in lags if lag.before in names}
        task = rng.choice([t for t in waiting if t.id not in held_up])
        waiting.remove(task)
        moment = max([0, *(start[x.before] + x.at_least for x in lags if x.after == task.id)])
        while any(
            used.get((name, m), 0) + need > capacity[name]
            for name, need in task.demand.items()
            for m in range(moment, moment + task.duration)
        ):
            moment += 1
        start[task.id] = moment
        for name, need in task.demand.items():
            for m in range(moment, moment + task.duration):
                used[name, m] = used.get((name, m), 0) + need
    return start


def _network(size: int, complexity: float, rng: Random) -> set[tuple[int, int]]:
    sink = size + 1
    links: set[tuple[int, int]] = {(0, j) for j in (1, 2, 3)}
    links |= {(j, sink) for j in (size - 2, size - 1, size)}
    for j in range(4, size + 1):
        links.add((_partner(links, list(range(1, min(j, size - 2))), 0, rng), j))
    for i in range(1, size - 2):
        if not any(a == i for a, _ in links):
            links.add((i, _partner(links, list(range(max(i + 1, 4), size + 1)), 1, rng)))
    wanted = round(complexity * (size + 2))
    for _ in range(4000):
        if len(links) >= wanted:
            break
        i, j = sorted(rng.sample(range(1, size + 1), 2))
        crowded = max(_degree(links, i, 0), _degree(links, j, 1)) >= MOST_LINKS
        if i < size - 2 and j > 3 and not crowded and not _redundant(links, i, j):
            links.add((i, j))
    return links


def _partner(links: set[tuple[int, int]], among: list[int], side: int, rng: Random) -> int:
    spare = [i for i in among if _degree(links, i, side) < MOST_LINKS]
    return rng.choice(spare or among)


def _degree(links: set[tuple[int, int]], node: int, side: int) -> int:
    return sum(link[side] == node for link in links)


def _redundant(links: set[tuple[int, int]], i: int, j: int) -> bool:
    """Whether i already comes before j, or the new link would make another one superfluous."""
    after = {node: _reach(links, node) for node in {i, j} | {b for _, b in links}}
    if j in after[i]:
        return True
    heads = after[j] | {j}
    tails = {a for a, _ in links if i in _reach(links, a)} | {i}
    return any((a, b) in links for a in tails for b in heads)


def _reach(links: set[tuple[int, int]], node: int) -> set[int]:
    found: set[int] = set()
    stack = [node]
    while stack:
        here = stack.pop()
        for a, b in links:
            if a == here and b not in found:
                found.add(b)
                stack.append(b)
    return found


def _peaks(tasks: list[Task], lags: list[Lag], names: list[str]) -> dict[str, int]:
    early = _early(tasks, lags)
    horizon = range(max(early.values()) + 1)
    return {
        name: max(
            sum(t.demand[name] for t in tasks if early[t.id] <= m < early[t.id] + t.duration)
            for m in horizon
        )
        for name in names
    }


def _early(tasks: list[Task], lags: list[Lag]) -> dict[str, int]:
    """The earliest starts under the minimum lags."""
    early = {t.id: 0 for t in tasks}
    for _ in tasks:
        for lag in lags:
            early[lag.after] = max(early[lag.after], early[lag.before] + lag.at_least)
    return early
