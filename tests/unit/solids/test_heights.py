"""The grid of heights against what geometry says of the solids."""

from __future__ import annotations

import math

import numpy as np
import pytest

from foredge.contract import Cap, Ring, Slab, number, signed_area, top_of
from foredge.solids.heights import heights_of
from unit.solids.shapes import SKIN, mm, shape

FINEST = 0.25
DOME = shape(Cap(mm(12), mm(12)), 40, 50)


def at(grid, x: float, y: float) -> float:
    return float(grid.z[round((y - grid.top) / grid.step), round((x - grid.left) / grid.step)])


def test_a_half_ball_is_as_high_everywhere_as_its_circle_says() -> None:
    grid = heights_of((DOME,), SKIN, FINEST)
    radius = 12 + SKIN.value
    for far in (0.0, 4.0, 8.0, 11.0):
        told = at(grid, 40 + far, 50)
        column = round((40 + far - grid.left) / grid.step)
        row = round((50 - grid.top) / grid.step)
        away = math.hypot(grid.left + column * grid.step - 40, grid.top + row * grid.step - 50)
        assert told == pytest.approx(math.sqrt(radius**2 - away**2), abs=0.05)
    assert grid.z.max() == pytest.approx(top_of(DOME, SKIN), abs=0.02)


def test_the_grid_holds_the_volume() -> None:
    grid = heights_of((DOME,), SKIN, FINEST)
    radius = 12 + SKIN.value
    assert grid.z.sum() * grid.step**2 == pytest.approx(2 / 3 * math.pi * radius**3, rel=0.01)


def test_there_is_nothing_in_the_hole_of_a_ring_or_beside_it() -> None:
    ring = shape(Ring(mm(30), mm(8), mm(5), number(0), number(360), mm(0)), 60, 60)
    grid = heights_of((ring,), SKIN, FINEST)
    assert at(grid, 60, 60) == 0
    assert at(grid, 90, 60) > 4
    assert grid.z[0].max() == 0 and grid.z[:, 0].max() == 0


def test_a_plate_of_many_corners_is_level() -> None:
    corners = tuple(
        (mm(30 + 20 * math.cos(a)), mm(30 + 20 * math.sin(a)))
        for a in np.linspace(0, math.tau, 60, endpoint=False)
    )
    plate = shape(Slab(corners, mm(3), mm(0)), 0, 0)
    grid = heights_of((plate,), SKIN, FINEST)
    assert at(grid, 30, 30) == pytest.approx(3 + SKIN.value, abs=0.01)
    outline = sum(abs(signed_area(ring)) for ring in grid.outline)
    covered = (grid.z > 0).sum() * grid.step**2
    assert covered == pytest.approx(outline, rel=0.02)
