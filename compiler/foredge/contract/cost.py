"""What the books cost and what the work earns."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from foredge.contract.ledger import LedgerLine
from foredge.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Sum:
    """A sum of money for all copies: ``key`` for programs, ``label`` and ``how`` for people.

    ``amount`` is rounded to the small coin, once; sums of sums are exact.
    """

    key: str
    label: str
    amount: Decimal
    how: str


@dataclass(frozen=True, slots=True)
class MaterialCost:
    """A priced material for all copies.

    ``used`` is its share of a unit's price, ``afresh`` whole units on an empty shelf, ``now``
    the whole units that must be bought. Each comes with the words of how it was computed.
    """

    line: LedgerLine
    used: Sum
    afresh: Sum
    now: Sum | None


@dataclass(frozen=True, slots=True)
class StageHours:
    """Hands-on time of one stage: for one book made alone, and for all copies."""

    stage: str
    title: str
    one: Quantity
    all: Quantity


@dataclass(frozen=True, slots=True)
class Cost:
    """Money of all copies in one currency, and the time it pays.

    ``one`` is the hands-on time of a book made alone, ``all`` that of all copies: operations in
    ``batch`` count once. ``materials`` are those with a price, ``unpriced`` what the others
    are called. ``sums`` add up from the first to the last. ``earned`` is what an hour earns at
    the asked price, with its ends for the longest and the shortest time; None without a price.
    """

    currency: str
    copies: int
    one: Quantity
    all: Quantity
    hours: tuple[StageHours, ...] = ()
    batch: tuple[str, ...] = ()
    materials: tuple[MaterialCost, ...] = ()
    unpriced: tuple[str, ...] = ()
    sums: tuple[Sum, ...] = ()
    earned: tuple[Decimal, Decimal, Decimal] | None = None

    def sum(self, key: str) -> Sum | None:
        """The sum called ``key``, where there is one."""
        return next((one for one in self.sums if one.key == key), None)
