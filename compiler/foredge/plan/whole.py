"""The plan over all stages: sheets cut up, stock, money, water and time."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract import Build, Problem
from foredge.plan.cost.cost import plan_cost
from foredge.plan.evenings.plan import plan_work
from foredge.plan.sheets.cutting import plan_cutting
from foredge.plan.shelf.ledger import plan_ledger
from foredge.plan.water.moisture import plan_moisture


def plan_whole(build: Build) -> tuple[Build, list[Problem]]:
    """``build`` with its plan, and what is wrong with it. Each step reads the ones before."""
    cutting, cut = plan_cutting(build)
    build = replace(build, plan=replace(build.plan, cutting=cutting))
    ledger, short = plan_ledger(build)
    known = {**build.bands, **ledger.bands}
    build = replace(build, plan=replace(build.plan, ledger=ledger), bands=known)
    moisture, wet = plan_moisture(build)
    build = replace(build, plan=replace(build.plan, moisture=moisture))
    work, late = plan_work(build)
    build = replace(build, plan=replace(build.plan, work=work))
    cost, dear = plan_cost(build)
    build = replace(build, plan=replace(build.plan, cost=cost))
    return build, [*cut, *short, *wet, *late, *dear]
