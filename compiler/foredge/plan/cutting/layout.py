"""From the search's panels to positions, a numbered list of cuts, and named off-cuts.

On every panel the pieces come first, from the left head corner, and what is left lies at the right
or the tail. All positions are multiples of the job's unit, so they add up exactly.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from string import ascii_uppercase
from typing import Literal

from foredge.plan.cutting.job import Job
from foredge.plan.cutting.model import Cut, OffCut, Part, Piece, Placement, Rect, Sheet, UsedSheet
from foredge.plan.cutting.panels import Pane
from foredge.plan.cutting.tree import CUT, FREE, Bin, Node

_SPOILED = -3


@dataclass(slots=True)
class _Panel:
    """A panel with its place: pre-cut panes and search panels in one tree, sizes in units."""

    x: float
    y: float
    w: float
    h: float
    item: int
    axis: int = 0
    kids: list[_Panel] = field(default_factory=list)


@dataclass(slots=True)
class _Draft:
    """What is written down while the cuts of one sheet are walked through."""

    job: Job
    pieces: Sequence[Piece]
    min_off_cut: float
    placements: list[Placement] = field(default_factory=list)
    cuts: list[Cut] = field(default_factory=list)
    off_cuts: list[OffCut] = field(default_factory=list)


def lay_out(
    job: Job, bin_: Bin, sheet: Sheet, pieces: Sequence[Piece], min_off_cut: float = 0.0
) -> UsedSheet:
    """The used sheet of one bin; off-cuts with a side under ``min_off_cut`` mm are waste."""
    draft = _Draft(job, pieces, min_off_cut)
    roots = iter(bin_.roots)
    _walk(draft, _from_pane(draft, job.stocks[bin_.stock].ways[bin_.way], roots))
    return UsedSheet(sheet, tuple(draft.placements), tuple(draft.cuts), tuple(draft.off_cuts))


def _from_pane(draft: _Draft, pane: Pane, roots: Iterator[Node]) -> _Panel:
    """Pre-cut panes in place; each clean one is filled from the next of ``roots``."""
    if pane.spoiled:
        return _Panel(pane.x, pane.y, pane.w, pane.h, _SPOILED)
    if not pane.kids:
        return _from_node(next(roots), pane.x, pane.y)
    kids = [_from_pane(draft, kid, roots) for kid in pane.kids]
    if all(kid.item == FREE for kid in kids):  # nothing to cut here
        return _Panel(pane.x, pane.y, pane.w, pane.h, FREE)
    return _without_idle_cuts(draft, _Panel(pane.x, pane.y, pane.w, pane.h, CUT, pane.axis, kids))


def _without_idle_cuts(draft: _Draft, panel: _Panel) -> _Panel:
    """No cut parts waste from waste: kids side by side that nobody keeps stay one."""
    kids: list[_Panel] = []
    for kid in panel.kids:
        rect = _rect(draft, kid.x, kid.y, kid.w, kid.h)
        if kid.item == FREE and not _worth_keeping(draft, rect):
            kid.item = _SPOILED
        if kids and kid.item == kids[-1].item == _SPOILED:
            last = kids[-1]
            last.w, last.h = kid.x + kid.w - last.x, kid.y + kid.h - last.y
        else:
            kids.append(kid)
    if len(kids) == 1:
        return kids[0]
    panel.kids = kids
    return panel


def _from_node(node: Node, x: float, y: float) -> _Panel:
    panel = _Panel(x, y, node.w, node.h, node.item, node.axis)
    if node.item != CUT:
        return panel
    # Wide strips first keeps equal strips together; what is free comes last.
    kids = sorted(node.kids, key=lambda kid: (kid.item == FREE, -(kid.h if node.axis else kid.w)))
    for kid in kids:
        panel.kids.append(_from_node(kid, x, y))
        if node.axis:
            y += kid.h
        else:
            x += kid.w
    return panel


def _rect(draft: _Draft, x: float, y: float, w: float, h: float) -> Rect:
    """The real rectangle of a grown one, in mm."""
    scale, gap = draft.job.scale, draft.job.kerf
    return Rect(x / scale, y / scale, max(w - gap, 0.0) / scale, max(h - gap, 0.0) / scale)


def _walk(draft: _Draft, panel: _Panel) -> Part:
    """Number the cuts of a panel, each part finished before the next; the part it makes."""
    rect = _rect(draft, panel.x, panel.y, panel.w, panel.h)
    if panel.item == CUT:
        return _walk_cuts(draft, panel)
    if panel.item == FREE:
        return Part(rect, off_cut=_keep(draft, rect))
    if panel.item == _SPOILED:
        return Part(rect)
    piece = draft.pieces[draft.job.piece[panel.item]]
    upright = draft.job.sides[panel.item][0] == (panel.w, panel.h)
    width, height = (piece.width, piece.height) if upright else (piece.height, piece.width)
    draft.placements.append(Placement(piece, rect.x, rect.y, width, height))
    return Part(rect, placement=len(draft.placements) - 1)


def _walk_cuts(draft: _Draft, panel: _Panel) -> Part:
    """Cut one kid after another off the rest of a panel; each kid is finished before the next."""
    axis: Literal["x", "y"] = "y" if panel.axis else "x"
    right, tail = panel.x + panel.w, panel.y + panel.h
    made: list[tuple[int, Rect, float, Part]] = []
    for kid in panel.kids[:-1]:
        rect = _rect(draft, kid.x, kid.y, right - kid.x, tail - kid.y)
        order = len(draft.cuts) + 1
        at = ((kid.h if panel.axis else kid.w) - draft.job.kerf) / draft.job.scale
        blank = Part(rect)
        draft.cuts.append(Cut(order, rect, axis, at, blank, blank))  # holds the number
        made.append((order, rect, at, _walk(draft, kid)))
    rest = _walk(draft, panel.kids[-1])
    for order, rect, at, first in reversed(made):
        draft.cuts[order - 1] = Cut(order, rect, axis, at, first, rest)
        rest = Part(rect, next_cut=order)
    return rest


def _keep(draft: _Draft, rect: Rect) -> str | None:
    if not _worth_keeping(draft, rect):
        return None
    name = letters(len(draft.off_cuts))
    draft.off_cuts.append(OffCut(name, rect.x, rect.y, rect.width, rect.height))
    return name


def _worth_keeping(draft: _Draft, rect: Rect) -> bool:
    return min(rect.width, rect.height) > max(draft.min_off_cut - 1e-9, 0.0)


def letters(number: int) -> str:
    """A, B, ... Z, AA, AB, ... for 0, 1, ..."""
    name = ""
    number += 1
    while number:
        number, digit = divmod(number - 1, 26)
        name = ascii_uppercase[digit] + name
    return name
