"""Lengths cut from lengths: pieces that may not be joined, and thread that may.

First fit, the longest piece first, once into the first length with room and once into the
tightest. Where neither finds room for all, every way is tried, up to a number of steps.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

SLACK_MM = 1e-6
MOST = 60
"""With more pieces than these, the two quick ways have to do."""
STEPS = 20_000
"""Pieces put down while every way is tried; enough for a dozen pieces and lengths."""


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
    """``cuts`` out of ``lengths_mm``, as little as can be left without room."""
    tries = [_fit(cuts, lengths_mm, tight) for tight in (False, True)]
    best = min(tries, key=lambda found: found.short_mm)
    hopeful = best.homeless and len(cuts) <= MOST
    return _EveryWay(cuts, lengths_mm, best).best if hopeful else best


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


class _EveryWay:
    """Depth first, the longest piece first; lengths with the same rest are one."""

    def __init__(self, cuts: Sequence[Cut], lengths_mm: Sequence[float], known: Fit) -> None:
        self.best = known
        self._cuts = sorted(cuts, key=lambda one: (-one.length_mm, one.place))
        self._left = list(lengths_mm)
        self._homeless: list[Cut] = []
        self._steps = STEPS
        self._try(0, math.fsum(cut.length_mm for cut in cuts))

    def _try(self, number: int, ahead_mm: float) -> None:
        short = math.fsum(cut.length_mm for cut in self._homeless)
        least = short + max(0.0, ahead_mm - math.fsum(self._left))
        if self._steps <= 0 or least >= self.best.short_mm - SLACK_MM:
            return
        if number == len(self._cuts):
            self.best = Fit(tuple(self._homeless), tuple(self._left))
            return
        self._steps -= 1
        cut = self._cuts[number]
        rests = {mm: place for place, mm in enumerate(self._left) if mm + SLACK_MM >= cut.length_mm}
        for mm, place in sorted(rests.items()):
            self._left[place] = max(0.0, mm - cut.length_mm)
            self._try(number + 1, ahead_mm - cut.length_mm)
            self._left[place] = mm
        self._homeless.append(cut)
        self._try(number + 1, ahead_mm - cut.length_mm)
        self._homeless.pop()


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
