"""Values for programs to read: fixed units, fixed figures, the same on every machine."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from foredge.dimension import (
    DENSITY,
    GRAMMAGE,
    LENGTH,
    LINEAR_DENSITY,
    MASS,
    RATIO,
    TIME,
    VOLUME,
    Dimension,
)
from foredge.display_number import exact, half_up

FIGURES = 6
"""Significant figures; the last bits of a float may differ between machines, these do not."""


@dataclass(frozen=True, slots=True)
class PlainUnit:
    """A unit and how many canonical ones make one of it."""

    name: str
    factor: Fraction


_UNITS: dict[Dimension, PlainUnit] = {
    LENGTH: PlainUnit("mm", Fraction(1)),
    MASS: PlainUnit("g", Fraction(1)),
    TIME: PlainUnit("s", Fraction(1)),
    RATIO: PlainUnit("1", Fraction(1)),
    VOLUME: PlainUnit("ml", Fraction(1000)),
    GRAMMAGE: PlainUnit("g/m2", Fraction(1, 10**6)),
    DENSITY: PlainUnit("g/cm3", Fraction(1, 1000)),
    LINEAR_DENSITY: PlainUnit("tex", Fraction(1, 10**6)),
}


def plain_unit(dimension: Dimension) -> PlainUnit:
    """The unit values of ``dimension`` are written in."""
    known = _UNITS.get(dimension)
    if known is not None:
        return known
    powers = zip(("mm", "g", "s"), dimension, strict=True)
    name = " ".join(f"{unit}{power if power != 1 else ''}" for unit, power in powers if power)
    return PlainUnit(name, Fraction(1))


def plain_number(value: float, dimension: Dimension) -> int | float:
    """``value`` in its plain unit, to six significant figures; a whole number as such."""
    amount = exact(value)
    if amount is None:
        raise ValueError(f"{value} cannot be written as a number")
    return quantised(amount / plain_unit(dimension).factor)


def quantised(amount: Fraction) -> int | float:
    """``amount`` to six significant figures."""
    if not amount:
        return 0
    step = Fraction(10) ** (math.floor(math.log10(abs(amount))) + 1 - FIGURES)
    kept = half_up(amount, step)
    return int(kept) if kept.denominator == 1 else float(kept)
