"""The cutting engine on the published classes of two-dimensional bin packing.

Definitions (the drawings are ours, from fixed seeds, see ``instances``):
J. O. Berkey and P. Y. Wang, "Two-dimensional finite bin-packing algorithms", Journal of the
Operational Research Society 38 (1987), pp. 423-429, classes 1 to 6; S. Martello and D. Vigo,
"Exact solution of the two-dimensional finite bin packing problem", Management Science 44 (1998),
pp. 388-399, classes 7 to 10. What is not at the lower bound is not proven to be above the optimum.
"""

from __future__ import annotations

import pytest

from foredge.plan.cutting import plan_cuts
from foredge.plan.cutting.bounds import least_cost
from foredge.plan.cutting.job import make_job
from unit.plan.cutting import instances


def _excess(task: instances.Task, seed: int = 0) -> float:
    """Used area over the lower bound, less one."""
    sheets, pieces = task
    plan = plan_cuts(sheets, pieces, seed=seed, effort=0.5)
    assert not plan.unplaced
    job, _ = make_job(sheets, pieces, 0.0)
    return plan.area / (least_cost(job) // job.unit) - 1


@pytest.mark.parametrize("turn", [False, True])
def test_equal_sheets_stay_near_the_lower_bound(turn: bool) -> None:
    tasks = [instances.classical(g, n, 0, turn=turn) for g in range(1, 11) for n in (20, 60)]
    excess = [_excess(task) for task in tasks]
    assert sum(excess) / len(excess) <= 0.06
    assert sum(value < 1e-9 for value in excess) >= len(excess) // 2


def test_planted_remnants_stay_near_the_known_optimum() -> None:
    excess = []
    for number in range(8):
        sheets, pieces = instances.planted_remnants(number, 5 + number % 3, 5, 6, turn=True)
        planted = sum(piece.width * piece.height for piece in pieces)
        excess.append(plan_cuts(sheets, pieces).area / planted - 1)
    assert sum(excess) / len(excess) <= 0.12


def test_planted_mixed_sheets_stay_near_the_known_optimum() -> None:
    excess = []
    for number in range(6):
        sheets, pieces = instances.planted_mixed(number, 4, 8, 5, turn=True)
        planted = sum(piece.width * piece.height for piece in pieces)
        excess.append(plan_cuts(sheets, pieces).area / planted - 1)
    assert sum(excess) / len(excess) <= 0.10
