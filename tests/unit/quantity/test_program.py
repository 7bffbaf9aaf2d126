"""Replay: bands against independent references, blanks, depth, travel between processes."""

import math
import pickle
import random

import pytest
from hypothesis import given as having, strategies as st
from uncertainties import ufloat

from foredge.dimension import LENGTH, RATIO
from foredge.quantity import (
    Origin,
    Program,
    Quantity,
    band,
    bands,
    blank,
    ceil,
    choose,
    gate,
    given,
    leaf,
    maximum,
    number,
    opaque,
    pack,
    rounded,
    rounded_up,
    unpack,
)

SPEC = Origin("spec")


def mm(value: float, spread: float = 0.0, name: str = "leaf") -> Quantity:
    return leaf(value, LENGTH, name, SPEC, low=value - spread, high=value + spread)


def test_root_sum_of_squares_against_uncertainties() -> None:
    width, square, joint = mm(150, 0.8), mm(5, 0.1), mm(9.5, 0.5)
    result = band(2 * width + square * 3 - joint)
    reference = 2 * ufloat(150, 0.8) + ufloat(5, 0.1) * 3 - ufloat(9.5, 0.5)
    assert result.high - (2 * 150 + 15 - 9.5) == pytest.approx(reference.std_dev)
    assert (2 * 150 + 15 - 9.5) - result.low == pytest.approx(reference.std_dev)


@having(
    values=st.lists(st.floats(1, 100), min_size=3, max_size=3),
    spreads=st.lists(st.floats(0.001, 0.1), min_size=3, max_size=3),
)
def test_small_bands_agree_with_linear_propagation(values, spreads) -> None:
    """A correlated, nonlinear formula; for small spreads replay is linear propagation."""
    x, y, z = (
        leaf(v, RATIO, "x", SPEC, low=v - s, high=v + s)
        for v, s in zip(values, spreads, strict=True)
    )
    a, b, c = (ufloat(v, s) for v, s in zip(values, spreads, strict=True))
    found = band((x * y + z * x) / (y + z))
    wanted = (a * b + c * a) / (b + c)
    half = (found.high - found.low) / 2
    assert half == pytest.approx(wanted.std_dev, rel=0.02, abs=1e-9)


def test_asymmetric_bands_combine_side_by_side() -> None:
    a = leaf(10, LENGTH, "a", SPEC, low=9, high=14)
    b = leaf(20, LENGTH, "b", SPEC, low=17, high=21)
    found = band(a - b)
    assert found.high == pytest.approx(-10 + math.hypot(4, 3))
    assert found.low == pytest.approx(-10 - math.hypot(1, 1))


def test_against_monte_carlo() -> None:
    """95 % of a normal sample falls in the band of a mildly nonlinear derivation."""
    rng = random.Random(7)
    pages, leaf_mm, thread_mm = 60, (0.11, 0.01), (0.55, 0.06)
    t = leaf(leaf_mm[0], LENGTH, "t", SPEC, low=leaf_mm[0] - leaf_mm[1], high=sum(leaf_mm))
    d = leaf(thread_mm[0], LENGTH, "d", SPEC, low=thread_mm[0] - thread_mm[1], high=sum(thread_mm))
    found = band(pages * t + 10 * d * d / (t * 4))
    sample = sorted(
        pages * x + 10 * y * y / (x * 4)
        for x, y in (
            (rng.gauss(leaf_mm[0], leaf_mm[1] / 1.96), rng.gauss(thread_mm[0], thread_mm[1] / 1.96))
            for _ in range(20_000)
        )
    )
    inside = sum(found.low <= value <= found.high for value in sample) / len(sample)
    assert 0.93 <= inside <= 0.97


def test_shares_add_up_and_lead_with_the_largest() -> None:
    big, small = mm(10, 3, "big"), mm(10, 1, "small")
    shares = band(big + small).shares
    assert [node.name for node, _ in shares] == ["big", "small"]
    assert [part for _, part in shares] == pytest.approx([0.9, 0.1])


