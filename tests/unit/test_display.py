import math
from fractions import Fraction

import pytest
from hypothesis import given, settings, strategies as st

from foredge.dimension import (
    AREA,
    DENSITY,
    GRAMMAGE,
    LENGTH,
    LINEAR_DENSITY,
    MASS,
    RATIO,
    TIME,
    VOLUME,
    Dimension,
)
from foredge.display import duration, show, show_length, show_size
from foredge.display_imperial import fraction
from foredge.quantity import Band, Origin, Quantity, ceil, leaf, number, rounded, rounded_up


def q(value: float, dimension: Dimension = LENGTH, text: str = "") -> Quantity:
    return leaf(value, dimension, "x", Origin("spec", ("x",), text))


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (149.0, "149 mm"),
        (148.5, "148.5 mm"),
        (148.04, "148 mm"),
        (148.06, "148.1 mm"),
        (3.15, "3.15 mm"),
        (0.12, "0.12 mm"),
        (0.1249, "0.12 mm"),
        (0.0634, "0.063 mm"),
        (0.0, "0 mm"),
        (-0.0, "0 mm"),
        (-0.04e-9, "0 mm"),
        (-12.25, "-12.3 mm"),
        (1499.9, "1499.9 mm"),
        (1500.0, "1.5 m"),
        (12_345.0, "12.3 m"),
        (123_456.0, "123 m"),
        (float("nan"), "unknown"),
        (float("inf"), "unknown"),
    ],
)
def test_metric_lengths(value: float, text: str) -> None:
    assert show(q(value)) == text


@pytest.mark.parametrize(
    ("value", "dimension", "text"),
    [
        (0.354, MASS, "0.35 g"),
        (48.26, MASS, "48.3 g"),
        (1234.0, MASS, "1.23 kg"),
        (12_345.0, AREA, "123 cm²"),
        (1_250_000.0, AREA, "1.25 m²"),
        (82_000.0, VOLUME, "82 ml"),
        (1_200_000.0, VOLUME, "1.2 l"),
        (90e-6, GRAMMAGE, "90 g/m²"),
        (0.0011, DENSITY, "1.1 g/cm³"),
        (198.4218e-6, LINEAR_DENSITY, "198 tex"),
        (1300.0, Dimension(3, -1, 0), "1.3 cm³/g"),
        (2500.0, Dimension(1, 1, 0), "2500 g·mm"),
    ],
)
def test_other_metric_dimensions(value: float, dimension: Dimension, text: str) -> None:
    assert show(q(value, dimension)) == text


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (0, "0 min"),
        (29.6, "30 s"),
        (59.7, "1 min"),
        (1200, "20 min"),
        (5400, "1 h 30 min"),
        (12 * 3600, "12 h"),
        (3599.9, "1 h"),
        (36 * 3600, "36 h"),
        (48 * 3600, "2 days"),
        (60 * 3600, "2 days 12 h"),
    ],
)
def test_durations(seconds: float, text: str) -> None:
    assert duration(seconds) == text
    assert show(q(seconds, TIME), "imperial") == text


@pytest.mark.parametrize(
    ("inch", "text"),
    [
        ("5.875", "5 7/8 in"),
        ("8.4375", "8 7/16 in"),
        ("5.90625", "5 29/32 in"),  # on the grid of 1/32: a rounded piece
        ("5.9", "5 7/8 in"),  # beside it: to 1/16
        ("12", "12 in"),
        ("40", "40 in"),
        ("0.5", "1/2 in"),
        ("0.0123", "0.012 in"),
        ("0", "0 in"),
        ("0.03125", "1/32 in"),
    ],
)
def test_inches(inch: str, text: str) -> None:
    assert show(q(float(Fraction(inch) * Fraction("25.4"))), "imperial") == text


def test_inches_never_become_feet_and_never_lose_a_whole() -> None:
    assert fraction(Fraction("11.99"), 16) == "12"
    assert show(q(24 * 25.4), "imperial") == "24 in"


def test_other_imperial() -> None:
    # Factors: NIST SP 811 (2008), B.8; Handbook 44, appendix C.
    assert show(q(28.349523125, MASS), "imperial") == "1 oz"
    assert show(q(453.59237, MASS), "imperial") == "1 lb"
    assert show(q(236_588.2365, VOLUME), "imperial") == "8 fl oz"
    assert show(q(645.16, AREA), "imperial") == "1 sq in"
    assert show(q(0.0011, DENSITY), "imperial") == "1.1 g/cm³"


def test_both_systems() -> None:
    assert show_size(q(149.0), q(215.0), "both") == "149 × 215 mm (5 7/8 × 8 7/16 in)"
    assert show(q(149.0), "both") == "149 mm (5 7/8 in)"
    assert (
        show(q(148.5), "both", Band(147.7, 149.4))
        == "148.5 mm (147.7 to 149.4), 5 7/8 in (5 13/16 to 5 7/8)"
    )


def test_bands() -> None:
    assert show(q(148.5), "metric", Band(147.7, 149.4)) == "148.5 mm (147.7 to 149.4)"
    assert show(q(12.0), "metric", Band(12.0, 12.0)) == "12 mm"
    assert show(q(12.0), "metric", Band(11.999, 12.001)) == "12 mm"
    assert show(q(4.03), "metric", Band(2.88, 5.27)) == "4.03 mm (2.9 to 5.3)"
    assert show(q(0.35), "metric", Band(0.31, 0.41)) == "0.35 mm (0.31 to 0.41)"
    assert show(q(5400, TIME), "metric", Band(3600, 7200)) == "1 h 30 min (1 h to 2 h)"


