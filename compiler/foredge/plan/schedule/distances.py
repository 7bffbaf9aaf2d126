"""The longest chain of lags between every two tasks, and lags that contradict each other."""

from __future__ import annotations

from .circles import circles
from .instance import Instance

NEVER = -(1 << 40)
"""The distance between two tasks that no chain of lags ties."""


def distances(instance: Instance) -> list[list[int]]:
    """``[i][j]``: task j starts at least so many minutes after task i starts.

    Floyd-Warshall; lags that contradict each other must have been refused before.
    """
    size = instance.size
    rows = [[NEVER] * size for _ in range(size)]
    for i, arcs in enumerate(instance.out):
        rows[i][i] = 0
        for j, weight in arcs:
            rows[i][j] = max(rows[i][j], weight)
    floor = NEVER // 2
    for k in range(size):
        via = rows[k]
        for i in range(size):
            to_k = rows[i][k]
            if to_k > floor and i != k:
                rows[i] = [
                    direct if direct > (detour := to_k + rest) else detour
                    for direct, rest in zip(rows[i], via, strict=True)
                ]
    return [[d if d > floor else NEVER for d in row] for row in rows]


def contradiction(instance: Instance) -> tuple[list[int], int] | None:
    """A circle of lags that asks for more time than it leaves, and by how many minutes.

    Bellman-Ford on longest paths; None when the lags can all be kept.
    """
    for part in circles(instance.before):
        found = _contradiction_among(instance, set(part)) if len(part) > 1 else None
        if found:
            return found
    return None


def _contradiction_among(instance: Instance, part: set[int]) -> tuple[list[int], int] | None:
    inside = sorted(part)
    arcs = [(i, j, weight) for i in inside for j, weight in instance.out[i] if j in part]
    early, cause = dict.fromkeys(inside, 0), dict.fromkeys(inside, -1)
    last = -1
    for _ in range(len(inside) + 1):
        last = -1
        for i, j, weight in arcs:
            if early[i] + weight > early[j]:
                early[j] = early[i] + weight
                cause[j] = i
                last = j
        if last < 0:
            return None
    for _ in inside:
        last = cause[last]
    circle = [last]
    while cause[circle[-1]] != last:
        circle.append(cause[circle[-1]])
    circle.reverse()
    excess = 0
    for i, j in zip(circle, [*circle[1:], circle[0]], strict=True):
        excess += dict(instance.out[i])[j]
    return circle, excess
