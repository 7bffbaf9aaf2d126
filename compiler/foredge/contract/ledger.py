"""The stock ledger and what must be bought."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.quantity import Quantity


@dataclass(frozen=True, slots=True)
class LedgerLine:
    """One material: what all copies need of it, and what the shelf has.

    ``stock`` is the shelf's item, or None where it is not on the shelf; ``need`` has the
    allowance in it and is of the dimension of ``shelf`` (None: as much as wanted, or not
    listed). ``short`` is what is missing, None where nothing is; ``first`` the operation
    at which it runs out.
    """

    material: str
    stock: str | None
    need: Quantity
    shelf: Quantity | None = None
    short: Quantity | None = None
    first: str = ""


@dataclass(frozen=True, slots=True)
class Ledger:
    """Every material of the book, in the order in which it is first needed."""

    lines: tuple[LedgerLine, ...] = ()
