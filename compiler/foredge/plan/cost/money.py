"""Exact money: an amount times a price, rounded once to the small coin."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from foredge.contract import Price, places_of
from foredge.display_number import exact, half_up


def rounded_sum(amount: Fraction, currency: str) -> Decimal:
    """``amount`` to the small coin of ``currency``, half up."""
    coin = Decimal(1).scaleb(-places_of(currency))
    whole = Decimal(amount.numerator) / Decimal(amount.denominator)
    return whole.quantize(coin, ROUND_HALF_UP)


def times(price: Price, how_many: Fraction) -> Decimal:
    """``how_many`` units at ``price``."""
    return rounded_sum(Fraction(price.amount) * how_many, price.currency)


def ratio(value: float, unit: float) -> Fraction:
    """``value`` over ``unit``, without the noise of their last bits."""
    above, below = exact(value), exact(unit)
    return above / below if above is not None and below else Fraction(0)


def money(amount: Decimal, currency: str) -> str:
    """``12.50 EUR``; always with the decimals of its currency."""
    return f"{amount:.{places_of(currency)}f} {currency}"


def whole_units(price: Price, units: int) -> Decimal:
    """Whole buying units at ``price``."""
    return times(price, Fraction(units))


def minutes_of(seconds: float) -> int:
    """Hands-on time in whole minutes, as it is told and paid."""
    return int(half_up(exact(seconds / 60) or Fraction(0), Fraction(1)))


def worked(seconds: float) -> str:
    """Hands-on time, in hours however many: ``49 h 56 min``."""
    whole, rest = divmod(minutes_of(seconds), 60)
    return " ".join(
        part
        for part in (f"{whole} h" if whole else "", f"{rest} min" if rest or not whole else "")
        if part
    )
