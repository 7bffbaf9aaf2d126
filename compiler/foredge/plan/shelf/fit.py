"""Lengths cut from lengths: pieces that may not be joined, and thread that may.

First fit, the longest piece first, once into the first length with room and once into the
tightest; the better of the two is taken.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

SLACK_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Cut:
    """One piece to be cut off in one length, at the operation of ``place`` in the work."""

    length_mm: float
    place: int
    title: str


@dataclass(frozen=True, slots=True)
class Fit:
    """What found no room, and how much is left of each length."""

    homeless: tuple[Cut, ...]
    left_mm: tuple[float, ...]

    @property
    def short_mm(self) -> float:
        """Length of all that found no room."""
        return math.fsum(cut.length_mm for cut in self.homeless)


def fit(cuts: Sequence[Cut], lengths_mm: Sequence[float]) -> Fit:
    """``cuts`` out of ``lengths_mm``."""
    tries = [_fit(cuts, lengths_mm, tight) for tight in (False, True)]
    return min(tries, key=lambda found: found.short_mm)


def _fit(cuts: Sequence[Cut], lengths_mm: Sequence[float], tight: bool) -> Fit:
    left = list(lengths_mm)
    homeless = []
    for cut in sorted(cuts, key=lambda one: (-one.length_mm, one.place)):
        room = [place for place, mm in enumerate(left) if mm + SLACK_MM >= cut.length_mm]
        if not room:
            homeless.append(cut)
            continue
        chosen = min(room, key=lambda place: left[place]) if tight else room[0]
        left[chosen] = max(0.0, left[chosen] - cut.length_mm)
    return Fit(tuple(homeless), tuple(left))


def units_for(cuts: Sequence[Cut], joinable_mm: float, unit_mm: float) -> tuple[int, bool]:
    """How many lengths of ``unit_mm`` give ``cuts`` and ``joinable_mm`` besides.

    The second result says that they must come in one length, since a piece is longer than one.
    """
    if any(cut.length_mm > unit_mm + SLACK_MM for cut in cuts):
        whole = math.fsum(cut.length_mm for cut in cuts) + joinable_mm
        return _up(whole / unit_mm), True
    opened, spare = 0, 0.0
    room: list[float] = []  # of the lengths begun that still hold a piece
    least = min((cut.length_mm for cut in cuts), default=0.0)
    for cut in sorted(cuts, key=lambda one: -one.length_mm):
        place = next((n for n, mm in enumerate(room) if mm + SLACK_MM >= cut.length_mm), None)
        if place is None:
            opened += 1
            room.append(unit_mm)
            place = len(room) - 1
        room[place] -= cut.length_mm
        if room[place] + SLACK_MM < least:
            spare += room.pop(place)
    more = max(0.0, joinable_mm - spare - math.fsum(room))
    return opened + _up(more / unit_mm), False


def _up(ratio: float) -> int:
    return math.ceil(ratio - 1e-9)
