"""The public face: plain values in, a checked cutting plan out."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable

from foredge.plan.cutting.check import ensure
from foredge.plan.cutting.job import make_job
from foredge.plan.cutting.layout import lay_out
from foredge.plan.cutting.model import CutPlan, Piece, Sheet, Unplaced
from foredge.plan.cutting.solve import solve


def plan_cuts(
    sheets: Iterable[Sheet],
    pieces: Iterable[Piece],
    *,
    kerf: float = 0.0,
    seed: int = 0,
    effort: float = 1.0,
    min_off_cut: float = 0.0,
) -> CutPlan:
    """Cut the pieces from the sheets by edge-to-edge cuts; all lengths in mm.

    As many pieces as possible are placed. Then the total area of the used sheets is kept small
    (their total price when every sheet is priced), then their number, then the largest single
    off-cut is made large. Each cut loses ``kerf``. ``effort`` scales the bounded search; the same
    arguments give the same plan. Off-cuts narrower than ``min_off_cut`` count as waste.

    Raises ValueError for a kerf, effort or off-cut size that cannot be.
    """
    for name, value in (("kerf", kerf), ("effort", effort), ("smallest off-cut", min_off_cut)):
        if not (math.isfinite(value) and value >= 0):
            raise ValueError(f"The {name} is {value}; it must be 0 or more.")
    shelf, wanted = list(sheets), list(pieces)
    job, homeless = make_job(shelf, wanted, kerf)
    found = solve(job, seed, effort)
    missing = Counter(job.piece[item] for item in found.left)
    plan = CutPlan(
        used=[lay_out(job, bin_, shelf[bin_.stock], wanted, min_off_cut) for bin_ in found.bins],
        unplaced=[
            Unplaced(piece, missing[index] + homeless[index])
            for index, piece in enumerate(wanted)
            if missing[index] + homeless[index]
        ],
        proven=not found.left and found.cost // job.unit <= found.bound // job.unit,
    )
    return ensure(plan, shelf, wanted, kerf)
