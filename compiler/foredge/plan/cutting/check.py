"""The independent check of a cutting plan. It shares no arithmetic with the search.

Whether edge-to-edge cuts can free the pieces is found out from their places alone; then the cuts
are replayed one by one and must free exactly these pieces.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from foredge.plan.cutting.model import (
    Cut,
    CutPlan,
    OffCut,
    Part,
    Piece,
    Placement,
    Rect,
    Sheet,
    UsedSheet,
)

SLACK_MM = 1e-6


class CuttingBug(AssertionError):
    """A plan failed its own check: a fault of the program, not of the maker's input."""


def ensure(plan: CutPlan, sheets: Sequence[Sheet], pieces: Sequence[Piece], kerf: float) -> CutPlan:
    """The plan itself; raises CuttingBug when the check finds a fault."""
    found = faults(plan, sheets, pieces, kerf)
    if found:
        raise CuttingBug("The cutting plan failed its own check: " + " ".join(found[:5]))
    return plan


def faults(
    plan: CutPlan, sheets: Sequence[Sheet], pieces: Sequence[Piece], kerf: float
) -> list[str]:
    """Every fault of the plan as a sentence; empty when the plan is sound."""
    found = [*_sheet_counts(plan, sheets), *_piece_counts(plan, pieces)]
    for number, used in enumerate(plan.used, 1):
        for fault in _sheet_faults(used, kerf):
            found.append(f"Sheet {number} ('{used.sheet.name}'): {fault}")
    return found


def _sheet_counts(plan: CutPlan, sheets: Sequence[Sheet]) -> list[str]:
    shelf: Counter[Sheet] = Counter()
    for sheet in sheets:
        shelf[sheet] += sheet.count
    used = Counter(entry.sheet for entry in plan.used)
    return [
        f"Sheet '{sheet.name}' is used {number} times, {shelf[sheet]} are there."
        for sheet, number in used.items()
        if number > shelf[sheet]
    ]


def _piece_counts(plan: CutPlan, pieces: Sequence[Piece]) -> list[str]:
    wanted: Counter[Piece] = Counter()
    for piece in pieces:
        wanted[piece] += piece.count
    got = Counter(placed.piece for used in plan.used for placed in used.placements)
    for rest in plan.unplaced:
        got[rest.piece] += rest.count
    return [
        f"Piece '{piece.name}' is accounted for {got[piece]} times, {wanted[piece]} are wanted."
        for piece in {**wanted, **got}
        if wanted[piece] != got[piece]
    ]


def _sheet_faults(used: UsedSheet, kerf: float) -> list[str]:
    found: list[str] = []
    if not used.placements:
        found.append("It holds no piece.")
    for placed in used.placements:
        found += _placement_faults(used.sheet, placed)
    found += _overlaps(used.placements)
    if not found and not separable(used.placements, kerf):
        found.append("No row of edge-to-edge cuts frees the pieces.")
    return found or _replay(used, kerf)


def _placement_faults(sheet: Sheet, placed: Placement) -> list[str]:
    found: list[str] = []
    name = f"Piece '{placed.piece.name}'"
    straight = (placed.piece.width, placed.piece.height)
    lies = (placed.width, placed.height)
    if not _alike(lies, straight) and not (placed.piece.turn and _alike(lies, straight[::-1])):
        found.append(f"{name} lies as {lies}, wanted {straight}.")
    if (
        min(placed.x, placed.y) < -SLACK_MM
        or placed.x + placed.width > sheet.width + SLACK_MM
        or placed.y + placed.height > sheet.height + SLACK_MM
    ):
        found.append(f"{name} reaches over the edge.")
    for zone in sheet.keep_out:
        if _meet(placed, zone):
            found.append(f"{name} lies on a keep-out zone.")
    return found


