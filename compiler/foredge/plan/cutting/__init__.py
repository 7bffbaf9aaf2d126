"""Cutting plans: pieces from odd stock by edge-to-edge cuts, kerf and spoiled places minded."""

from foredge.plan.cutting.check import CuttingBug, faults
from foredge.plan.cutting.engine import plan_cuts
from foredge.plan.cutting.fit import TooLarge, too_large
from foredge.plan.cutting.model import (
    Cut,
    CutPlan,
    OffCut,
    Part,
    Piece,
    Placement,
    Rect,
    Sheet,
    Unplaced,
    UsedSheet,
)

__all__ = [
    "Cut",
    "CutPlan",
    "CuttingBug",
    "OffCut",
    "Part",
    "Piece",
    "Placement",
    "Rect",
    "Sheet",
    "TooLarge",
    "Unplaced",
    "UsedSheet",
    "faults",
    "plan_cuts",
    "too_large",
]
