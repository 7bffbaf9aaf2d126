"""Money is exact: a book computed by hand, and what must hold of any."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, strategies as st

from demo import registry
from foredge.compile import compile_spec
from foredge.contract import Price
from foredge.emit.money import cost_view
from foredge.plan.cost.money import money, ratio, rounded_sum, times, worked
from foredge.testing import diagnostics_of
from money_books import PLAIN, build_with, compiled_with, cost, line, rules

PRICED: dict[str, Any] = {
    "paper": {"price": "0.35 EUR"},
    "thread": {"price": "3.20 EUR", "sold_by": "10 m"},
}


def amount(build: Any, key: str) -> Decimal:
    found = cost(build).sum(key)
    assert found is not None, key
    return found.amount


def test_a_book_computed_by_hand(tmp_path: Path) -> None:
    """24 folios of 280 × 196 mm, four out of a sheet of 420 × 594 mm: six sheets at 0.35."""
    purse = {"wage": "12.00 EUR", "asked": "60.00 EUR", "fees": "12 %", "per_book": "2.00 EUR",
             "once": "15 EUR"}  # fmt: skip
    build = build_with(tmp_path, PRICED, money=purse)
    paper = line(build, "paper").need.value
    thread = Fraction(round(line(build, "thread").need.value * 10**6), 10**6)
    by_hand = (
        round(Decimal("0.35") * int(paper), 2)
        + Decimal(round(Fraction("3.20") * thread / 10000 * 100)) / 100
    )
    assert amount(build, "materials") == by_hand
    assert amount(build, "outlay") == by_hand + 2 + 15
    assert amount(build, "fees") == Decimal("7.20")
    assert amount(build, "left") == 60 - Decimal("7.20") - amount(build, "outlay")
    seconds = sum(one.hands_on.value for one in build.order)
    assert cost(build).one.value == pytest.approx(seconds)
    minutes = round(seconds / 60)  # the time is paid as it is told
    assert amount(build, "labour") == round(Decimal(minutes) / 60 * 12, 2)
    assert amount(build, "cost") == amount(build, "outlay") + amount(build, "labour")
    assert amount(build, "pays") == round(amount(build, "cost") / Decimal("0.88"), 2)
    earned = cost(build).earned
    assert earned is not None
    assert earned[0] == round(amount(build, "left") * 60 / minutes, 2)
    assert earned[1] <= earned[0] <= earned[2]


def test_whole_units_and_what_must_be_bought_now(tmp_path: Path) -> None:
    build = build_with(tmp_path, {**PRICED, "thread": {**PRICED["thread"], "length": "1 m"}})
    by_name = {one.line.material: one for one in cost(build).materials}
    assert by_name["thread"].afresh.amount == Decimal("3.20")
    assert by_name["thread"].now is not None and by_name["thread"].now.amount == Decimal("3.20")
    assert by_name["paper"].now is None
    assert by_name["thread"].used.amount < Decimal("1.00")


def test_copies_scale_everything_but_what_is_done_once(tmp_path: Path) -> None:
    purse = {"per_book": "2.00 EUR", "once": "15 EUR", "wage": "12.00 EUR"}
    one, many = (build_with(tmp_path, PRICED, money=purse, copies=n) for n in (1, 5))
    assert amount(many, "per_book") == 5 * amount(one, "per_book")
    assert amount(many, "once") == amount(one, "once")
    batch = sum(op.hands_on.value for op in many.order if op.batch)
    assert batch > 0
    assert cost(many).one.value == pytest.approx(cost(one).one.value)
    assert cost(many).all.value == pytest.approx(5 * cost(one).all.value - 4 * batch)
    assert sum(h.all.value for h in cost(many).hours) == pytest.approx(cost(many).all.value)


def test_a_slower_hand_takes_longer(tmp_path: Path) -> None:
    usual = build_with(tmp_path, PRICED)
    slow = build_with(tmp_path, PRICED, bench={"slower": "150 %"})
    assert cost(slow).all.value == pytest.approx(1.5 * cost(usual).all.value)


def test_nothing_priced_nothing_told(tmp_path: Path) -> None:
    assert build_with(tmp_path).plan.cost is None


def test_a_price_that_loses_money_is_a_warning(tmp_path: Path) -> None:
    low = compiled_with(tmp_path, PRICED, money={"asked": "2.00 EUR"})
    assert rules(low) == ["asked-below-cost"]
    assert rules(compiled_with(tmp_path, PRICED, money={"asked": "20.00 EUR"})) == []


def test_mixed_currencies_are_one_error_that_names_both() -> None:
    text = (
        PLAIN.read_text("utf-8")
        .replace("material: book}", "material: book, price: 1 GBP}")
        .replace("size: 60/3,", "size: 60/3, price: 3 EUR, sold_by: 10 m,")
    )
    (told,) = diagnostics_of(text)
    assert "stock.thread.price is in EUR and stock.paper.price in GBP" in told
    assert "[currencies-mixed]" in told


@given(st.decimals(0, 9999, places=2), st.integers(0, 10**6), st.integers(1, 10**6))
def test_a_sum_is_rounded_once_and_half_up(price: Decimal, need: int, unit: int) -> None:
    paid = times(Price(price, "EUR", (), ""), Fraction(need, unit))
    exact = Fraction(price) * need / unit
    assert abs(Fraction(paid) - exact) <= Fraction(1, 200)
    assert paid == rounded_sum(exact, "EUR") and paid.as_tuple().exponent == -2


@given(st.integers(1, 1000), st.decimals(0, 999, places=2))
def test_whole_units_cost_exactly(units: int, price: Decimal) -> None:
    assert times(Price(price, "EUR", (), ""), Fraction(units)) == units * price


def test_the_ends_of_rounding() -> None:
    assert rounded_sum(Fraction("0.005"), "EUR") == Decimal("0.01")
    assert rounded_sum(Fraction("0.5"), "JPY") == Decimal(1)
    assert rounded_sum(Fraction("0.0005"), "KWD") == Decimal("0.001")
    assert money(Decimal("12.5"), "EUR") == "12.50 EUR"
    assert ratio(0.1 + 0.2, 0.3) == 1
    assert [worked(s) for s in (0, 59, 3600, 180000)] == ["0 min", "1 min", "1 h", "50 h"]


def test_work_that_is_paid_for_by_its_maker_earns_nothing_not_less() -> None:
    spec = Path(__file__).parents[3] / "specs-valid" / "asked-below-cost.yaml"
    build = compile_spec(str(spec), registry()).build
    assert build is not None
    view = cost_view(build)
    assert view is not None
    assert "earns nothing" in view.earned
    assert "-" not in view.earned