def test_the_losing_argument_widens_the_band() -> None:
    """Built-in max(3 mm, 2.99 ± 1.0) would lose its band."""
    found = band(maximum(mm(3), mm(2.99, 1.0)))
    assert (found.low, found.high) == pytest.approx((3, 3.99))


def test_choose_is_replayed_on_both_sides() -> None:
    found = band(choose(mm(5, 1), mm(5.5), mm(10), mm(20)))
    assert (found.low, found.high) == (10, 20)


def test_controls_count_for_gates_but_not_for_the_value() -> None:
    found = band(given(mm(5, 1), mm(3, 2)))
    assert (found.low, found.high) == (4, 6)


def test_bands_are_not_stepped_by_rounding() -> None:
    found = band(rounded(mm(148.4, 0.2), 0.5))
    assert (found.low, found.high) == pytest.approx((148.3, 148.7))


def test_whole_numbers_stay_whole() -> None:
    folios = leaf(4, RATIO, "folios", SPEC, low=3.2, high=5, integer=True)
    assert band(folios * 2).low == 6
    assert band(ceil(number(10) / folios)).high == 4


def test_correlation_cancels() -> None:
    x = mm(10, 2)
    assert band(x - x).exact


def test_a_new_name_is_no_new_error() -> None:
    thickness = mm(10, 2, "cloth.muslin.thickness")
    assert band(thickness - thickness.named("text_block.joint.super")).exact


def test_many_roots_at_once() -> None:
    x, y = mm(10, 2), mm(20, 1)
    together = bands([x + y, x - x, y])
    assert together[0] == band(x + y)
    assert together[1].exact
    assert together[2].high == 21


def test_opaque_is_replayed() -> None:
    found = band(opaque(math.hypot, (mm(3, 0.1), mm(4)), LENGTH))
    assert found.high == pytest.approx(5 + math.hypot(3.1, 4) - 5)


def test_a_blank_is_the_high_end_plus_the_allowance() -> None:
    block = gate(mm(150, 1), None, "G2", "block.width", "block width")
    cut = blank(block + 5 * mm(1), mm(4), 0.5)
    assert cut.value == pytest.approx(160.0)
    assert cut.firm
    assert band(cut).exact


def test_a_blank_does_not_move_when_the_gate_is_read() -> None:
    estimate = mm(150, 1)
    before = blank(gate(estimate, None, "G2", "w", "w"), mm(4), 0.5)
    after = blank(gate(estimate, mm(152.3), "G2", "w", "w"), mm(4), 0.5)
    assert before.value == after.value == 155


def test_a_reading_ends_the_band() -> None:
    width = gate(mm(150, 1), mm(150.6), "G2", "block.width", "block width")
    assert band(width * 2).exact
    assert Program([width], estimates=True).band(width).high == 151


def test_ten_thousand_deep() -> None:
    sum_ = mm(0, 0.5)
    for _ in range(10_000):
        sum_ = sum_ + mm(1)
    assert band(sum_).high == pytest.approx(10_000.5)
    assert pickle.loads(pickle.dumps(sum_)).value == 10_000


def test_travel_keeps_correlation() -> None:
    x = mm(10, 2, "x")
    first, second = unpack(pack([(x * 2).named("a"), (x * 3).named("b")]))
    assert band(first * 3 - second * 2).exact
    assert (first.name, second.name) == ("a", "b")


@having(st.floats(0.1, 500), st.sampled_from([0.5, 25.4 / 32]))
def test_rounding_is_to_the_nearest_step(value, step) -> None:
    near = rounded(mm(value), step).value
    up = rounded_up(mm(value), step).value
    assert abs(near - value) <= step / 2 + 1e-6
    assert -1e-6 <= up - value < step
    assert near / step == pytest.approx(round(near / step))
