"""What a letter is, whatever it comes from: lines in cap heights, on a baseline at 0."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Protocol

from foredge.contract import Point

Stroke = tuple[Point, ...]
"""A polyline; x to the right, y downwards, in cap heights."""


class FontUnreadable(Exception):
    """The bytes are no font that letters can be drawn from; the text says why."""


@dataclass(frozen=True, slots=True)
class Glyph:
    """One letter: its lines, and how far the next one stands from it."""

    strokes: tuple[Stroke, ...]
    advance: float


class Typeface(Protocol):
    """A set of letters. ``filled``: the lines are closed outlines, filled even-odd."""

    @property
    def filled(self) -> bool: ...
    @property
    def citation(self) -> str: ...

    def glyph(self, char: str) -> Glyph | None:
        """The letter for ``char``, or None where the set has none."""
        ...


def length_of(strokes: Iterable[Stroke], *, closed: bool) -> float:
    """How long the lines are, end to start included where they are ``closed``."""
    return math.fsum(
        math.dist(a, b)
        for stroke in strokes
        for a, b in zip(stroke, (*stroke[1:], stroke[0]) if closed else stroke[1:], strict=False)
    )


def area_of(strokes: Iterable[Stroke]) -> float:
    """The area inside closed outlines: a ring that turns the other way is a hole."""
    twice = math.fsum(
        ax * by - bx * ay
        for ring in strokes
        for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True)
    )
    return abs(twice) / 2
