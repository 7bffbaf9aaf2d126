"""A recorded computation as a flat table: replay, bands, and travel between processes.

Nothing here recurses, so a derivation may be as deep as it likes.

A band is the 95 % range. The computation is replayed with each uncertain leaf at its low
and at its high end; the deviations are combined by root sum of squares, each side on its
own. Rounding to a step is left out of the replays (it would make bands jump), whole
numbers stay whole.
"""

from __future__ import annotations

import copyreg
import math
import pickle
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from foredge.quantity.node import NO_GATES, Quantity, same_dimension
from foredge.quantity.operators import EVALUATE

_CONTINUOUS = frozenset({"round"})


@dataclass(frozen=True, slots=True)
class Band:
    """The 95 % range of a quantity, and how much of it each uncertain leaf causes.

    ``shares`` holds ``(leaf, fraction of the variance)``, largest first; fractions add up
    to 1 unless the band has no width.
    """

    low: float
    high: float
    shares: tuple[tuple[Quantity, float], ...] = ()

    @property
    def exact(self) -> bool:
        """Whether the band has no width."""
        return self.low == self.high


class Program:
    """The computation behind some quantities, in the order in which it can be run.

    With ``estimates`` a gate that was measured is replayed as if it were not.
    """

    def __init__(self, roots: Iterable[Quantity], *, estimates: bool = False) -> None:
        self.roots = tuple(roots)
        self.nodes = _ordered(self.roots)
        self.index = {id(node): place for place, node in enumerate(self.nodes)}
        self._estimates = estimates
        self._args = [self._inputs(node) for node in self.nodes]
        self._users: list[list[int]] = [[] for _ in self.nodes]
        for place, args in enumerate(self._args):
            for arg in set(args):
                self._users[arg].append(place)
        self._base = self._run()

    def _inputs(self, node: Quantity) -> tuple[int, ...]:
        if node.op in ("leaf", "blank"):
            return ()
        args = node.args
        if node.op == "gate":
            args = args[:1] if self._estimates else args[-1:]
        return tuple(self.index[id(arg)] for arg in args)

    def _run(self) -> list[float]:
        values: list[float] = []
        for place in range(len(self.nodes)):
            values.append(self._evaluate(place, values))
        return values

    def _evaluate(self, place: int, values: Sequence[float] | dict[int, float]) -> float:
        node = self.nodes[place]
        if node.op in ("leaf", "blank"):
            return node.value
        inputs = [values[arg] for arg in self._args[place]]
        if node.op in _CONTINUOUS:
            return inputs[0]
        return EVALUATE[node.op](inputs, node.data)

    def replay(self, changed: dict[int, float]) -> dict[int, float]:
        """New values of every node that ``changed`` (leaf place -> value) reaches."""
        touched = dict(changed)
        for place in self._cone(changed):
            if place not in changed:
                values = [
                    touched[arg] if arg in touched else self._base[arg] for arg in self._args[place]
                ]
                touched[place] = self._again(place, values)
        return touched

    def _again(self, place: int, values: list[float]) -> float:
        node = self.nodes[place]
        if node.op in _CONTINUOUS:
            return values[0]
        return EVALUATE[node.op](values, node.data)

    def _cone(self, places: Iterable[int]) -> list[int]:
        seen = set(places)
        queue = list(places)
        while queue:
            for user in self._users[queue.pop()]:
                if user not in seen:
                    seen.add(user)
                    queue.append(user)
        return sorted(seen)

    def leaves(self) -> list[int]:
        """Places of the uncertain leaves."""
        return [
            place
            for place, node in enumerate(self.nodes)
            if node.op == "leaf" and node.low != node.high
        ]

    def bands(self, roots: Iterable[Quantity] | None = None) -> list[Band]:
        """The band of each root, in their order; one replay serves them all."""
        wanted = [self.index[id(root)] for root in (self.roots if roots is None else roots)]
        watched = set(wanted)
        effects: dict[int, list[tuple[int, float, float]]] = {place: [] for place in watched}
        for leaf in self.leaves():
            node = self.nodes[leaf]
            lower = self.replay({leaf: _end(node, node.low)})
            upper = self.replay({leaf: _end(node, node.high)})
            for place in watched.intersection(lower):
                base = self._base[place]
                moves = (lower[place] - base, upper[place] - base)
                down, up = max(0.0, -min(moves)), max(0.0, *moves)
                if down or up:
                    effects[place].append((leaf, down, up))
        found = {place: self._combine(place, effects[place]) for place in watched}
        return [found[place] for place in wanted]

    def band(self, root: Quantity) -> Band:
        """The band of one of the roots."""
        return self.bands([root])[0]

    def _combine(self, place: int, effects: list[tuple[int, float, float]]) -> Band:
        centre = self._base[place] if self._estimates else self.nodes[place].value
        down = math.sqrt(math.fsum(lower * lower for _, lower, _ in effects))
        up = math.sqrt(math.fsum(upper * upper for _, _, upper in effects))
        weights = [(leaf, lower * lower + upper * upper) for leaf, lower, upper in effects]
        whole = math.fsum(weight for _, weight in weights)
        shares = sorted(
            ((self.nodes[leaf], weight / whole) for leaf, weight in weights), key=_share
        )
        return Band(centre - down, centre + up, tuple(shares))


