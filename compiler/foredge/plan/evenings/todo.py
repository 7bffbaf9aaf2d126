"""What is left to do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from foredge.contract import Book, Operation
from foredge.plan.evenings.done import Begun


@dataclass(frozen=True, slots=True)
class Work:
    """What is to be planned."""

    book: Book
    order: tuple[Operation, ...]
    before: Mapping[str, set[str]]
    begun: Begun

    @property
    def todo(self) -> tuple[Operation, ...]:
        """Operations that are still to be done, in order."""
        return tuple(one for one in self.order if one.id not in self.begun.over)
