"""A button, plate or flap that stands on a relief, or touches it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from foredge.contract import (
    Build,
    Look,
    Path,
    Point,
    Problem,
    Rings,
    Severity,
    outline_of,
    panel_of,
    reliefs_of,
    shapes_of,
)
from foredge_rules.apart import gap
from foredge_rules.telling import told

Near = tuple[float, str]
"""The gap in mm, negative for an overlap, and the part of the relief."""


@dataclass(frozen=True, slots=True)
class ClosureOnRelief:
    """A closure that does not cross the relief needs bare ground under it."""

    kind: str = "rule"
    name: str = "closure-on-relief"
    title: str = "A closure set against a relief"
    severity: Severity = Severity.WARNING
    consequence: str = (
        "It has no flat ground to be fixed on, knocks the clay off in use, and stands too high"
    )
    remedy: str = "Move the part of the relief, or the closure, until a finger fits between"
    source: str = "geometry; the distance from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each panel where a closure that is led beside the relief comes to it."""
        closure = build.book.closure
        if closure is None or getattr(closure.options, "over_relief", False):
            return
        least = build.book.default("closure-relief-gap").value
        crossed = tuple(getattr(closure.plugin, "crosses", ()))
        for relief in reliefs_of(build.book):
            on = relief.options.on
            if on in crossed:
                continue
            nearest = min(_gaps(build, on, least), default=None)
            if nearest is not None:
                yield told(self, _place(build), _text(closure.plugin.title, on, nearest, least))


def _text(title: str, on: str, nearest: Near, least: float) -> str:
    far, name = nearest
    what = f"on the {on} the closure ({title[:1].lower()}{title[1:]})"
    if far <= 0:
        deep = f", {-far:.1f} mm deep" if far < -0.05 else ""
        return f"{what} stands on '{name}' of the relief{deep}"
    return f"{what} is {far:.1f} mm from '{name}' of the relief; leave {least:g} mm or more"


def _place(build: Build) -> Path:
    return build.book.closure.path if build.book.closure is not None else ("closure",)


def _gaps(build: Build, on: str, least: float) -> Iterator[Near]:
    """Every part of the relief that a piece of the closure comes nearer to than ``least``."""
    pieces = [
        piece
        for look in build.whole.looks
        if isinstance(look, Look) and look.layer == "closure" and look.on == on
        for piece in _pieces(look)
    ]
    if not pieces:
        return
    panel, skin = panel_of(build.quantity, on), build.quantity(f"sculpt.skin.{on}")
    for relief in reliefs_of(build.book):
        if relief.options.on != on:
            continue
        for one in shapes_of(build.book, relief, panel)[0]:
            outline = outline_of(one.shape, skin)
            for piece in pieces:
                far = gap(piece, outline, least)
                if far is not None and far < least:
                    yield far, one.name


def _pieces(look: Look) -> Iterator[Rings]:
    """Its pieces, and every stretch of its lines as wide as it is."""
    yield from (piece[:1] for piece in look.pieces if piece and piece[0])
    for line in look.lines:
        for start, end in pairwise(line):
            yield (_strip(start, end, look.width / 2),)


def _strip(start: Point, end: Point, half: float) -> tuple[Point, ...]:
    length = math.dist(start, end) or 1.0
    x, y = (end[1] - start[1]) / length * half, (start[0] - end[0]) / length * half
    return (
        (start[0] + x, start[1] + y),
        (end[0] + x, end[1] + y),
        (end[0] - x, end[1] - y),
        (start[0] - x, start[1] - y),
    )


PLUGIN = ClosureOnRelief()
