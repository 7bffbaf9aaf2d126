"""How large a relief may be, so that no spec starts a run of minutes."""

from __future__ import annotations

from foredge.contract.solid_report import SolidError
from foredge.contract.solids import MOST_CORNERS, MOST_PIECES, Slab, Tube
from foredge.solids.plain import Relief
from foredge.solids.whole import Clay

THICKEST_MM = 100.0


def refuse(relief: Relief, clay: Clay) -> None:
    """Raises :class:`SolidError` where there is too much of it, or clay that cannot be."""
    pieces = [piece for shape in relief for piece in shape.pieces]
    if len(pieces) > MOST_PIECES:
        raise SolidError(f"{len(pieces)} solids on one panel; at most {MOST_PIECES} can be")
    corners = 0
    for piece in pieces:
        match piece.solid:
            case Slab(outline=points):
                corners += len(points)
            case Tube(points=balls):
                corners += len(balls)
    if corners > MOST_CORNERS:
        raise SolidError(f"{corners} corners and points on one panel; at most {MOST_CORNERS}")
    if any(piece.lift < 0 for piece in pieces):
        raise SolidError("a part cannot stand below the board's face")
    if not 0 < clay.skin <= THICKEST_MM:
        raise SolidError(f"a skin of {clay.skin:g} mm; it must be above 0, at most {THICKEST_MM:g}")
    if not 0 <= clay.shrinkage < 0.5:
        raise SolidError(f"a shrinkage of {clay.shrinkage:g}; it must be a share below one half")
    if not 0 < clay.rim <= 1:
        raise SolidError(f"a rim of {clay.rim:g}; it is a share of the inset's height")
