"""Very many pieces: an equal share of them is laid out once, and that layout repeated."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from foredge.plan.cutting import CutPlan, Piece, Sheet
from foredge.plan.cutting.model import UsedSheet

MOST = 800
"""Pieces that are laid out together; of more, a share is, and the share is repeated."""

Alike = tuple[int, UsedSheet]
"""So many sheets that are cut up in this way."""

Engine = Callable[[list[Sheet], list[Piece]], CutPlan]


def plan_many(
    engine: Engine, sheets: Sequence[Sheet], pieces: Sequence[Piece]
) -> tuple[list[Alike], list[Piece]]:
    """Sheets that are cut alike, and the pieces that found no room.

    Time and memory grow with the kinds of pieces and sheets, hardly with their counts. The
    worst filled sheet of a share is not repeated: its pieces wait, so that shares lose nothing.
    """
    left = {sheet.name: sheet.count for sheet in sheets}
    wanted = _room_for(sheets, pieces)
    found: list[Alike] = []
    while (times := -(-sum(wanted.values()) // MOST)) > 1:
        share = engine(
            _shelf(sheets, {name: count // times for name, count in left.items()}),
            _some(pieces, {name: count // times for name, count in wanted.items()}),
        )
        if not share.used:
            break
        for used in _well_filled(share.used):
            found.append((times, used))
            left[used.sheet.name] -= times
            for placement in used.placements:
                wanted[placement.piece.name] -= times
    rest = engine(_shelf(sheets, left), _some(pieces, wanted))
    found += [(1, used) for used in rest.used]
    return _alike(found), _unplaced(pieces, found)


def _room_for(sheets: Sequence[Sheet], pieces: Sequence[Piece]) -> dict[str, int]:
    """How many of each piece are wanted, and no more than the sheets' area could ever give."""
    area = sum(sheet.width * sheet.height * sheet.count for sheet in sheets)
    return {
        piece.name: min(piece.count, int(area / (piece.width * piece.height))) for piece in pieces
    }


def _shelf(sheets: Sequence[Sheet], counts: Mapping[str, int]) -> list[Sheet]:
    return [replace(sheet, count=counts[sheet.name]) for sheet in sheets if counts[sheet.name]]


def _some(pieces: Sequence[Piece], counts: Mapping[str, int]) -> list[Piece]:
    return [replace(piece, count=counts[piece.name]) for piece in pieces if counts[piece.name]]


def _well_filled(used: Sequence[UsedSheet]) -> list[UsedSheet]:
    """All but the sheet of which the least is used, where there are more than one."""
    worst = min(range(len(used)), key=lambda place: _filled(used[place]))
    return [one for place, one in enumerate(used) if place != worst or len(used) == 1]


def _filled(used: UsedSheet) -> float:
    placed = sum(one.width * one.height for one in used.placements)
    return placed / (used.sheet.width * used.sheet.height)


def _unplaced(pieces: Sequence[Piece], found: Iterable[Alike]) -> list[Piece]:
    placed: Counter[str] = Counter()
    for same, used in found:
        for placement in used.placements:
            placed[placement.piece.name] += same
    short = {piece.name: piece.count - placed[piece.name] for piece in pieces}
    return _some(pieces, short)


def _alike(found: Iterable[Alike]) -> list[Alike]:
    """Sheets that give the same pieces are cut the same way: that with the fewest cuts."""
    groups: dict[tuple[str, tuple[tuple[str, int], ...]], list[Alike]] = {}
    for same, used in found:
        counted = Counter(placement.piece.name for placement in used.placements)
        groups.setdefault((used.sheet.name, tuple(sorted(counted.items()))), []).append(
            (same, used)
        )
    return [
        (sum(same for same, _ in group), min((used for _, used in group), key=_ease))
        for group in groups.values()
    ]


def _ease(used: UsedSheet) -> tuple[int, float]:
    return len(used.cuts), -max((off.area for off in used.off_cuts), default=0.0)