def _share(entry: tuple[Quantity, float]) -> tuple[float, str]:
    return -entry[1], entry[0].name or ""


def _end(node: Quantity, value: float) -> float:
    return float(math.floor(value + 0.5)) if node.integer else value


def _ordered(roots: Sequence[Quantity]) -> list[Quantity]:
    """Every node behind ``roots`` once, arguments before their users."""
    order: list[Quantity] = []
    placed: set[int] = set()
    stack: list[tuple[Quantity, bool]] = [(root, False) for root in reversed(roots)]
    while stack:
        node, ready = stack.pop()
        if id(node) in placed:
            continue
        if ready:
            placed.add(id(node))
            order.append(node)
            continue
        stack.append((node, True))
        stack.extend((arg, False) for arg in reversed(node.args) if id(arg) not in placed)
    return order


def bands(roots: Iterable[Quantity]) -> list[Band]:
    """The bands of several quantities at once."""
    return Program(roots).bands()


def band(root: Quantity) -> Band:
    """The band of one quantity."""
    return Program([root]).band(root)


def blank(q: Quantity, allowance: Quantity, step: float) -> Quantity:
    """The size to cut before ``q`` is known: the high end of its band plus a trim allowance.

    Computed from the estimates even when readings stand, so that a piece already cut does
    not change its size; rounded up to ``step``. Rests on no gate.
    """
    same_dimension("add", (q, allowance))
    high = Program([q], estimates=True).band(q).high
    value = EVALUATE["round-up"]([high + allowance.value], step)
    return Quantity("blank", value, q.dimension, (q, allowance), data=step, gates=NO_GATES)


_PLAIN = ("op", "value", "dimension", "data", "low", "high", "origin", "gates", "integer")
_WORDS = ("name", "label", "rule", "source")


def pack(roots: Sequence[Quantity]) -> bytes:
    """The computation behind ``roots`` as bytes; shared leaves stay shared in :func:`unpack`."""
    nodes = _ordered(roots)
    index = {id(node): place for place, node in enumerate(nodes)}
    rows = [
        (
            tuple(getattr(node, field) for field in _PLAIN),
            tuple(getattr(node, field) for field in _WORDS),
            tuple(index[id(arg)] for arg in node.args),
        )
        for node in nodes
    ]
    return pickle.dumps((rows, tuple(index[id(root)] for root in roots)))


def unpack(packed: bytes) -> list[Quantity]:
    """The roots given to :func:`pack`, with their whole derivation."""
    rows, roots = pickle.loads(packed)
    nodes: list[Quantity] = []
    for plain, words, args in rows:
        known: dict[str, Any] = dict(zip(_PLAIN, plain, strict=True))
        node = Quantity(args=tuple(nodes[arg] for arg in args), **known)
        for field, word in zip(_WORDS, words, strict=True):
            setattr(node, field, word)
        nodes.append(node)
    return [nodes[root] for root in roots]


def unpack_one(packed: bytes) -> Quantity:
    """The single quantity in ``packed``."""
    return unpack(packed)[0]


copyreg.pickle(Quantity, lambda quantity: (unpack_one, (pack([quantity]),)))
