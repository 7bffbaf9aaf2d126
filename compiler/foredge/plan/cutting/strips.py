"""The most valuable sheet of strips: the pattern generator of the linear programme.

A sheet is cut into strips and every strip into pieces or stacks of equal pieces. Both knapsacks
keep only sums that no other sum beats in length and value: P. C. Gilmore and R. E. Gomory,
"Multistage cutting stock problems of two and more dimensions", Operations Research 13 (1965),
pp. 94-120, for the two stages; the lists of unbeaten sums are common practice.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

_MOST_SUMS = 160
_MOST_STACK = 8

Chain = tuple["Chain", "Stack | Strip", int] | None
Sums = list[tuple[float, float, Chain]]  # length, value, what was taken; both rising


@dataclass(frozen=True, slots=True)
class Stack:
    """``number`` equal pieces of one kind, one behind the other across the strip."""

    kind: int
    number: int
    along: float
    across: float  # of one piece


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip as wide as ``across``: the stacks in it."""

    across: float
    stacks: tuple[Stack, ...]


def best_strips(
    length: float, width: float, stacks: list[Stack], values: list[float], counts: list[int]
) -> tuple[float, tuple[Strip, ...], int]:
    """The best strips for a panel: their value, the strips, and the work done.

    Strips run along ``length`` and lie side by side across ``width``; ``stacks`` come in the order
    of their size across. No strip holds more of a kind than ``counts`` says.
    """
    sums: Sums = [(0.0, 0.0, None)]
    whole: Sums = [(0.0, 0.0, None)]
    work = 0
    level = 0.0
    for index, stack in enumerate(stacks):
        across = stack.across * stack.number
        value = values[stack.kind] * stack.number
        if across <= width and stack.along <= length and value > 0:
            most = min(int(length / stack.along), counts[stack.kind] // stack.number)
            sums = _extended(sums, stack, stack.along, value, most, length)
            work += 4 * len(sums)
        following = stacks[index + 1] if index + 1 < len(stacks) else None
        if following and following.across * following.number == across:
            continue
        if across > width:
            break
        if sums[-1][1] > level:
            level = sums[-1][1]
            strip = Strip(across, tuple(_taken(sums[-1][2])))  # type: ignore[arg-type]
            whole = _extended(whole, strip, across, level, int(width / across), width)
            work += 4 * len(whole)
    return whole[-1][1], tuple(_taken(whole[-1][2])), work  # type: ignore[arg-type]


def _extended(
    sums: Sums, thing: Stack | Strip, size: float, value: float, most: int, limit: float
) -> Sums:
    """The unbeaten sums with up to ``most`` of ``thing`` added."""
    chunk = 1
    while most > 0:
        number = min(chunk, most)
        end = bisect_right(sums, limit - size * number, key=_length)
        more: Sums = [
            (s + size * number, v + value * number, (chain, thing, number))
            for s, v, chain in sums[:end]
        ]
        if not more:
            break
        sums = _unbeaten(sums, more)
        most -= number
        chunk *= 2
    return sums


def _length(entry: tuple[float, float, Chain]) -> float:
    return entry[0]


def _unbeaten(one: Sums, two: Sums) -> Sums:
    kept: Sums = []
    highest = -1.0
    for entry in sorted(one + two, key=lambda entry: (entry[0], -entry[1])):
        if entry[1] > highest + 1e-9:
            kept.append(entry)
            highest = entry[1]
    if len(kept) > _MOST_SUMS:  # keep every few, and the last always
        step = len(kept) / _MOST_SUMS
        kept = [kept[int(i * step)] for i in range(_MOST_SUMS - 1)] + kept[-1:]
        kept[0] = one[0] if one[0][0] == 0 else kept[0]
    return kept


def _taken(chain: Chain) -> list[Stack | Strip]:
    found = []
    while chain is not None:
        chain, thing, number = chain
        found += [thing] * number
    return found


def stacks_of(
    sides: list[tuple[tuple[float, float], ...]], counts: list[int], axis: int, width: float
) -> list[Stack]:
    """Every useful stack of the kinds, by size across; ``axis`` 0: strips lie one below another."""
    found = {
        Stack(kind, number, side[axis], side[1 - axis])
        for kind, ways in enumerate(sides)
        for side in ways
        for number in range(1, min(counts[kind], int(width / side[1 - axis]), _MOST_STACK) + 1)
    }
    return sorted(found, key=lambda s: (s.across * s.number, s.kind, s.number, s.along))
