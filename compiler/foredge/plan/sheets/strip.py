"""What was kept free for the plan's sake only is an off-cut like any other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from foredge.plan.cutting import Cut, OffCut, Part, Rect, UsedSheet
from foredge.plan.cutting.layout import letters

SLACK_MM = 1e-6


def strips_kept(used: UsedSheet, spoiled: Sequence[Rect], least_mm: float) -> UsedSheet:
    """``used`` with every clean part that counts as waste made an off-cut.

    A part is clean where it touches none of ``spoiled``; with a side under ``least_mm`` it stays
    waste. The sheet's own keep-out rectangles are not asked: a strip that is cut off first, so
    that a crease becomes a fold, is among them.
    """
    found = list(used.off_cuts)

    def named(part: Part) -> Part:
        panel = part.panel
        kept = part.next_cut is not None or part.placement is not None or part.off_cut is not None
        if kept or min(panel.width, panel.height) <= max(least_mm - SLACK_MM, 0.0):
            return part
        if any(_touch(panel, place) for place in spoiled):
            return part
        found.append(OffCut(letters(len(found)), panel.x, panel.y, panel.width, panel.height))
        return replace(part, off_cut=found[-1].name)

    cuts = tuple(_of_cut(cut, named(cut.first), named(cut.second)) for cut in used.cuts)
    return (
        used
        if len(found) == len(used.off_cuts)
        else replace(used, cuts=cuts, off_cuts=tuple(found))
    )


def _of_cut(cut: Cut, first: Part, second: Part) -> Cut:
    return replace(cut, first=first, second=second)


def _touch(panel: Rect, place: Rect) -> bool:
    """Whether they overlap; a crease (no width) inside the panel does, on its edge not."""
    return (
        panel.x < place.x + place.width - SLACK_MM
        and place.x < panel.x + panel.width - SLACK_MM
        and panel.y < place.y + place.height - SLACK_MM
        and place.y < panel.y + panel.height - SLACK_MM
    )
