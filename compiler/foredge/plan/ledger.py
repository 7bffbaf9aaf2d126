"""Need against shelf, material by material."""

from __future__ import annotations

from foredge.contract import Build, Ledger, LedgerLine, Problem
from foredge.plan.ledger_groups import groups
from foredge.plan.ledger_lines import line_of
from foredge.plan.ledger_problems import ledger_problems
from foredge.plan.ledger_sheets import sheet_lines
from foredge.quantity import bands


def plan_ledger(build: Build) -> tuple[Ledger, list[Problem]]:
    """The stock ledger of all copies: sheets by the cutting plan, the rest by use."""
    found = groups(build)
    needs = [group.need(build) for group in found]
    placed = list(sheet_lines(build))
    for group, need, band in zip(found, needs, bands(needs), strict=True):
        placed.append((group.claims[0].place, line_of(build, group, need, band)))
    lines: tuple[LedgerLine, ...] = tuple(
        line for _, line in sorted(placed, key=lambda entry: entry[0])
    )
    return Ledger(lines), ledger_problems(build, lines)
