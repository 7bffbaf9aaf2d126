"""What a number measures, as whole powers of length, mass and time."""

from __future__ import annotations

from typing import NamedTuple


class Dimension(NamedTuple):
    """Powers of length, mass and time: an area is ``Dimension(2, 0, 0)``.

    Canonical units are mm, g and s, so a grammage is in g/mm2.
    """

    length: int
    mass: int
    time: int

    def times(self, other: Dimension) -> Dimension:
        """The dimension of a product."""
        return Dimension(*(a + b for a, b in zip(self, other, strict=True)))

    def per(self, other: Dimension) -> Dimension:
        """The dimension of a quotient."""
        return Dimension(*(a - b for a, b in zip(self, other, strict=True)))

    def root(self) -> Dimension:
        """The dimension of a square root; raises ValueError where a power is odd."""
        if any(power % 2 for power in self):
            raise ValueError(f"no square root of {self}")
        return Dimension(*(power // 2 for power in self))


LENGTH = Dimension(1, 0, 0)
MASS = Dimension(0, 1, 0)
TIME = Dimension(0, 0, 1)
AREA = Dimension(2, 0, 0)
VOLUME = Dimension(3, 0, 0)
GRAMMAGE = Dimension(-2, 1, 0)
DENSITY = Dimension(-3, 1, 0)
LINEAR_DENSITY = Dimension(-1, 1, 0)
RATIO = Dimension(0, 0, 0)
