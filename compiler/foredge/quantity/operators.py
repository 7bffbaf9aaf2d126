"""What each recorded operation computes, on plain floats.

A replay calls these again with other leaves, so a function here takes the values of the
arguments in order and the node's own ``data``, and nothing else.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any

SNAP = 1e-9
"""Relative slack of ceil and floor, so that 6.0000000001 folios count as 6."""


def _ceil(values: Sequence[float], data: Any) -> float:
    value = values[0]
    return (
        value if not math.isfinite(value) else float(math.ceil(value - SNAP * max(1.0, abs(value))))
    )


def _floor(values: Sequence[float], data: Any) -> float:
    value = values[0]
    return (
        value
        if not math.isfinite(value)
        else float(math.floor(value + SNAP * max(1.0, abs(value))))
    )


def _divide(values: Sequence[float], data: Any) -> float:
    return values[0] / values[1] if values[1] else math.nan


def _round(values: Sequence[float], data: Any) -> float:
    step = float(data)
    return step * math.floor(values[0] / step + 0.5 + SNAP)


def _round_up(values: Sequence[float], data: Any) -> float:
    step = float(data)
    return step * _ceil([values[0] / step], None)


def _choose(values: Sequence[float], data: Any) -> float:
    left, right, then, otherwise = values
    return then if left > right else otherwise


def _gate(values: Sequence[float], data: Any) -> float:
    return values[-1]


def _opaque(values: Sequence[float], data: Any) -> float:
    return float(data(*values))


EVALUATE: dict[str, Callable[[Sequence[float], Any], float]] = {
    "add": lambda values, data: math.fsum(values),
    "subtract": lambda values, data: values[0] - values[1],
    "multiply": lambda values, data: values[0] * values[1],
    "divide": _divide,
    "negate": lambda values, data: -values[0],
    "root": lambda values, data: math.sqrt(values[0]) if values[0] >= 0 else math.nan,
    "maximum": lambda values, data: max(values),
    "minimum": lambda values, data: min(values),
    "ceil": _ceil,
    "floor": _floor,
    "round": _round,
    "round-up": _round_up,
    "choose": _choose,
    "same": lambda values, data: values[0],
    "given": lambda values, data: values[0],
    "gate": _gate,
    "opaque": _opaque,
}
"""Operation name -> function. Leaves and blanks are not here: they keep their value."""
