"""The cutting plan of a book: which sheet gives which pieces, and what is left of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from foredge.plan.cutting.model import UsedSheet


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One way to cut up a sheet, and how many sheets are cut so.

    ``name`` is its key (``chart-paper-1``), ``stock`` the item, ``size`` the place of its size
    in the item (0 its own, then ``more``). ``layout`` is in mm. ``same`` sheets are cut alike;
    ``bought`` of them are not on the shelf. ``of`` names the sheet whose off-cut this is:
    empty for a whole sheet. ``gates`` must be measured before it is cut. ``folded_on_crease``
    says that the pieces lie with their fold on the sheet's crease.
    """

    name: str
    stock: str
    size: int
    layout: UsedSheet
    same: int = 1
    bought: int = 0
    of: str = ""
    gates: frozenset[str] = frozenset()
    folded_on_crease: bool = False


@dataclass(frozen=True, slots=True)
class SheetNeed:
    """How many sheets of one size of a stock item are cut up, for all copies.

    ``shelf`` is how many there are (None: as many as wanted), ``buy`` how many are missing.
    ``first`` is the piece that finds no sheet first, empty where nothing is missing.
    ``for_money`` says that the stock was laid out for the least money, not the least area;
    ``each`` is what one sheet costs, None without a price; ``paid`` is the money for those that
    must be had, in whole lots. ``cheapest_of`` is how many sizes were weighed by their prices
    for what is bought of this one; 0 where there was no choice.
    """

    stock: str
    size: int
    width_mm: float
    height_mm: float
    used: int
    shelf: int | None
    buy: int = 0
    first: str = ""
    for_money: bool = False
    each: Fraction | None = None
    paid: Fraction = Fraction(0)
    cheapest_of: int = 0

    @property
    def area_mm2(self) -> float:
        """Of all sheets that are used."""
        return self.used * self.width_mm * self.height_mm


@dataclass(frozen=True, slots=True)
class Homeless:
    """``count`` of ``piece`` that no sheet of ``stock``, however many, has room for."""

    stock: str
    piece: str
    count: int


@dataclass(frozen=True, slots=True)
class Cutting:
    """All sheets in the order in which they are cut, and what they add up to."""

    sheets: tuple[CutSheet, ...] = ()
    needs: tuple[SheetNeed, ...] = ()
    homeless: tuple[Homeless, ...] = ()
