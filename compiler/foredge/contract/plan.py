"""What the compiler plans over all stages, read by rules and emitters."""

from __future__ import annotations

from dataclasses import dataclass, field

from foredge.contract.cost import Cost
from foredge.contract.cut_sheets import Cutting
from foredge.contract.ledger import Ledger
from foredge.contract.moisture import Moisture
from foredge.contract.work_plan import WorkPlan


@dataclass(frozen=True, slots=True)
class Plan:
    """``cost`` is None where nothing is priced, ``work`` where there is nothing to schedule."""

    cutting: Cutting = field(default_factory=Cutting)
    ledger: Ledger = field(default_factory=Ledger)
    cost: Cost | None = None
    moisture: Moisture = field(default_factory=Moisture)
    work: WorkPlan | None = None