def _alike(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return all(abs(a - b) <= SLACK_MM for a, b in zip(one, other, strict=True))


def _meet(one: Placement | Rect, other: Placement | Rect) -> bool:
    """Whether two rectangles overlap; a crease (no width) inside a piece does."""
    return (
        one.x < other.x + other.width - SLACK_MM
        and other.x < one.x + one.width - SLACK_MM
        and one.y < other.y + other.height - SLACK_MM
        and other.y < one.y + one.height - SLACK_MM
    )


def _overlaps(placements: Sequence[Placement]) -> list[str]:
    found: list[str] = []
    row = sorted(placements, key=lambda placed: placed.x)
    for index, one in enumerate(row):
        for other in row[index + 1 :]:
            if other.x >= one.x + one.width - SLACK_MM:
                break
            if _meet(one, other):
                found.append(f"'{one.piece.name}' and '{other.piece.name}' overlap.")
    return found


def separable(placements: Sequence[Placement], kerf: float) -> bool:
    """Whether edge-to-edge cuts, each taking ``kerf``, can free the pieces, from places alone."""
    stack = [list(placements)]
    while stack:
        group = stack.pop()
        if len(group) < 2:
            continue
        halves = _gaps(group, True, kerf) or _gaps(group, False, kerf)
        if not halves:
            return False
        stack.extend(halves)
    return True


def _gaps(group: list[Placement], along_x: bool, kerf: float) -> list[list[Placement]]:
    """The groups that all cuts across one axis make; empty when there is no such cut."""

    def span(placed: Placement) -> tuple[float, float]:
        if along_x:
            return placed.x, placed.x + placed.width
        return placed.y, placed.y + placed.height

    row = sorted(group, key=lambda placed: span(placed)[0])
    groups = [[row[0]]]
    reach = span(row[0])[1]
    for placed in row[1:]:
        low, high = span(placed)
        if low >= reach + kerf - SLACK_MM:
            groups.append([])
        groups[-1].append(placed)
        reach = max(reach, high)
    return groups if len(groups) > 1 else []


def _replay(used: UsedSheet, kerf: float) -> list[str]:
    """Make the cuts in order, each on a panel that is there; then look what has come off."""
    whole = Rect(0.0, 0.0, used.sheet.width, used.sheet.height)
    if not used.cuts:
        only = used.placements[0]
        alone = len(used.placements) == 1 and _same(_box(only), whole)
        return [] if alone else ["Pieces are on it, but no cut is given."]
    panels: dict[int, Rect] = {1: whole}
    freed: Counter[int] = Counter()
    kept: Counter[str] = Counter()
    for number, cut in enumerate(used.cuts, 1):
        panel = panels.pop(number, None)
        if cut.order != number or panel is None or not _same(panel, cut.panel):
            return [f"Cut {number} is not on a panel that is there."]
        if not 0 < cut.at < (panel.width if cut.axis == "x" else panel.height):
            return [f"Cut {number} misses its panel."]
        for part, side in zip((cut.first, cut.second), _sides(cut, kerf), strict=True):
            fault = _take(used, part, side, panels, freed, kept)
            if fault:
                return [f"Cut {number}: {fault}"]
    return _remainder(used, panels, freed, kept)


def _take(
    used: UsedSheet,
    part: Part,
    side: Rect,
    panels: dict[int, Rect],
    freed: Counter[int],
    kept: Counter[str],
) -> str | None:
    """Note what becomes of one side of a cut; a sentence when it cannot be."""
    if not _same(part.panel, side):
        return "a part is not what the cut leaves."
    if part.next_cut is not None:
        if part.next_cut in panels:
            return "two panels lead to the same next cut."
        panels[part.next_cut] = side
    elif part.placement is not None:
        if not 0 <= part.placement < len(used.placements):
            return "it frees a piece that is not on the sheet."
        if not _same(_box(used.placements[part.placement]), side):
            return "the freed panel has not the size of its piece."
        freed[part.placement] += 1
    elif part.off_cut is not None:
        named = [off for off in used.off_cuts if off.name == part.off_cut]
        if len(named) != 1 or not _same(_box(named[0]), side):
            return f"off-cut '{part.off_cut}' is not listed as it lies."
        kept[part.off_cut] += 1
    return None


def _remainder(
    used: UsedSheet, panels: dict[int, Rect], freed: Counter[int], kept: Counter[str]
) -> list[str]:
    found: list[str] = []
    if panels:
        found.append("A panel waits for a cut that does not come.")
    if freed != Counter(range(len(used.placements))):
        found.append("The cuts do not free every piece once.")
    if kept != Counter(off.name for off in used.off_cuts):
        found.append("The cuts do not leave every off-cut once.")
    return found


def _sides(cut: Cut, kerf: float) -> tuple[Rect, Rect]:
    """Both sides of a cut; the kerf is lost between them."""
    panel, at = cut.panel, cut.at
    if cut.axis == "x":
        rest = max(panel.width - at - kerf, 0.0)
        return (
            Rect(panel.x, panel.y, at, panel.height),
            Rect(panel.x + at + kerf, panel.y, rest, panel.height),
        )
    rest = max(panel.height - at - kerf, 0.0)
    return (
        Rect(panel.x, panel.y, panel.width, at),
        Rect(panel.x, panel.y + at + kerf, panel.width, rest),
    )


def _box(thing: Placement | OffCut) -> Rect:
    return Rect(thing.x, thing.y, thing.width, thing.height)


def _same(one: Rect, other: Rect) -> bool:
    return _alike((one.x, one.y), (other.x, other.y)) and _alike(
        (one.width, one.height), (other.width, other.height)
    )
