"""What is wetted, on which side, and how the pulls on a board balance."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Moisture:
    """The moisture ledger of the book."""
