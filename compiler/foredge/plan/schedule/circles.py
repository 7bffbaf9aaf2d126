"""Which tasks lie in a circle of lags together."""

from __future__ import annotations

from collections.abc import Sequence


def circles(before: Sequence[set[int]]) -> list[list[int]]:
    """The strongly connected parts of a graph, a part before those that need it.

    Source: Tarjan, R. (1972), "Depth-first search and linear graph algorithms", SIAM Journal on
    Computing 1, pp. 146-160 (cited from memory); with a stack of its own instead of recursion.
    """
    found: list[list[int]] = []
    number: dict[int, int] = {}
    lowest: dict[int, int] = {}
    open_: list[int] = []
    done: set[int] = set()
    for root in range(len(before)):
        if root in number:
            continue
        path = [(root, iter(sorted(before[root])))]
        number[root] = lowest[root] = len(number)
        open_.append(root)
        while path:
            node, rest = path[-1]
            step = next(rest, None)
            if step is None:
                path.pop()
                if path:
                    lowest[path[-1][0]] = min(lowest[path[-1][0]], lowest[node])
                if lowest[node] == number[node]:
                    part = open_[open_.index(node) :]
                    del open_[-len(part) :]
                    done.update(part)
                    found.append(part)
            elif step not in number:
                number[step] = lowest[step] = len(number)
                open_.append(step)
                path.append((step, iter(sorted(before[step]))))
            elif step not in done:
                lowest[node] = min(lowest[node], number[step])
    return found
