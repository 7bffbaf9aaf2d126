"""Equal discs strewn over a region by a seeded chance, none upon another; bounded in steps.

Throws at random cover about half of a region and no more (the jamming limit of random
sequential adsorption, 0.547: E. L. Hinrichsen, J. Feder and T. Jossang, J. Stat. Phys. 44,
1986; from memory). Where that is not enough, the discs stand on a shaken hexagonal grid.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from dataclasses import dataclass

TRIES = 150
"""Throws a disc, on average, before the region counts as full."""


WIDEST = 1.6
"""The widest grid tried, by the least distance; wider ones the throws have tried already."""

SHRINK = 0.98

Spot = tuple[float, float, float]
"""x and y in mm, and a turn in degrees."""

RIM_POINTS = 36
"""Points of a disc's rim that must lie in an ellipse."""


@dataclass(frozen=True, slots=True)
class Region:
    """A rectangle or an ellipse of ``width`` by ``height`` mm about 0, for discs of ``radius``."""

    width: float
    height: float
    ellipse: bool
    radius: float

    @property
    def fits(self) -> bool:
        """Whether even one disc has room."""
        return min(self.width, self.height) >= 2 * self.radius

    def point(self, across: float, along: float) -> tuple[float, float]:
        """Two numbers from 0 to 1 as an evenly spread middle of a disc."""
        half_x, half_y = self.width / 2 - self.radius, self.height / 2 - self.radius
        if not self.ellipse:
            return (2 * across - 1) * half_x, (2 * along - 1) * half_y
        out, turn = math.sqrt(across), 2 * math.pi * along
        return out * math.cos(turn) * half_x, out * math.sin(turn) * half_y

    def holds(self, x: float, y: float) -> bool:
        """Whether the disc about a middle from :meth:`point` lies in it.

        An ellipse drawn in by a radius is no ellipse, so a disc's rim is asked there.
        """
        if not self.ellipse:
            return True
        for step in range(RIM_POINTS):
            turn = 2 * math.pi * step / RIM_POINTS
            rim_x = (x + self.radius * math.cos(turn)) / (self.width / 2)
            rim_y = (y + self.radius * math.sin(turn)) / (self.height / 2)
            if math.hypot(rim_x, rim_y) > 1 + 1e-9:
                return False
        return True


def throw(region: Region, count: int, apart: float, seed: int) -> list[Spot]:
    """Up to ``count`` middles at least ``apart`` mm from each other, each with a turn (degrees).

    Fewer where no more were found. The same seed gives the same places on every machine.
    """
    if not region.fits:
        return []
    chance = random.Random(seed)
    thrown = _thrown(region, count, apart, chance)
    if len(thrown) == count:
        return thrown
    return max(thrown, _on_grid(region, count, apart, chance), key=len)


def _thrown(region: Region, count: int, apart: float, chance: random.Random) -> list[Spot]:
    cells: dict[tuple[int, int], list[tuple[float, float]]] = {}
    found: list[Spot] = []
    for _ in range(TRIES * count):
        x, y = region.point(chance.random(), chance.random())
        turn = 360 * chance.random()
        clear = all(math.hypot(x - px, y - py) >= apart for px, py in _near(cells, x, y, apart))
        if clear and region.holds(x, y):
            cells.setdefault(_cell(x, y, apart), []).append((x, y))
            found.append((x, y, turn))
            if len(found) == count:
                break
    return found


def _on_grid(region: Region, count: int, apart: float, chance: random.Random) -> list[Spot]:
    """Places of the widest hexagonal grid that has enough, picked and shaken by chance."""
    wide = WIDEST * apart
    grid = _grid(region, wide)
    while len(grid) < count and wide > apart:
        wide = max(apart, wide * SHRINK)
        grid = _grid(region, wide)
    picked = [grid.pop(int(chance.random() * len(grid))) for _ in range(min(count, len(grid)))]
    return [
        (*_shaken(region, spot, (wide - apart) / 2, chance), 360 * chance.random())
        for spot in picked
    ]


def _grid(region: Region, wide: float) -> list[tuple[float, float]]:
    """A hexagonal grid from the region's corner; its neighbours are ``wide`` mm apart."""
    half_x, half_y = region.width / 2 - region.radius, region.height / 2 - region.radius
    high = wide * math.sqrt(3) / 2
    found = []
    for row in range(math.floor(2 * half_y / high + 1e-9) + 1):
        start = -half_x + (wide / 2 if row % 2 else 0.0)
        for column in range(math.floor((half_x - start) / wide + 1e-9) + 1):
            spot = (start + column * wide, -half_y + row * high)
            if region.holds(*spot):
                found.append(spot)
    return found


def _shaken(
    region: Region, spot: tuple[float, float], most: float, chance: random.Random
) -> tuple[float, float]:
    """``spot`` moved by at most ``most`` mm, where it then still lies in the region."""
    far, turn = most * math.sqrt(chance.random()), 2 * math.pi * chance.random()
    x, y = spot[0] + far * math.cos(turn), spot[1] + far * math.sin(turn)
    inside = (
        abs(x) <= region.width / 2 - region.radius and abs(y) <= region.height / 2 - region.radius
    )
    return (x, y) if inside and region.holds(x, y) else spot


def _cell(x: float, y: float, size: float) -> tuple[int, int]:
    return math.floor(x / size), math.floor(y / size)


def _near(
    cells: dict[tuple[int, int], list[tuple[float, float]]], x: float, y: float, size: float
) -> Iterator[tuple[float, float]]:
    column, row = _cell(x, y, size)
    for i in (column - 1, column, column + 1):
        for j in (row - 1, row, row + 1):
            yield from cells.get((i, j), ())
