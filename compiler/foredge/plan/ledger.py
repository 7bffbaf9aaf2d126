"""Need against shelf, material by material."""

from __future__ import annotations

from foredge.contract import Build, Ledger, Problem


def plan_ledger(build: Build) -> tuple[Ledger, list[Problem]]:
    """The stock ledger of all copies."""
    return Ledger(), []
