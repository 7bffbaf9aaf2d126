"""How the time for a relief's figures grows with its parts. Measured, never asserted.

Run with ``pytest tests/benchmarks/test_solids.py --benchmark-enable --benchmark-only``.
"""

from __future__ import annotations

import random
from typing import Any

import pytest

from foredge.contract import Cap, Frustum, Mound, Placed, ReliefShape, measure_solids, number
from foredge.quantity import bands
from foredge.solids import bodies, figures
from unit.solids.shapes import SKIN, mm


def scattered(count: int, across: float) -> tuple[ReliefShape, ...]:
    """Parts of three forms and ``across`` mm, by chance on a panel of 150 by 210 mm."""
    chance = random.Random(count)
    half = mm(across / 2)
    forms = [
        Cap(half, half * 0.8),
        Frustum(half, half * 0.4, half),
        Mound(half, half * 0.7, half * 0.6),
    ]
    pieces = tuple(
        Placed(
            forms[place % 3],
            mm(150 * chance.random()),
            mm(210 * chance.random()),
            number(360 * chance.random()),
            mm(0),
        )
        for place in range(count)
    )
    return (ReliefShape(pieces),)


def _forget() -> None:
    memos: tuple[Any, ...] = (
        bodies.body,
        figures.core_figures,
        figures.rigid_figures,
        figures.clay_figures,
        figures._shadow,
        figures._core,
        figures._clay,
    )
    for memo in memos:
        memo.cache_clear()


def _whole(shapes: tuple[ReliefShape, ...]) -> None:
    _forget()
    bands(measure_solids(shapes, SKIN, prefix="sculpt.front").quantities())


@pytest.mark.parametrize("count", [5, 20, 60, 80, 320])
def test_small_parts(benchmark: Any, count: int) -> None:
    benchmark.pedantic(_whole, (scattered(count, 5.0),), rounds=3)


@pytest.mark.parametrize("count", [5, 20, 60, 80, 320])
def test_parts_that_overlap(benchmark: Any, count: int) -> None:
    benchmark.pedantic(_whole, (scattered(count, 14.0),), rounds=2)
