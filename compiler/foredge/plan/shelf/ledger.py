"""Need against shelf, material by material."""

from __future__ import annotations

import re
from collections.abc import Sequence

from foredge.contract import Build, Ledger, LedgerLine, Problem, Quantity
from foredge.plan.shelf.groups import Group, groups
from foredge.plan.shelf.lines import line_of
from foredge.plan.shelf.problems import ledger_problems
from foredge.plan.shelf.sheets import sheet_lines
from foredge.quantity import bands


def plan_ledger(build: Build) -> tuple[Ledger, list[Problem]]:
    """The stock ledger of all copies: sheets by the cutting plan, the rest by use."""
    found = groups(build)
    needs = _named([group.need(build) for group in found], found)
    placed = list(sheet_lines(build))
    for group, need, band in zip(found, needs, bands(needs), strict=True):
        placed.append((group.claims[0].place, line_of(build, group, need, band)))
    lines: tuple[LedgerLine, ...] = tuple(
        line for _, line in sorted(placed, key=lambda entry: entry[0])
    )
    return Ledger(lines), ledger_problems(build, lines)


def _named(needs: Sequence[Quantity], found: Sequence[Group]) -> list[Quantity]:
    """The needs under names of their own, so that each can be explained."""
    taken: set[str] = set()
    named = []
    for need, group in zip(needs, found, strict=True):
        slug = re.sub(r"[^a-z0-9]+", "-", group.material.lower()).strip("-")
        first = f"stock.{group.stock}" if group.stock else f"unlisted.{slug or 'material'}"
        name, more = f"{first}.need", 2
        while name in taken:
            name, more = f"{first}.need-{more}", more + 1
        taken.add(name)
        named.append(
            need.named(
                name,
                label=f"need of {group.material}",
                rule="what all steps take of it, times the copies",
                source="the steps of this sheet",
            )
        )
    return named
