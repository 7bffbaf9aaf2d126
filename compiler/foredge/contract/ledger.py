"""The stock ledger and what must be bought."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract.money import Price
from foredge.quantity import Band, Quantity


@dataclass(frozen=True, slots=True)
class Purchase:
    """What is bought of one material for all copies.

    ``amount`` is what is needed of it. ``units`` whole ones of ``unit`` are bought, each for
    ``price``: both None where the spec does not say how it is sold, ``price`` None where it
    says no price. ``in_one``: the units must come in one length.
    """

    amount: Quantity
    units: int | None = None
    unit: Quantity | None = None
    price: Price | None = None
    in_one: bool = False


@dataclass(frozen=True, slots=True)
class LedgerLine:
    """One material: what all copies need of it, and what the shelf has.

    ``stock`` is the shelf's item, or None where it is not on the shelf; ``material`` what the
    sheet calls it, ``size`` the place of a sheet's size in the item. ``need`` has the allowance
    in it, ``band`` is its 95 % range. It is of the dimension of ``shelf``, which is None where
    there is as much as wanted, where it is to be bought, and where it is not listed; sheets are
    counted. ``most`` is the high end, less what finished operations have used up: this is held
    against the shelf. ``short`` is what is missing, None where nothing is, ``pieces_short``
    the pieces in words; ``first`` the operation at which it runs out. ``steps`` are the
    operations that use it. ``from_off_cuts``: the shelf is the off-cuts of the text block.
    ``buy`` is what must be bought, None where nothing is; ``afresh`` what would be bought were
    the shelf empty.
    ``cheapest_of``: so many sizes were weighed by their prices for what is bought of this one.
    ``unclear`` says why need and shelf cannot be compared.
    """

    material: str
    stock: str | None
    need: Quantity
    band: Band
    most: Quantity
    shelf: Quantity | None = None
    short: Quantity | None = None
    first: str = ""
    size: int = 0
    steps: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    pieces_short: str = ""
    from_off_cuts: bool = False
    buy: Purchase | None = None
    afresh: Purchase | None = None
    cheapest_of: int = 0
    unclear: str = ""


@dataclass(frozen=True, slots=True)
class Ledger:
    """Every material of the book, in the order in which it is first needed."""

    lines: tuple[LedgerLine, ...] = ()

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """What is needed, by name (``stock.white-glue.need``); sheets are counted, not computed."""
        return tuple(line.need for line in self.lines if line.need.op != "leaf")

    @property
    def bands(self) -> dict[str, Band]:
        """The 95 % range of each of :attr:`quantities`."""
        return {line.need.name or "": line.band for line in self.lines if line.need.op != "leaf"}

    @property
    def shopping(self) -> tuple[LedgerLine, ...]:
        """Those of which something must be bought."""
        return tuple(line for line in self.lines if line.buy is not None)
