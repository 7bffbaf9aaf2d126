"""Cost of a cutting plan against its size, and how far it lies above the proven bound."""

from __future__ import annotations

from typing import Any

import pytest

from foredge.plan.cutting import CutPlan, plan_cuts
from foredge.plan.cutting.bounds import least_cost
from foredge.plan.cutting.job import make_job
from unit.plan.cutting import instances


def _excess(task: instances.Task, plan: CutPlan) -> float:
    """Share of area over the bound by dual feasible functions (papers: see ``scales``)."""
    job, _ = make_job(*task, 0.0)
    return plan.area / (least_cost(job) // job.unit / job.scale**2) - 1


@pytest.mark.parametrize("items", [10, 40, 160, 640])
def test_different_pieces(benchmark: Any, items: int) -> None:
    sheets, pieces = instances.different(items)
    plan = benchmark.pedantic(plan_cuts, (sheets, pieces), rounds=1)
    benchmark.extra_info["excess"] = _excess((sheets, pieces), plan)
    assert not plan.unplaced


def test_folios_boards_and_patches_on_twelve_sizes(benchmark: Any) -> None:
    sheets, pieces = instances.folio_case()
    plan = benchmark.pedantic(plan_cuts, (sheets, pieces), rounds=1)
    benchmark.extra_info["excess"] = _excess((sheets, pieces), plan)
    assert not plan.unplaced
