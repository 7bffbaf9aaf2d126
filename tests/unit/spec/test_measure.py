"""The grammar of measures: what is read, what is refused and in which words."""

from __future__ import annotations

from fractions import Fraction

import pytest

from foredge.spec.measure import (
    Measure,
    MeasureError,
    measure_pattern,
    parse_measure,
    parse_thread,
)
from length_mistakes import LENGTH_MISTAKES

INCH = Fraction("25.4")


def value(text: str, dimension: str = "length") -> Fraction:
    measure = parse_measure(text, dimension)
    assert isinstance(measure, Measure), measure
    return measure.value


# What is read ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("180 mm", Fraction(180)),
        ("180mm", Fraction(180)),
        ("18.5 cm", Fraction(185)),
        (".5 mm", Fraction(1, 2)),
        ("0.1 mm", Fraction(1, 10)),
        ("007 mm", Fraction(7)),
        ("0 mm", Fraction(0)),
        ("7 in", 7 * INCH),
        ("1/4 in", INCH / 4),
        ("3 1/2 in", INCH * 7 / 2),
        ("10/4 in", INCH * 5 / 2),
        ("5 ft", 60 * INCH),
        ("12 pt", INCH / 6),
        ("4 leather oz", INCH / 16),
        ("4 oz-leather", INCH / 16),
        ("20 mil", INCH / 50),
        # typographic forms
        ("½ in", INCH / 2),
        ("3½ in", INCH * 7 / 2),
        ("3 ⅜ in", INCH * 27 / 8),
        ("3⅞″", INCH * 31 / 8),
        ("1⁄4 in", INCH / 4),
        ('7"', 7 * INCH),
        ("7″", 7 * INCH),
        ("7”", 7 * INCH),
        ('3 1/2"', INCH * 7 / 2),
        ("7'", 84 * INCH),
        ("7′", 84 * INCH),
        ("7’", 84 * INCH),
        ("180\u00a0mm", Fraction(180)),
        ("180\u202fmm", Fraction(180)),
        ("3\u20091/2 in", INCH * 7 / 2),
    ],
)
def test_lengths(text: str, millimetres: Fraction) -> None:
    assert value(text) == millimetres


def test_every_typographic_fraction_is_worth_what_it_shows() -> None:
    shown = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
             "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
             "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10"}  # fmt: skip
    for sign, plain in shown.items():
        assert value(f"{sign} in") == value(f"{plain} in")
        assert value(f"12{sign} in") == value(f"12 {plain} in")


@pytest.mark.parametrize(
    ("text", "dimension", "canonical"),
    [
        ("80 g", "mass", Fraction(80)),
        ("1 kg", "mass", Fraction(1000)),
        ("24 h", "time", Fraction(86400)),
        ("1 1/2 hours", "time", Fraction(5400)),
        ("2 days", "time", Fraction(172800)),
        ("1 week", "time", Fraction(604800)),
        ("300 cm2", "area", Fraction(30000)),
        ("60 ml", "volume", Fraction(60000)),
        ("2/3 metric cup", "volume", Fraction(500000, 3)),
        ("2 fl oz", "volume", 2 * INCH**3 * Fraction(231, 128)),
        ("90 g/m2", "grammage", Fraction(90, 10**6)),
        ("90 gsm", "grammage", Fraction(90, 10**6)),
        ("1.2 kg/m2", "grammage", Fraction(1200, 10**6)),
        ("0.7 g/cm3", "density", Fraction(7, 10**4)),
        ("700 kg/m3", "density", Fraction(7, 10**4)),
        ("200 tex", "linear-density", Fraction(200, 10**6)),
        ("45°", "angle", Fraction(45)),
        ("15 %", "ratio", Fraction(3, 20)),
        ("20 degC", "temperature", Fraction(20)),
        ("68 °F", "temperature", Fraction(20)),
        ("-40 degF", "temperature", Fraction(-40)),
        ("-5.5 °C", "temperature", Fraction(-11, 2)),
    ],
)
def test_other_dimensions(text: str, dimension: str, canonical: Fraction) -> None:
    assert value(text, dimension) == canonical


def test_a_measure_keeps_what_was_written() -> None:
    assert parse_measure("3½ fl  oz", "volume") == Measure(
        INCH**3 * Fraction(7, 2) * Fraction(231, 128),
        "fl oz",
        Fraction(7, 2),
        "volume",
        "3½ fl  oz",
    )


# What is refused -------------------------------------------------------------------------


@pytest.mark.parametrize(("text", "words", "rule"), LENGTH_MISTAKES)
def test_mistakes_in_a_length(text: str, words: str, rule: str) -> None:
    assert parse_measure(text, "length") == MeasureError(words, rule)


