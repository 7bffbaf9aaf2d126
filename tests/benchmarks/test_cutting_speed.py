"""Cost of a cutting plan against its size."""

from __future__ import annotations

from typing import Any

import pytest

from foredge.plan.cutting import plan_cuts
from unit.plan.cutting import instances


@pytest.mark.parametrize("items", [10, 40, 160, 640])
def test_different_pieces(benchmark: Any, items: int) -> None:
    sheets, pieces = instances.different(items)
    plan = benchmark.pedantic(plan_cuts, (sheets, pieces), rounds=1)
    assert not plan.unplaced


def test_folios_boards_and_patches_on_twelve_sizes(benchmark: Any) -> None:
    sheets, pieces = instances.folio_case()
    plan = benchmark.pedantic(plan_cuts, (sheets, pieces), rounds=1)
    assert not plan.unplaced
