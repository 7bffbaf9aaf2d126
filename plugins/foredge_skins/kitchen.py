"""Cups and spoons: which there are, and how a volume is filled with as few of them as can be.

Every measure of a kitchen set is a whole number of its smallest spoon, so amounts are
counted in that: a quarter of a teaspoon.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from foredge.contract import Book, Quantity

SIZES = ("cup", "half-cup", "third-cup", "quarter-cup", "tablespoon", "teaspoon",
         "half-teaspoon", "quarter-teaspoon")  # fmt: skip
FINEST_PART = 48
"""Parts of a recipe are read as fractions with denominators up to this (a teaspoon in a cup)."""


@dataclass(frozen=True, slots=True)
class Kitchen:
    """One set of measures, largest first; ``counts`` are in smallest spoons."""

    titles: tuple[str, ...]
    counts: tuple[int, ...]
    spoon: Quantity

    def spoken(self, volume: Quantity) -> str:
        """``1 cup + 2 tbsp``: the fewest measures that fill ``volume`` exactly."""
        spoons = round(volume.value / self.spoon.value)
        return " + ".join(_said(title, times) for title, times in self.measures(spoons))

    def measures(self, spoons: int) -> tuple[tuple[str, int], ...]:
        """Each measure used, and how often."""
        used = filling(self.counts, spoons)
        return tuple(
            (title, times) for title, times in zip(self.titles, used, strict=True) if times
        )


def kitchen(book: Book) -> Kitchen:
    """The measures of the maker's kitchen: US where inches are read, else metric."""
    set_name = "us" if book.display == "imperial" else "metric"
    rows = [f"{set_name}-{size}" for size in SIZES]
    volumes = [book.table("kitchen", row, "volume") for row in rows]
    spoon = volumes[-1]
    return Kitchen(
        tuple(book.words("kitchen", row, "title") for row in rows),
        tuple(round(volume.value / spoon.value) for volume in volumes),
        spoon,
    )


def _said(title: str, times: int) -> str:
    """``2 tbsp``, ``3 spoons of 15 ml``, ``2 × 60 ml``."""
    size, _, vessel = title.rpartition(" ")
    if vessel in ("cup", "spoon") and size.endswith("ml"):
        return f"{times} {vessel}{'s' if times > 1 else ''} of {size}"
    if times == 1:
        return title
    if size == "1":
        return f"{times} {vessel}" + ("s" if vessel == "cup" else "")
    return f"{times} × {title}"


def fraction(part: float) -> Fraction:
    """A part of a recipe as the fraction it stands for: 0.0417 is 1/24."""
    return Fraction(part).limit_denominator(FINEST_PART)


@dataclass(frozen=True, slots=True)
class KitchenPart:
    """The size (mm3) of one part of a recipe so that every ingredient fills whole measures.

    Not less than is needed, all ingredients in their exact ratio, and beyond the first size
    that does at most ``excess`` of the need more, where that saves measures.
    """

    parts: tuple[Fraction, ...]
    counts: tuple[int, ...]
    spoon: float
    excess: float

    def __call__(self, need: float) -> float:
        step = least_step(self.parts)
        first = max(1, math.ceil(need / (self.spoon * step) - 1e-9))
        last = max(first, math.floor(need * (1 + self.excess) / (self.spoon * step)))
        best = min(range(first, last + 1), key=lambda times: (self._scoops(times * step), times))
        return float(self.spoon * best * step)

    def _scoops(self, part: Fraction) -> int:
        return sum(sum(filling(self.counts, int(share * part))) for share in self.parts)


def least_step(parts: Iterable[Fraction]) -> Fraction:
    """The smallest part, in spoons, of which every ingredient is a whole number of spoons."""
    found = tuple(parts)
    bottom = math.lcm(*(part.denominator for part in found))
    return Fraction(bottom, math.gcd(*(int(part * bottom) for part in found)))


def filling(counts: Sequence[int], spoons: int) -> tuple[int, ...]:
    """How often each measure is filled for ``spoons``: as few fillings as can be."""
    largest = counts[0]
    whole = max(0, spoons // largest - 1)
    return tuple(
        times + (whole if place == 0 else 0)
        for place, times in enumerate(_fewest(tuple(counts))[spoons - whole * largest])
    )


@lru_cache(maxsize=4)
def _fewest(counts: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    """The best filling of every amount below two of the largest; large measures first in ties."""
    nothing = (0,) * len(counts)
    best: list[tuple[int, ...]] = [nothing]
    for amount in range(1, 2 * counts[0]):
        options = [
            _one_more(best[amount - count], place)
            for place, count in enumerate(counts)
            if count <= amount
        ]
        best.append(min(options, key=lambda used: (sum(used), tuple(-times for times in used))))
    return tuple(best)


def _one_more(used: tuple[int, ...], place: int) -> tuple[int, ...]:
    return (*used[:place], used[place] + 1, *used[place + 1 :])
