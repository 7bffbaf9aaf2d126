"""The exact method: OR-tools CP-SAT, one worker, fixed seed, deterministic time.

Needs the extra ``optimal``; the library is loaded only here and only when asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import Any

from .instance import Arc, Instance, Start

EFFORT = 0.33
"""Limit in CP-SAT's deterministic time, which counts work and not the clock."""
EFFORT_WITHOUT_HINT = 2 * EFFORT
"""The same while no schedule is known: then the question is whether there is one at all."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """``start`` of the best schedule found, if any, and whether the search was exhausted."""

    start: Start | None
    exhausted: bool


def load_solver() -> ModuleType:
    """CP-SAT's Python module; ImportError with a remedy when it is not installed."""
    try:
        from ortools.sat.python import cp_model
    except ImportError as missing:
        raise ImportError(
            "method 'optimal' needs OR-tools: install it with  pip install 'foredge[optimal]'"
        ) from missing
    module: ModuleType = cp_model
    return module


def exact(instance: Instance, latest: int, hint: Start | None, seed: int) -> Outcome:
    """Search for the earliest finish up to ``latest``, from ``hint`` if there is one."""
    cp = load_solver()
    model = _Model(cp, instance, latest)
    if hint is not None:
        model.hint(hint)
    solver = cp.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 0
    solver.parameters.random_seed = seed % (1 << 31)
    solver.parameters.max_deterministic_time = EFFORT_WITHOUT_HINT if hint is None else EFFORT
    status = solver.solve(model.model)
    if status in (cp.OPTIMAL, cp.FEASIBLE):
        return Outcome([solver.value(v) for v in model.start], status == cp.OPTIMAL)
    return Outcome(None, status == cp.INFEASIBLE)


class _Model:
    """Start and finish variables, the arcs, one cumulative constraint a resource."""

    def __init__(self, cp: ModuleType, instance: Instance, latest: int) -> None:
        self.cp = cp
        self.instance = instance
        self.latest = latest
        self.model: Any = cp.CpModel()
        self.start: list[Any] = []
        self.finish: list[Any] = []
        self.pieces: list[list[tuple[Any, Sequence[int]]]] = []
        for i in range(instance.size):
            self._add_task(i)
        for arc in instance.arcs:
            self._add_arc(arc)
        for r, capacity in enumerate(instance.capacity):
            used = [(piece, use[r]) for group in self.pieces for piece, use in group if use[r]]
            self.model.add_cumulative([p for p, _ in used], [u for _, u in used], capacity)
        end = self.model.new_int_var(0, latest, "finish")
        self.model.add_max_equality(end, self.finish or [0])
        self.model.minimize(end)

    def _add_task(self, i: int) -> None:
        opening, minutes = self.instance.openings[i], self.instance.duration[i]
        if opening and opening.split:
            self._add_split(i)
            return
        limits = [[0, self.latest - minutes]]
        if opening:
            last = self.latest - minutes
            pairs = zip(opening.starts, opening.lasts, strict=True)
            limits = [[a, min(b, last)] for a, b in pairs if a <= last]
        domain = self.cp.Domain.from_intervals(limits)
        start = self.model.new_int_var_from_domain(domain, f"start {i}")
        self.start.append(start)
        self.finish.append(start + minutes)
        piece = self.model.new_fixed_size_interval_var(start, minutes, f"work {i}")
        self.pieces.append([(piece, self.instance.uses[i])])

    def _add_split(self, i: int) -> None:
        """The working time between start and finish is the duration; work lies in the windows."""
        model, opening = self.model, self.instance.openings[i]
        assert opening is not None
        windows = [w for w in opening.windows if w[0] < self.latest]
        starts = self.cp.Domain.from_intervals([[a, b - 1] for a, b in windows])
        ends = self.cp.Domain.from_intervals([[a + 1, min(b, self.latest)] for a, b in windows])
        start = model.new_int_var_from_domain(starts, f"start {i}")
        finish = model.new_int_var_from_domain(ends, f"finish {i}")
        held = self.instance.held[i]
        freed = [use - kept for use, kept in zip(self.instance.uses[i], held, strict=True)]
        pieces: list[tuple[Any, Sequence[int]]] = [(self._interval(start, finish), held)]
        sizes: list[Any] = []
        for window in windows:
            begin, end = self._clamped(start, window), self._clamped(finish, window)
            sizes.append(end - begin)
            pieces.append((self._interval(begin, end), freed))
        model.add(sum(sizes) == opening.duration)
        self.start.append(start)
        self.finish.append(finish)
        self.pieces.append(pieces)

    def _interval(self, begin: Any, end: Any) -> Any:
        size = self.model.new_int_var(0, self.latest, "size")
        return self.model.new_interval_var(begin, size, end, "piece")

    def _clamped(self, moment: Any, window: tuple[int, int]) -> Any:
        """The moment, moved to the nearer end of the window when it lies outside."""
        low, high = window
        raised = self.model.new_int_var(low, max(high, self.latest), "raised")
        self.model.add_max_equality(raised, [moment, low])
        result = self.model.new_int_var(low, high, "clamped")
        self.model.add_min_equality(result, [raised, high])
        return result

    def _add_arc(self, arc: Arc) -> None:
        tail = (self.finish if arc.tail_finish else self.start)[arc.tail]
        head = (self.finish if arc.head_finish else self.start)[arc.head]
        self.model.add(head >= tail + arc.weight)

    def hint(self, start: Start) -> None:
        """Begin the search at a known schedule."""
        for i, moment in enumerate(start):
            self.model.add_hint(self.start[i], moment)
