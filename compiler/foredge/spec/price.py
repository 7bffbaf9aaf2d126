"""The grammar of prices: one exact amount, then a currency of three capital letters."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from foredge.contract.money import THREE_PLACES
from foredge.spec.measure_error import MeasureError, shown
from foredge.spec.number import GAP

EXAMPLE = "4.50 EUR"
_WHOLE = "[0-9]{1,7}"
_CURRENCY = "[A-Z]{3}"
# Three figures after a point are thousands to half of the world, so they are read only where
# the coin itself has three.
_AMOUNT = f"{_WHOLE}(?:\\.(?:[0-9]{{4}}|[0-9]{{1,2}}))?"
_THIRDS = f"{_WHOLE}\\.[0-9]{{3}}{GAP}(?:{'|'.join(THREE_PLACES)})"
_END = r"(?![\s\S])"  # the end of the text, for Python and for ECMA
PRICE_PATTERN = f"^(?:{_AMOUNT}{GAP}{_CURRENCY}|{_THIRDS}){_END}"
"""JSON Schema (ECMA) pattern of exactly the texts :func:`parse_price` accepts."""

_PRICE = re.compile(PRICE_PATTERN)
_SPLIT = re.compile(f"([0-9.]+){GAP}({_CURRENCY})")
_TURNED = re.compile(f"({_CURRENCY}){GAP}({_AMOUNT})")
_SMALL = re.compile(f"({_AMOUNT}){GAP}([A-Za-z]{{3}})")
_BARE = re.compile(_AMOUNT)
_SIGN = re.compile(f"(?:([^\\w\\s.,+-]){GAP}({_AMOUNT})|({_AMOUNT}){GAP}([^\\w\\s.,%+-]))")
_COMMA = re.compile(r"([0-9]{1,7}),([0-9]{1,4})(\D*)")
_GROUPED = re.compile(r"([1-9][0-9]{0,2}(?:[,. '][0-9]{3})+)(?:[.,]([0-9]{1,2}))?(\D*)")
_FINE = re.compile(f"[0-9]+\\.[0-9]{{5,}}{GAP}{_CURRENCY}")
_LARGE = re.compile(f"0*[1-9][0-9]{{7,}}(?:\\.[0-9]*)?{GAP}{_CURRENCY}")
_THOUSANDS = re.compile(f"({_WHOLE})\\.([0-9]{{3}}){GAP}({_CURRENCY})")


@dataclass(frozen=True, slots=True)
class Sum:
    """An amount of money as read."""

    amount: Decimal
    currency: str


def parse_price(text: str) -> Sum | MeasureError:
    """Read ``4.50 EUR``; an error says what to write instead. Never raises on any text.

    The currency is a code of ISO 4217 by its form; which codes there are is not asked.
    """
    found = _SPLIT.fullmatch(text) if _PRICE.match(text) else None
    if found is not None:
        return Sum(Decimal(found[1]), found[2])
    for look in _LOOKS:
        error = look(text)
        if error is not None:
            return error
    return MeasureError(
        f"{shown(text)} is not a price; write an amount and a currency of three capital "
        f"letters, such as {EXAMPLE}",
        "not-a-price",
    )


def _space(text: str) -> MeasureError | None:
    if not text.strip():
        return MeasureError(f"a price is expected here, such as {EXAMPLE}", "not-a-price")
    if text != text.strip():
        return MeasureError(f"take away the space around {shown(text.strip())}", "not-a-price")
    return None


def _negative(text: str) -> MeasureError | None:
    if not re.search(r"(?:^|[A-Za-z\s])[-−–]\s*[0-9]", text):
        return None
    return MeasureError(f"{shown(text)} is negative; a price is never below zero", "price-negative")


def _no_currency(text: str) -> MeasureError | None:
    if not _BARE.fullmatch(text):
        return None
    return MeasureError(
        f"say the currency, as three capital letters: {text} EUR, {text} GBP or {text} USD?",
        "no-currency",
    )


def _turned(text: str) -> MeasureError | None:
    found = _TURNED.fullmatch(text)
    if found is None:
        return None
    return MeasureError(f"{shown(text)}: write {found[2]} {found[1]}", "not-a-price")


def _small(text: str) -> MeasureError | None:
    found = _SMALL.fullmatch(text)
    if found is None:
        return None
    return MeasureError(
        f"{shown(text)}: write the currency in capital letters: {found[1]} {found[2].upper()}",
        "not-a-price",
    )


def _sign(text: str) -> MeasureError | None:
    found = _SIGN.fullmatch(text)
    if found is None:
        return None
    number = found[2] or found[3]
    return MeasureError(
        f"{shown(text)}: a sign may stand for several currencies; write three capital letters, "
        f"such as {number} EUR",
        "not-a-price",
    )


def _comma(text: str) -> MeasureError | None:
    grouped = _GROUPED.fullmatch(text)
    if grouped is not None and not re.fullmatch(r"[0-9]{1,3}\.[0-9]{3}\D*", text):
        plain = re.sub(r"[,. ']", "", grouped[1])
        right = f"{plain}{'.' + grouped[2] if grouped[2] else ''} {_code(grouped[3])}"
        return MeasureError(f"{shown(text)}: write {right}, without a mark between", "comma-price")
    found = _COMMA.fullmatch(text)
    if found is None:
        return None
    return MeasureError(
        f"{shown(text)}: a comma is not read; write {found[1]}.{found[2]} {_code(found[3])}",
        "comma-decimal",
    )


def _code(rest: str) -> str:
    """The currency code in ``rest``, or the usual example."""
    found = re.fullmatch(r"\s*([A-Za-z]{3})\s*", rest)
    return found[1].upper() if found else "EUR"


def _large(text: str) -> MeasureError | None:
    if not _LARGE.fullmatch(text):
        return None
    return MeasureError(f"{shown(text)} is more than any price here may be", "not-a-price")


def _fine(text: str) -> MeasureError | None:
    if not _FINE.fullmatch(text):
        return None
    return MeasureError(
        f"{shown(text)} has too many digits; at most 4 are read after the point", "not-a-price"
    )


def _thousands(text: str) -> MeasureError | None:
    found = _THOUSANDS.fullmatch(text)
    if found is None:
        return None
    whole, rest, currency = found.groups()
    small = f"{whole}.{rest[:2] if rest.endswith('0') else rest + '0'}"
    if whole.startswith("0"):  # no thousands begin with a nought
        return MeasureError(f"{shown(text)}: write {small} {currency}", "not-a-price")
    return MeasureError(
        f"{shown(text)} can be read in two ways; write {small} {currency} or "
        f"{whole}{rest} {currency}",
        "not-a-price",
    )


_LOOKS: tuple[Callable[[str], MeasureError | None], ...] = (
    _space,
    _negative,
    _no_currency,
    _turned,
    _small,
    _sign,
    _comma,
    _thousands,
    _large,
    _fine,
)
