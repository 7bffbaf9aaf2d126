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
from .fields import Fields
from .instance import Instance, Start

Pairs = Sequence[tuple[int, int]]
Rival = tuple[int, int, int, int]
"""Two tasks that cannot run together, and their minutes."""


@dataclass(slots=True)
class State:
    """What the decisions so far leave.

    ``table[i][j]``: task j starts at least so many minutes after task i, counted from ``zero``
    (see ``Orders``) so that no number is negative; ``rows`` holds the same packed. ``early``
    and ``late`` are the starts left, counted from zero too; rival pairs ``still`` are in no
    order.
    """

    table: list[tuple[int, ...]]
    rows: list[int]
    early: tuple[int, ...]
    late: tuple[int, ...]
    still: Sequence[Rival]

    def copy(self) -> State:
        """The same, to be changed on its own. What the lists hold is replaced, never changed."""
        return State(self.table[:], self.rows[:], self.early, self.late, self.still)


@dataclass(frozen=True, slots=True)
class Outcome:
    """``exhausted``: without a start, no schedule keeps the finish and the given orders."""

    start: Start | None
    exhausted: bool


class Orders:
    """The search, to be run any number of times. ``ahead`` is the matrix of distances.

    ``nodes``, ``orders`` and ``updates`` count the work done: nodes of the search, orders
    imposed, and rows of the matrix renewed.
    Distances below ``-2 * latest`` say nothing, as everything starts between 0 and ``latest``:
    they are raised to that. ``zero`` leaves room below for the sum of two of them.
    """

    def __init__(self, instance: Instance, ahead: list[list[int]]) -> None:
        self.instance = instance
        self.duration = instance.duration
        self.pairs = [(i, j, self.duration[i], self.duration[j]) for i, j in rival_pairs(instance)]
        self.latest = sum(
            max([minutes, *(weight for _, weight in instance.out[i])])
            for i, minutes in enumerate(instance.duration)
        )
        self.zero = 6 * self.latest
        self.fields = Fields(instance.size, 12 * self.latest)
        self.ahead = [tuple(max(d, -2 * self.latest) + self.zero for d in row) for row in ahead]
        self.rows = [self.fields.pack(row) for row in self.ahead]
        self.early = tuple(max(column) for column in zip(*self.ahead, strict=True))
        self.tail = [max(map(int.__add__, row, self.duration)) for row in ahead]
        self.nodes = 0
        self.orders = 0
        self.updates = 0
        self._limit = 0
        self._noise: Iterator[float] = iter(())

    @property
    def work(self) -> tuple[int, int, int]:
        """Nodes, orders and updates so far."""
        return self.nodes, self.orders, self.updates

    def run(self, finish: int, nodes: int, noise: Iterator[float], arcs: Pairs = ()) -> Outcome:
        """Search for a schedule by ``finish`` in which each pair of ``arcs`` keeps its order.

        At most ``nodes`` decisions are looked at; ``noise`` blurs which one comes first.
        """
        self._limit = self.nodes + nodes
        self._noise = noise
        end = self.zero + min(finish, self.latest)
        late = tuple(end - tail for tail in self.tail)
        if any(map(int.__gt__, self.early, late)):
            return Outcome(None, True)
        state = State(self.ahead[:], self.rows[:], self.early, late, self.pairs)
        kept = all(self._post(state, i, j, self.duration[i]) for i, j in arcs)
        if not kept or not self._tighten(state):
            return Outcome(None, True)
        start = self._branch(state)
        return Outcome(start, start is None and self.nodes <= self._limit)

    def _post(self, state: State, i: int, j: int, weight: int) -> bool:
        """Task j starts at least ``weight`` after task i; False when it cannot."""
        begin, end = state.early[i] + weight, state.late[j] - weight
        if state.table[j][i] + weight > self.zero or begin > state.late[j]:
            return False
        if state.table[i][j] >= self.zero + weight:
            return True
        fields = self.fields
        if begin > state.early[j]:
            pushed = state.rows[j] + (begin - self.zero) * fields.ones
            state.early = fields.unpack(fields.larger(pushed, fields.pack(state.early)))
        self._lengthen(state, i, j, weight)
        if end < state.late[i]:
            end += self.zero
            state.late = tuple(
                [
                    x if x < (y := end - r[i]) else y
                    for x, r in zip(state.late, state.table, strict=True)
                ]
            )
        return True

    def _lengthen(self, state: State, i: int, j: int, weight: int) -> None:
        """Renew the distances of all chains that run through the new order."""
        fields, rows, table = self.fields, state.rows, state.table
        ones, guards, shift, unpack = fields.ones, fields.guards, fields.width - 1, fields.unpack
        there = rows[j] - self.zero * ones
        # Chains no longer than early[j] - late[a] add nothing to the bounds: not followed up.
        idle = state.early[j] + self.zero
        gains = [
            (a, gain)
            for a, (row, last) in enumerate(zip(table, state.late, strict=True))
            if (gain := row[i] + weight) > row[j] and gain > idle - last
        ]
        for a, gain in gains:
            chain, row = there + gain * ones, rows[a]
            better = ((chain | guards) - row) & guards
            rows[a] = row = row ^ ((row ^ chain) & (better - (better >> shift)))
            table[a] = unpack(row)
        self.orders += 1
        self.updates += len(gains)

    def _tighten(self, state: State) -> bool:
        """Impose the order of all rivals that have only one left; False when one has none."""
        table, zero = state.table, self.zero
        changed = True
        while changed:
            changed = False
            early, late = state.early, state.late
            still = []
            for rival in state.still:
                i, j, first, second = rival
                forth, back = table[i][j] - zero, table[j][i] - zero
                if forth >= first or back >= second:
                    continue
                if back + first > 0 or early[i] + first > late[j]:
                    changed = True
                    if not self._post(state, j, i, second):
                        return False
                    early, late = state.early, state.late
                elif forth + second > 0 or early[j] + second > late[i]:
                    changed = True
                    if not self._post(state, i, j, first):
                        return False
                    early, late = state.early, state.late
                else:
                    still.append(rival)
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
            return [moment - self.zero for moment in state.early]
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
            row, last = state.table[j], state.late[j]
            for i in members:
                slack = -max(row[i] - self.zero, state.early[i] - last) - self.duration[i]
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
