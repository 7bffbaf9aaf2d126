"""Depth-first search over the order of tasks that clash, where maximum lags tie them.

As ``branch``, but for problems without windows. There the longest chain of lags and decisions
between every two tasks can be kept up to date, and that sees what the earliest and latest
starts do not: an order that a maximum lag rules out wherever in time the two tasks lie.
Sources: De Reyck, B., Herroelen, W. (1998), "A branch-and-bound procedure for the resource-
constrained project scheduling problem with generalized precedence relations", European Journal
of Operational Research 111, pp. 152-174 (the matrix of distances, minimal forbidden sets);
Cesta, A., Oddi, A., Smith, S. (2002), "A constraint-based method for project scheduling with
time windows", Journal of Heuristics 8, pp. 109-136 (first the order that keeps the most slack).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from random import Random

from .bounds import rival_pairs
from .branch import first_peak
from .distances import NEVER
from .instance import Instance, Start

Pairs = Sequence[tuple[int, int]]
TIED = NEVER // 2
"""Distances above this one come from a chain of lags."""


@dataclass(slots=True)
class State:
    """What the decisions so far leave: ``rows[i][j]``, task j starts at least so many minutes
    after task i; the earliest and latest starts; rival pairs ``still`` in no order."""

    rows: list[list[int]]
    early: list[int]
    late: list[int]
    still: Pairs

    def copy(self) -> State:
        """The same, to be changed on its own. Rows are replaced, never changed in place."""
        return State(self.rows[:], self.early[:], self.late[:], self.still)


@dataclass(frozen=True, slots=True)
class Outcome:
    """``exhausted``: without a start, no schedule keeps the finish and the given orders."""

    start: Start | None
    exhausted: bool


class Orders:
    """The search, to be run any number of times. ``ahead`` is the matrix of distances.

    ``nodes`` and ``updates`` count the work done: decisions, and rows of the matrix renewed.
    """

    def __init__(self, instance: Instance, ahead: list[list[int]]) -> None:
        self.instance = instance
        self.duration = instance.duration
        self.ahead = ahead
        self.pairs = rival_pairs(instance)
        self.early = [max(column) for column in zip(*ahead, strict=True)]
        self.tail = [max(map(int.__add__, row, self.duration)) for row in ahead]
        self.nodes = 0
        self.updates = 0
        self._limit = 0
        self._noise: Iterator[float] = iter(())

    def run(self, finish: int, nodes: int, noise: Iterator[float], arcs: Pairs = ()) -> Outcome:
        """Search for a schedule by ``finish`` in which each pair of ``arcs`` keeps its order.

        At most ``nodes`` decisions are looked at; ``noise`` blurs which one comes first.
        """
        self._limit = self.nodes + nodes
        self._noise = noise
        late = [finish - tail for tail in self.tail]
        state = State(self.ahead[:], self.early[:], late, self.pairs)
        if any(map(int.__gt__, self.early, late)):
            return Outcome(None, True)
        kept = all(self._post(state, i, j, self.duration[i]) for i, j in arcs)
        if not kept or not self._tighten(state):
            return Outcome(None, True)
        start = self._branch(state)
        return Outcome(start, start is None and self.nodes <= self._limit)

    def _post(self, state: State, i: int, j: int, weight: int) -> bool:
        """Task j starts at least ``weight`` after task i; False when it cannot."""
        rows, early, late = state.rows, state.early, state.late
        there, begin, end = rows[j], early[i] + weight, late[j] - weight
        if there[i] + weight > 0 or begin > late[j]:
            return False
        if rows[i][j] >= weight:
            return True
        if begin > early[j]:
            early[:] = [x if x > (y := begin + z) else y for x, z in zip(early, there, strict=True)]
        # Chains no longer than early[j] - late[a] add nothing to the bounds: not followed up.
        floor = early[j]
        for a, row in enumerate(rows):
            gain = row[i] + weight
            if gain > TIED and gain > row[j] and gain > floor - late[a]:
                self.updates += 1
                rows[a] = [x if x > (y := gain + z) else y for x, z in zip(row, there, strict=True)]
        if end < late[i]:
            late[:] = [x if x < (y := end - r[i]) else y for x, r in zip(late, rows, strict=True)]
        return True

    def _tighten(self, state: State) -> bool:
        """Impose the order of all rivals that have only one left; False when one has none."""
        rows, early, late, duration = state.rows, state.early, state.late, self.duration
        changed = True
        while changed:
            changed = False
            still = []
            for pair in state.still:
                i, j = pair
                forth, back = rows[i][j], rows[j][i]
                first, second = duration[i], duration[j]
                if forth >= first or back >= second:
                    continue
                if back + first > 0 or early[i] + first > late[j]:
                    changed = True
                    if not self._post(state, j, i, second):
                        return False
                elif forth + second > 0 or early[j] + second > late[i]:
                    changed = True
                    if not self._post(state, i, j, first):
                        return False
                else:
                    still.append(pair)
            state.still = still
        return True

    def _branch(self, state: State) -> Start | None:
        """Settle the first clash of the earliest starts, one order after the other.

        An order that was refuted is forbidden in the branches after it.
        """
        self.nodes += 1
        if self.nodes > self._limit:
            return None
        peak = first_peak(self.instance, state.early)
        if peak is None:
            return state.early
        for _, i, j in self._choices(state, _minimal(self.instance, peak, state.late)):
            weight = self.duration[i]
            child = state.copy()
            if self._post(child, i, j, weight) and self._tighten(child):
                start = self._branch(child)
                if start is not None or self.nodes > self._limit:
                    return start
            if not self._post(state, j, i, 1 - weight) or not self._tighten(state):
                return None
        return None

    def _choices(self, state: State, members: Sequence[int]) -> list[tuple[float, int, int]]:
        """The orders that are left, the one that keeps the most slack first."""
        choices = []
        for j in members:
            row, last = state.rows[j], state.late[j]
            for i in members:
                slack = -max(row[i], state.early[i] - last) - self.duration[i]
                if i != j and slack >= 0:
                    choices.append((next(self._noise) - slack, i, j))
        choices.sort()
        return choices


def _minimal(instance: Instance, peak: Sequence[int], late: Sequence[int]) -> list[int]:
    """The tasks that still exceed a capacity together, but no longer when one is left out.

    Tasks with the latest starts stay in: they can wait most easily.
    """
    demand, guard = instance.demand, instance.guard
    free = instance.full - sum(demand[i] for i in peak)
    members = []
    for i in sorted(peak, key=lambda i: (late[i], i)):
        if (free + demand[i]) & guard != guard:
            free += demand[i]
        else:
            members.append(i)
    return members


def noise(rng: Random, spread: float) -> Iterator[float]:
    """Random numbers from 0 up to ``spread``, without end."""
    while True:
        yield rng.random() * spread
