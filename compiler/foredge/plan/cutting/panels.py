"""Ways to cut a sheet round its keep-out zones, before any piece is laid.

Zones come as (left, head, right, tail) in grown coordinates: a panel that starts at ``right`` or
later, or whose grown end is at ``left`` or earlier, is clear of the zone. A crease thinner than
the kerf has ``right`` before ``left``: the knife takes it away whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

Zone = tuple[float, float, float, float]
_MOST_WAYS = 6


@dataclass(frozen=True, slots=True)
class Pane:
    """A panel of the pre-cut sheet: clean, spoiled (it holds a zone), or cut into ``kids``."""

    x: float
    y: float
    w: float
    h: float
    axis: int = 0
    kids: tuple[Pane, ...] = ()
    spoiled: bool = False


def clean(pane: Pane) -> list[Pane]:
    """The clean panels of a pre-cut sheet, in the order of its cuts."""
    if pane.kids:
        return [found for kid in pane.kids for found in clean(kid)]
    return [] if pane.spoiled else [pane]


def ways_round(width: float, height: float, zones: list[Zone], gap: float) -> list[Pane]:
    """Different ways to cut the sheet into clean and spoiled panels; just the sheet without zones.

    The ways are sorted by the size of their largest clean panels and limited in number.
    """
    whole = Pane(0.0, 0.0, width, height)
    if not _touching(whole, zones):
        return [whole]
    ways: dict[tuple[tuple[float, float, float, float], ...], Pane] = {}
    for first in (0, 1):
        for later in (0, 1):
            for pick in (0, 1):
                way = _Round(zones, gap, later, pick).cut(whole, first)
                key = tuple(sorted((p.x, p.y, p.w, p.h) for p in clean(way)))
                ways.setdefault(key, way)
    ranked = sorted(ways.values(), key=lambda way: -sum((p.w * p.h) ** 2 for p in clean(way)))
    return ranked[:_MOST_WAYS]


def _touching(pane: Pane, zones: list[Zone]) -> list[Zone]:
    return [
        zone
        for zone in zones
        if pane.x < zone[2]
        and pane.x + pane.w > zone[0]
        and pane.y < zone[3]
        and pane.y + pane.h > zone[1]
    ]


@dataclass(frozen=True, slots=True)
class _Round:
    """One way round the zones: the axis for later cuts, and which zone is taken first."""

    zones: list[Zone]
    gap: float
    later: int
    pick: int

    def cut(self, pane: Pane, axis: int) -> Pane:
        """Cut one zone free along ``axis`` first, then across; go on with the clean sides."""
        inside = _touching(pane, self.zones)
        if not inside:
            return pane
        zone = max(inside, key=_size) if self.pick else min(inside, key=lambda z: z[axis])
        strips = list(self.strips(pane, axis, zone))
        if len(strips) == 1:
            axis = 1 - axis
            strips = list(self.strips(pane, axis, zone))
        if len(strips) == 1:
            return Pane(pane.x, pane.y, pane.w, pane.h, spoiled=True)
        kids = tuple(
            self.cut(strip, 1 - axis if middle else self.later) for strip, middle in strips
        )
        return Pane(pane.x, pane.y, pane.w, pane.h, axis, kids)

    def strips(self, pane: Pane, axis: int, zone: Zone) -> Iterator[tuple[Pane, bool]]:
        """The strips before, at and after the zone; the middle one is flagged.

        A strip no wider than the kerf is none: it stays with the middle one.
        """
        start, size = (pane.y, pane.h) if axis else (pane.x, pane.w)
        end = start + size
        before, after = zone[axis], zone[axis + 2]
        if after <= before:  # a crease within the kerf: one cut along its middle takes it away
            before = after = float((before + after) // 2)
        if before - start <= self.gap:
            before = start
        if after != before:
            after = max(after, before + self.gap + 1)
        if end - after <= self.gap:
            after = end
        for low, high, middle in ((start, before, 0), (before, after, 1), (after, end, 0)):
            if high > low:
                yield (
                    (
                        Pane(pane.x, low, pane.w, high - low)
                        if axis
                        else Pane(low, pane.y, high - low, pane.h)
                    ),
                    bool(middle),
                )


def _size(zone: Zone) -> float:
    return max(zone[2] - zone[0], 0.0) * max(zone[3] - zone[1], 0.0)
