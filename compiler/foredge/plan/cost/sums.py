"""The sums of the money section: outlay, labour at the maker's wage, what a price leaves."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from foredge.contract import Build, MaterialCost, Purse, Quantity, Sum
from foredge.display import show
from foredge.plan.cost.money import minutes_of, money, ratio, rounded_sum, times, worked
from foredge.quantity import band


def sums(
    build: Build, currency: str, materials: Sequence[MaterialCost], time: Quantity
) -> tuple[Sum, ...]:
    """Every sum that the spec gives the figures for, for all copies."""
    maker = _Maker(build, currency)
    maker.outlay(materials)
    maker.labour(time)
    maker.sale()
    return tuple(maker.found)


def earned(
    figures: Sequence[Sum], currency: str, time: Quantity
) -> tuple[Decimal, Decimal, Decimal] | None:
    """What an hour earns, and its ends for the longest and the shortest time."""
    left = next((one.amount for one in figures if one.key == "left"), None)
    if left is None or time.value <= 0:
        return None
    spread = band(time)
    ends = sorted(_an_hour(left, seconds, currency) for seconds in (spread.low, spread.high))
    return _an_hour(left, time.value, currency), ends[0], ends[-1]


def _an_hour(left: Decimal, seconds: float, currency: str) -> Decimal:
    return rounded_sum(Fraction(left) * 60 / max(minutes_of(seconds), 1), currency)


class _Maker:
    """Adds sums up as the spec gives them; each says how it came about."""

    def __init__(self, build: Build, currency: str) -> None:
        self._copies = int(build.book.copies.value)
        self._system = build.book.display
        self._purse: Purse = build.book.money
        self._currency = currency
        self.found: list[Sum] = []

    def _add(self, key: str, label: str, amount: Decimal, how: str) -> Decimal:
        self.found.append(Sum(key, label, amount, how))
        return amount

    def _amount(self, key: str) -> Decimal:
        return next((one.amount for one in self.found if one.key == key), Decimal(0))

    def _each(self, amount: Decimal) -> str:
        """``3 × 4.00 EUR``."""
        told = money(amount, self._currency)
        return "as the spec says" if self._copies == 1 else f"{self._copies} × {told}"

    def outlay(self, materials: Sequence[MaterialCost]) -> None:
        """Materials by share, and what else is paid."""
        purse = self._purse
        parts = []
        if materials:
            used = sum((one.used.amount for one in materials), Decimal(0))
            parts.append(self._add("materials", "materials, by the share used", used,
                                   "the sum of the table above"))  # fmt: skip
        if purse.per_book is not None:
            parts.append(self._add("per_book", "what else each book costs",
                                   times(purse.per_book, Fraction(self._copies)),
                                   self._each(purse.per_book.amount)))  # fmt: skip
        if purse.once is not None:
            parts.append(self._add("once", "paid once", times(purse.once, Fraction(1)),
                                   "as the spec says"))  # fmt: skip
        if parts:
            self._add("outlay", "laid out", sum(parts, Decimal(0)), "the sum of these")

    def labour(self, time: Quantity) -> None:
        """The hours at the maker's own wage."""
        wage = self._purse.wage
        if wage is None:
            return
        paid = self._add("labour", "your work, at your own wage",
                         times(wage, Fraction(minutes_of(time.value), 60)),
                         f"{worked(time.value)} at {money(wage.amount, self._currency)} an hour"
                         )  # fmt: skip
        both = self._add("cost", "laid out, and your work", self._amount("outlay") + paid,
                         "the sum of both")  # fmt: skip
        keeps = 1 - self._fee_share()
        pays = rounded_sum(Fraction(both) / keeps / self._copies, self._currency)
        how = "what is laid out and your work" + (
            f" over {self._copies}" if self._copies > 1 else ""
        )
        if self._purse.fees is not None:
            how += f", over what is left of the price after {show(self._purse.fees)} of fees"
        self._add("pays", "a price for one book that pays your wage", pays, how)

    def _fee_share(self) -> Fraction:
        fees = self._purse.fees
        return Fraction(0) if fees is None else ratio(fees.value, 1.0)

    def sale(self) -> None:
        """What the asked price brings, and what it leaves for the work."""
        asked = self._purse.asked
        if asked is None:
            return
        brings = self._add("asked", "asked", times(asked, Fraction(self._copies)),
                           self._each(asked.amount))  # fmt: skip
        taken = Decimal(0)
        if self._purse.fees is not None:
            fees = rounded_sum(Fraction(brings) * self._fee_share(), self._currency)
            taken = self._add("fees", "fees", fees, f"{show(self._purse.fees)} of what is asked")
        self._add("left", "left for your work", brings - taken - self._amount("outlay"),
                  "asked, less " + ("fees and " if taken else "") + "what is laid out"
                  )  # fmt: skip
