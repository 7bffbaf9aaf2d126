"""Which piece is too large for the shelf, and by how much."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from foredge.plan.cutting.job import make_job
from foredge.plan.cutting.model import Piece, Sheet


@dataclass(frozen=True, slots=True)
class TooLarge:
    """A piece no sheet can hold: the nearest sheet, and what it lacks in mm (0 where it does not).

    ``turned`` says the piece comes nearest when turned by 90 degrees. Both shortfalls are 0 when
    only the keep-out zones of the sheet are in the way.
    """

    piece: Piece
    sheet: Sheet | None
    short_width: float
    short_height: float
    turned: bool = False

    def __str__(self) -> str:
        name = f"Piece '{self.piece.name}' ({self.piece.width:g} × {self.piece.height:g} mm)"
        if self.sheet is None:
            return f"{name}: there is no sheet."
        lacks = [
            f"{lack:g} mm in {side}"
            for lack, side in ((self.short_width, "width"), (self.short_height, "height"))
            if lack > 0
        ]
        way = ", even turned" if self.turned else ""
        if not lacks:
            return f"{name} finds no room between the keep-out zones of '{self.sheet.name}'{way}."
        lack = " and ".join(lacks)
        return f"{name} is too large for every sheet: '{self.sheet.name}' lacks {lack}{way}."


def too_large(sheets: Iterable[Sheet], piece: Piece) -> TooLarge | None:
    """None when a sheet can hold the piece, else by how much it is too large for the nearest.

    Sheets with a count of 0 do not count. The nearest sheet lacks the least length in sum.
    """
    sides = [(piece.width, piece.height, False)]
    if piece.turn and piece.width != piece.height:
        sides.append((piece.height, piece.width, True))
    nearest: tuple[float, TooLarge] | None = None
    for sheet in sheets:
        if sheet.count == 0:
            continue
        if not make_job([sheet], [replace(piece, count=1)], 0.0)[1][0]:
            return None
        for width, height, turned in sides:
            lack = max(width - sheet.width, 0.0), max(height - sheet.height, 0.0)
            if nearest is None or sum(lack) < nearest[0]:
                nearest = sum(lack), TooLarge(piece, sheet, *lack, turned)
    return nearest[1] if nearest else TooLarge(piece, None, 0.0, 0.0)
