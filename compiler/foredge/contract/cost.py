"""What the books cost and what the work earns."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Cost:
    """Money of all copies in one currency."""

    currency: str
