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
        _, at, w, h, done = _cheapest(job, leaves, item, style, random)
        work += done
        if at < 0:
            left.append(item)
            if not style.skip:
                failed.add(job.kind[item])
        else:
            _put(job, leaves, item, (at, w, h), style, random)
    return left, work


def insert_closest(
    job: Job, leaves: list[Node], loose: list[int], style: Style, random: Callable[[], float]
) -> tuple[list[int], int]:
    """Insert, again and again, the item that costs least for its size; like ``insert_all``."""
    waiting = list(loose)
    power = style.power
    work = 0
    while waiting:
        best = math.inf
        pick = -1
        where = (-1, 0.0, 0.0)
        for item in waiting:
            cost, at, w, h, done = _cheapest(job, leaves, item, style, random)
            work += done
            if at < 0:
                continue
            rate = cost / job.area[item] ** power * (0.8 + 0.4 * random())
            if rate < best:
                best, pick, where = rate, item, (at, w, h)
        if pick < 0:
            break
        waiting.remove(pick)
        _put(job, leaves, pick, where, style, random)
    return waiting, work


def _cheapest(
    job: Job, leaves: list[Node], item: int, style: Style, random: Callable[[], float]
) -> tuple[float, int, float, float, int]:
    """The cheapest place of one item: cost, index of the panel (or -1), its size there, work."""
    power, skip, exact = style.power, style.skip, style.exact
    least = job.least_side
    best = math.inf
    at = -1
    bw = bh = 0.0
    work = 10 + len(leaves) * len(job.sides[item])
    for w, h in job.sides[item]:
        for index, leaf in enumerate(leaves):
            width = leaf.w
            if w > width:
                continue
            height = leaf.h
            if h > height or (skip and random() < skip):
                continue
            work += 4
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
                at = index
                bw, bh = w, h
    return best, at, bw, bh, work


def _put(
    job: Job,
    leaves: list[Node],
    item: int,
    where: tuple[int, float, float],
    style: Style,
    random: Callable[[], float],
) -> None:
    """Put the item there; the first cut is the one that leaves the largest free panel."""
    at, w, h = where
    leaf = leaves[at]
    least = job.least_side
    dw, dh = leaf.w - w, leaf.h - h
    larger = dw * leaf.h >= dh * leaf.w
    upright = larger and dh < least if dw < least else larger or dh < least
    if style.swap and random() < style.swap:
        upright = not upright
    place(leaf, item, w, h, upright, leaves, at)
