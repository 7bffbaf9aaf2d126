"""Prices are exact, and what is no price is told what to write instead."""

import re
from decimal import Decimal

import pytest
from hypothesis import given, strategies as st

from foredge.contract.money import THREE_PLACES, places_of
from foredge.spec.measure import Measure, amount_pattern, parse_amount
from foredge.spec.measure_error import MeasureError
from foredge.spec.price import PRICE_PATTERN, Sum, parse_price

CURRENCIES = st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ", min_size=3, max_size=3)


@pytest.mark.parametrize(
    ("text", "amount", "currency"),
    [
        ("4.50 EUR", "4.50", "EUR"),
        ("4 EUR", "4", "EUR"),
        ("0 EUR", "0", "EUR"),
        ("1250 JPY", "1250", "JPY"),
        ("0.0125 USD", "0.0125", "USD"),
        ("1.250 KWD", "1.250", "KWD"),
        ("4.50EUR", "4.50", "EUR"),
        ("4.50\u202fEUR", "4.50", "EUR"),
    ],
)
def test_prices(text: str, amount: str, currency: str) -> None:
    assert parse_price(text) == Sum(Decimal(amount), currency)


@pytest.mark.parametrize(
    ("text", "rule", "told"),
    [
        ("4,50 EUR", "comma-decimal", "write 4.50 EUR"),
        ("0.001 EUR", "not-a-price", "write 0.0010 EUR"),
        ("99999999.50 EUR", "not-a-price", "more than any price"),
        ("4,50", "comma-decimal", "write 4.50 EUR"),
        ("-4.50 EUR", "price-negative", "never below zero"),
        ("EUR -4", "price-negative", "never below zero"),
        ("\u22124 EUR", "price-negative", "never below zero"),
        ("4.50", "no-currency", "say the currency"),
        ("EUR 4.50", "not-a-price", "write 4.50 EUR"),
        ("4.50 eur", "not-a-price", "capital letters: 4.50 EUR"),
        ("€4.50", "not-a-price", "such as 4.50 EUR"),
        ("4.50 $", "not-a-price", "such as 4.50 EUR"),
        ("1,250.00 USD", "comma-price", "write 1250.00 USD"),
        ("1.250,00 EUR", "comma-price", "write 1250.00 EUR"),
        ("1.250 EUR", "not-a-price", "write 1.25 EUR or 1250 EUR"),
        ("1.255 EUR", "not-a-price", "write 1.2550 EUR or 1255 EUR"),
        ("4.50 EUR ", "not-a-price", "take away the space"),
        ("", "not-a-price", "such as 4.50 EUR"),
        ("nan EUR", "not-a-price", "not a price"),
        ("4.123456 EUR", "not-a-price", "too many digits"),
        ("1e3 EUR", "not-a-price", "not a price"),
        ("٤ EUR", "not-a-price", "not a price"),
        ("4 EUR\n", "not-a-price", "take away the space"),
    ],
)
def test_what_is_no_price(text: str, rule: str, told: str) -> None:
    reading = parse_price(text)
    assert isinstance(reading, MeasureError)
    assert reading.rule == rule
    assert told in reading.text


@given(st.text(max_size=30) | st.from_regex(r"\A[-0-9., EURGBP€]{0,14}\Z"))
def test_no_text_makes_it_fail_and_the_pattern_agrees(text: str) -> None:
    accepted = isinstance(parse_price(text), Sum)
    assert accepted == bool(re.search(PRICE_PATTERN, text))


@given(st.integers(0, 9_999_999), st.integers(0, 99), CURRENCIES)
def test_every_price_is_read_exactly(whole: int, cents: int, currency: str) -> None:
    reading = parse_price(f"{whole}.{cents:02} {currency}")
    assert isinstance(reading, Sum)
    assert reading.amount * 100 == whole * 100 + cents


def test_the_small_coin() -> None:
    assert [places_of(one) for one in ("EUR", "JPY", "KWD")] == [2, 0, 3]
    assert all(places_of(one) == 3 for one in THREE_PLACES)


@pytest.mark.parametrize(
    ("text", "dimension"),
    [("250 ml", "volume"), ("1 kg", "mass"), ("10 m", "length"), ("300 cm2", "area")],
)
def test_amounts(text: str, dimension: str) -> None:
    reading = parse_amount(text)
    assert isinstance(reading, Measure)
    assert reading.dimension == dimension


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("5 h", "wrong-dimension"),
        ("90 g/m2", "wrong-dimension"),
        ("500", "no-unit"),
        ("0 g", "measure-not-positive"),
        ("-3 ml", "measure-negative"),
        ("1,5 l", "comma-decimal"),
        ("12 pots", "unknown-unit"),
    ],
)
def test_what_is_no_amount(text: str, rule: str) -> None:
    reading = parse_amount(text)
    assert isinstance(reading, MeasureError)
    assert reading.rule == rule


@given(st.text(max_size=20) | st.from_regex(r"\A[0-9., mlgk]{0,9}\Z"))
def test_the_pattern_of_amounts_agrees(text: str) -> None:
    accepted = isinstance(parse_amount(text), Measure)
    assert accepted == bool(re.search(amount_pattern(), text))