def test_plain_numbers() -> None:
    assert show(q(12, RATIO)) == "12"
    assert show(q(0.15, RATIO)) == "15 %"
    assert show(q(1.5, RATIO, "150 %")) == "150 %"
    assert show(q(1.1, RATIO)) == "1.1"
    assert show(number(0.5)) == "0.5"
    assert show(q(30, RATIO, "30 deg")) == "30°"
    assert show(q(20, RATIO, "68 degF")) == "20 °C"
    assert show(ceil(q(11.2, RATIO)), "metric", Band(11.2, 13.6)) == "12 (11 to 14)"


@settings(max_examples=300)
@given(st.floats(1, 1499), st.sampled_from([rounded, rounded_up]))
def test_a_size_on_the_metric_grid_is_shown_as_it_is(value: float, step: object) -> None:
    size = step(q(value), 0.5)  # type: ignore[operator]
    assert float(show(size).removesuffix(" mm")) == size.value


@settings(max_examples=300)
@given(st.floats(1, 1499))
def test_a_size_on_the_grid_of_inches_is_shown_as_it_is(value: float) -> None:
    size = rounded(q(value), 25.4 / 32)
    words = show(size, "imperial").removesuffix(" in").split()
    shown = sum(Fraction(word) for word in words)
    assert shown == Fraction(round(size.value / 25.4 * 32), 32)


@given(st.floats(-1e7, 1e7), st.sampled_from([LENGTH, MASS, TIME, RATIO, VOLUME]))
def test_never_a_negative_zero(value: float, dimension: Dimension) -> None:
    if dimension == TIME:
        value = abs(value)
    for system in ("metric", "imperial", "both"):
        words = show(q(value, dimension), system).replace("(", "").split()
        assert not {"-0", "-0.0", "-0°"} & set(words)


@pytest.mark.parametrize(
    ("mm", "system", "told"),
    [
        (22, "metric", "22 mm"),
        (9.525, "metric", "9.53 mm"),
        (22.225, "imperial", "7/8 in"),
        (22.225, "both", "22.2 mm (7/8 in)"),
        (149.225, "imperial", "5 7/8 in"),
        (0.3, "imperial", "0.012 in"),
        (math.nan, "both", "unknown"),
    ],
)
def test_a_length_on_a_drawing(mm: float, system: str, told: str) -> None:
    assert show_length(mm, system) == told
    assert show_length(leaf(mm, LENGTH, "x", Origin("constant")), system) == told


@pytest.mark.parametrize(
    ("value", "low", "high", "dimension", "text"),
    [
        (5264.0, 3900.0, 6800.0, VOLUME, "5.3 ml"),
        (5264.0, 5250.0, 5280.0, VOLUME, "5.26 ml"),
        (121_600.0, 91_000.0, 163_000.0, VOLUME, "122 ml"),
        (28.6, 20.0, 40.0, MASS, "29 g"),
        (0.58, 0.1, 4.0, MASS, "0.58 g"),  # two figures stay, however wide
        (1234.0, 900.0, 1600.0, MASS, "1.23 kg"),
        (5678.0, 2000.0, 31_000.0, MASS, "5.7 kg"),
        (61_234.0, 59_000.0, 63_000.0, AREA, "612 cm²"),
        (0.0219, 0.014, 0.037, RATIO, "2.2 %"),
        (3111.0, 2900.0, 3300.0, LENGTH, "3.11 m"),
        (3111.0, 1900.0, 5300.0, LENGTH, "3.1 m"),
        (148.5, 140.0, 160.0, LENGTH, "148.5 mm"),  # a size that is cut keeps its tenth
        (5400.0, 3600.0, 9000.0, TIME, "1 h 30 min"),
    ],
)
def test_an_amount_has_no_more_figures_than_its_range_is_worth(
    value: float, low: float, high: float, dimension: Dimension, text: str
) -> None:
    band = Band(low, high)
    amount = leaf(value, dimension, "x", Origin("table"))
    assert show(amount, within=band) == text
    assert show(amount, band=band).startswith(f"{text} (")
    assert show(amount, within=Band(value, value)) == show(amount)


def test_customary_units_keep_to_the_same_rule() -> None:
    wide = Band(3900.0, 6800.0)
    assert show(q(5264.0, VOLUME), "imperial", within=wide) == "0.18 fl oz"
    assert show(q(52_640.0, VOLUME), "both", within=Band(2e4, 9e4)) == "53 ml (1.8 fl oz)"
    assert show(q(3111.0), "imperial", within=Band(1500.0, 5500.0)) == "3.4 yd"


@given(
    st.floats(0.01, 1e6),
    st.floats(0.001, 0.9),
    st.floats(0.001, 0.9),
    st.sampled_from([MASS, VOLUME, AREA, GRAMMAGE, DENSITY]),
)
def test_what_is_left_out_is_small_against_the_range(
    value: float, below: float, above: float, dimension: Dimension
) -> None:
    """Rounding moves a number by a twentieth of half its range at most, or is that of any."""
    factors = {"g": 1, "kg": 1e3, "ml": 1e3, "l": 1e6, "cm²": 100, "m²": 1e6, "g/m²": 1e-6,
               "g/cm³": 1e-3}  # fmt: skip
    amount = q(value, dimension)
    plain, _, unit = show(amount).partition(" ")
    band = Band(value * (1 - below), value * (1 + above))
    told, _, same_unit = show(amount, within=band).partition(" ")
    assert unit == same_unit and len(told) <= len(plain)
    raw = value / factors[unit]
    half = raw * (below + above) / 2
    assert abs(float(told) - raw) <= max(half / 20, abs(float(plain) - raw)) * (1 + 1e-6)
