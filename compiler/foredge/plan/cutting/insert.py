"""Putting items into free panels: the inner loop of every search here.

An insertion costs what it takes from the free panels. A free panel is worth area**power, and
nothing when it is narrower than the narrowest item. So a piece goes where it fits closely, and
what is left stays in few large panels.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.tree import Node, place

_Place = tuple[float, Node | None, float, float]  # cost, panel, and the item's size as it lies


@dataclass(frozen=True, slots=True)
class Style:
    """How to insert.

    A free panel is worth area ** ``power``; ``skip`` is the share of places passed over, ``swap``
    the share of insertions with the less likely first cut, and an insertion that fits a panel
    exactly in one length costs ``exact`` times as much.
    """

    power: float = 1.5
    skip: float = 0.0
    swap: float = 0.0
    exact: float = 1.0


def insert_all(
    job: Job, leaves: list[Node], order: list[int], style: Style, random: Callable[[], float]
) -> tuple[list[int], int]:
    """Insert the items in ``order`` where they cost least; return those left and the work done.

    ``leaves`` are the free panels and are kept true. Work is counted in panels looked at.
    """
    failed: set[int] = set()
    left: list[int] = []
    work = 0
    for item in order:
        if job.kind[item] in failed:
            left.append(item)
            continue
        _, leaf, w, h = _cheapest(job, leaves, item, style, random)
        work += 16 + len(leaves) * len(job.sides[item]) // 3
        if leaf is None:
            left.append(item)
            if not style.skip:
                failed.add(job.kind[item])
        else:
            _put(job, leaves, item, leaf, (w, h), style, random)
    return left, work


def insert_closest(
    job: Job, leaves: list[Node], loose: list[int], style: Style, random: Callable[[], float]
) -> tuple[list[int], int]:
    """Insert, again and again, the item that costs least for its size; like ``insert_all``.

    The place of an item is looked for again only where the last insertion changed the panels.
    """
    work = 0
    rated: list[tuple[float, int, _Place]] = []
    left: list[int] = []
    for item in loose:
        place_ = _cheapest(job, leaves, item, style, random)
        work += 6 + len(leaves) * len(job.sides[item]) // 3
        if place_[1] is None:
            left.append(item)
        else:
            scale = (0.8 + 0.4 * random()) / job.area[item] ** style.power
            rated.append((scale, item, place_))
    while rated:
        rates = [scale * place_[0] for scale, _, place_ in rated]
        pick = rates.index(min(rates))
        _, item, (_, leaf, w, h) = rated.pop(pick)
        work += 10 + len(rated) // 2
        assert leaf is not None
        changed = _put(job, leaves, item, leaf, (w, h), style, random)
        widest = max([panel.w for panel in changed], default=0.0)
        highest = max([panel.h for panel in changed], default=0.0)
        kept = []
        for entry in rated:
            scale, other, place_ = entry
            stale = place_[1] is leaf
            if not stale and not _may_fit(job.sides[other], widest, highest):
                kept.append(entry)
                continue
            among = leaves if stale else changed
            work += 5 + len(among) * len(job.sides[other]) // 3
            found = _cheapest(job, among, other, style, random)
            if not stale and place_[0] <= found[0]:
                found = place_
            if found[1] is None:
                left.append(other)
            else:
                kept.append((scale, other, found))
        rated = kept
    return left, work


def _may_fit(sides: tuple[tuple[float, float], ...], width: float, height: float) -> bool:
    w, h = sides[0]
    if w <= width and h <= height:
        return True
    return len(sides) > 1 and h <= width and w <= height


def _cheapest(
    job: Job, leaves: list[Node], item: int, style: Style, random: Callable[[], float]
) -> _Place:
    """The cheapest place of one item."""
    power, skip, exact = style.power, style.skip, style.exact
    least = job.least_side
    best = math.inf
    at: Node | None = None
    bw = bh = 0.0
    for w, h in job.sides[item]:
        for leaf in leaves:
            width = leaf.w
            if w > width:
                continue
            height = leaf.h
            if h > height or (skip and random() < skip):
                continue
            dw = width - w
            dh = height - h
            cost = (width * height) ** power
            if dw < least:
                if dh >= least:
                    cost -= (dh * width) ** power
            elif dh < least:
                cost -= (dw * height) ** power
            elif dw * height >= dh * width:
                cost -= (dw * height) ** power + (dh * w) ** power
            else:
                cost -= (dh * width) ** power + (dw * h) ** power
            if dw == 0 or dh == 0:
                cost *= exact
            if cost < best:
                best = cost
                at = leaf
                bw, bh = w, h
    return best, at, bw, bh


def _put(
    job: Job,
    leaves: list[Node],
    item: int,
    leaf: Node,
    size: tuple[float, float],
    style: Style,
    random: Callable[[], float],
) -> list[Node]:
    """Put the item there; the first cut is the one that leaves the largest free panel.

    The free panels that are new, or now smaller, are returned.
    """
    w, h = size
    least = job.least_side
    dw, dh = leaf.w - w, leaf.h - h
    larger = dw * leaf.h >= dh * leaf.w
    upright = larger and dh < least if dw < least else larger or dh < least
    if style.swap and random() < style.swap:
        upright = not upright
    index, number = leaves.index(leaf), len(leaves)
    place(leaf, item, w, h, upright, leaves, index)
    return leaves[number:] if dw == dh == 0 else [leaves[index], *leaves[number:]]
