"""Water brought to the book, and the pulls on its boards."""

from __future__ import annotations

from foredge.contract import Build, Moisture, Problem


def plan_moisture(build: Build) -> tuple[Moisture, list[Problem]]:
    """The moisture ledger."""
    return Moisture(), []
