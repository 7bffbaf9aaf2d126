"""The work in time: when what is done, and what dries meanwhile."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class WorkPlan:
    """The schedule of the book, evening by evening."""
