"""Prices, and what the maker says of money: the spec's ``money``.

Money is exact: decimals, never binary fractions, rounded once where a sum is told.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

import msgspec
from msgspec import Meta

from foredge.contract.measures import Ratio
from foredge.problem import Path

NO_PLACES = ("CLP", "ISK", "JPY", "KRW", "PYG", "UGX", "VND", "XAF", "XOF")
"""Currencies without a smaller coin (ISO 4217, from memory)."""

THREE_PLACES = ("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND")
"""Currencies of a thousand small coins (ISO 4217, from memory); all others have a hundred."""


def places_of(currency: str) -> int:
    """Decimals that a sum in ``currency`` is told with."""
    return 0 if currency in NO_PLACES else 3 if currency in THREE_PLACES else 2


class Price:
    """So much money in one currency, as the spec says it at ``path``.

    ``amount`` is exact and never below zero; ``currency`` three capital letters (ISO 4217).
    No dataclass, so that msgspec takes it for a type of our own and not for a mapping.
    """

    __slots__ = ("amount", "currency", "path", "text")

    def __init__(self, amount: Decimal, currency: str, path: Path, text: str) -> None:
        self.amount = amount
        self.currency = currency
        self.path = path
        self.text = text

    def __repr__(self) -> str:
        return f"<price {self.amount} {self.currency}>"


Money = Annotated[Price, Meta(extra_json_schema={"type": "string", "x-foredge-price": True})]
"""A price such as ``4.50 EUR``."""


class Purse(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What the work is to earn, and what it costs beside materials: the maker's own figures."""

    wage: (
        Annotated[Money, Meta(description="What an hour of your work is worth to you: 12.00 EUR.")]
        | None
    ) = None
    asked: Annotated[Money, Meta(description="What you ask for one book.")] | None = None
    fees: (
        Annotated[
            Ratio, Meta(description="Share of the asked price that a shop or a card takes: 12 %.")
        ]
        | None
    ) = None
    per_book: (
        Annotated[Money, Meta(description="What else each book costs: its box, the postage.")]
        | None
    ) = None
    once: (
        Annotated[
            Money, Meta(description="What is paid once for all copies: a stall, a room, a tool.")
        ]
        | None
    ) = None

    def prices(self) -> tuple[Price, ...]:
        """Every sum of money in it."""
        said = (self.wage, self.asked, self.per_book, self.once)
        return tuple(price for price in said if price is not None)