@pytest.mark.parametrize(
    ("text", "dimension", "words", "rule"),
    [
        (
            "80 lb",
            "grammage",
            "'80 lb' says nothing without its basis size; give grams per square metre, or name"
            " the basis: 80 lb text (118.4 g/m2), 80 lb cover (216.3 g/m2), 80 lb bond"
            " (300.8 g/m2)",
            "pounds-without-basis",
        ),
        (
            "70# kraft",
            "grammage",
            "'70# kraft' has three readings; write the one of your mill: 70 lb/3000ft2 (24 x 36"
            " in, 500 sheets, 113.9 g/m2); 70 lb/2880ft2 (24 x 36 in, 480 sheets, 118.7 g/m2);"
            " 70 lb/1000ft2 (1000 square feet, 341.8 g/m2)",
            "pounds-without-basis",
        ),
        ("70 lb txt", "grammage", "'70 lb txt': no unit is called 'lb txt'; did you mean lb text?",
         "unknown-unit"),
        ("80 g", "grammage", "'80 g' is a mass; a grammage is expected, such as 90 g/m2",
         "wrong-dimension"),
        ("80", "grammage", "say the unit: 80 g/m2 or 80 lb text?", "no-unit"),
        ("70 lb text", "mass", "'70 lb text' is a grammage; a mass is expected, such as 80 g",
         "wrong-dimension"),
        ("12 pt", "volume", "'12 pt' is a length; a volume is expected, such as 60 ml (pt is the"
         " point of 1/72 in; a pint is 2 cup)", "wrong-dimension"),
        ("2 oz", "volume", "'2 oz' is a mass; a volume is expected, such as 60 ml (for a volume"
         " write fl oz)", "wrong-dimension"),
        ("5 m", "time", "'5 m' is a length; a time is expected, such as 24 h (for minutes write"
         " min)", "wrong-dimension"),
        ("3 h 20 min", "time", "'3 h 20 min': write one number and one unit, such as 24 h; sums,"
         " products and lists are not read", "not-a-measure"),
        ("20 C", "temperature", "'20 C': no unit is called 'C'; did you mean °C?", "unknown-unit"),
        ("−5 °C", "temperature", "'−5 °C' is not read; write the minus as a plain hyphen, and"
         " nothing below -99: '-5 °C'", "not-a-measure"),
        ("-300 °C", "temperature", "'-300 °C' is not read; write it like -5 degC, and nothing"
         " below -99", "not-a-measure"),
        ("0 lea", "linear-density", "'0 lea' is not above zero", "measure-not-positive"),
        ("0.4", "ratio", "say the unit: 0.4 %?", "no-unit"),
    ],
)  # fmt: skip
def test_mistakes_elsewhere(text: str, dimension: str, words: str, rule: str) -> None:
    assert parse_measure(text, dimension) == MeasureError(words, rule)


@pytest.mark.parametrize("text", ["0 mm", "0.000 mm", "0/5 mm", "0 0/7 in", ".0 in"])
def test_zero_is_refused_where_it_must_be_more(text: str) -> None:
    assert value(text) == 0
    assert parse_measure(text, "length", positive=True) == MeasureError(
        f"'{text}' is not above zero", "measure-not-positive"
    )


def test_a_dimension_that_is_none_of_ours_is_a_mistake_of_the_caller() -> None:
    with pytest.raises(KeyError):
        parse_measure("1 mm", "wideness")
    with pytest.raises(KeyError):
        measure_pattern("wideness")


# Threads ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("200 tex", 200), ("tex 200", 200), ("Tex 70", 70), ("dtex 700", 70), ("denier 90", 10),
        ("25/3", 198.4218), ("25/3 lea", 198.4218), ("NeL 25/3", 198.4218), ("lea 45", 36.7448),
        ("Nm 30/3", 100), ("10 Nm", 100), ("Ne 20/2", 59.0541),
    ],
)  # fmt: skip
def test_threads(text: str, tex: float) -> None:
    measure = parse_thread(text)
    assert isinstance(measure, Measure)
    assert measure.text == text
    assert float(measure.value) * 1e6 == pytest.approx(tex, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("25", "say what the 25 counts: 25/3 for lea and ply, 25 tex or 25 denier?"),
        ("25/0", "'25/0' divides by zero"),
        ("0/3 lea", "'0/3 lea' is not above zero"),
        ("0 tex", "'0 tex' is not above zero"),
        ("tex 0", "'0 tex' is not above zero"),
        ("thick", "'thick' is not a thread size; write a number and a unit, such as 200 tex"),
        ("0.4 mm", "'0.4 mm' is a length; a thread size is expected, such as 200 tex"),
    ],
)
def test_mistakes_in_a_thread(text: str, words: str) -> None:
    reading = parse_thread(text)
    assert isinstance(reading, MeasureError)
    assert reading.text == words
