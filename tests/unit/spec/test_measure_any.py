"""The grammar of measures over any text and any number, against pint and JavaScript."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings, strategies as st

from foredge.spec.measure import (
    Measure,
    MeasureError,
    measure_pattern,
    parse_measure,
    parse_thread,
    thread_pattern,
)
from foredge.spec.measure_error import LONGEST
from foredge.spec.units import DIMENSIONS, UNITS, registry
from length_mistakes import LENGTH_MISTAKES

INCH = Fraction("25.4")


# Any text, any number --------------------------------------------------------------------

PIECES = st.lists(
    st.sampled_from(
        [*UNITS, *"0123456789", "000", "00", "12", ".", ",", "/", "⁄", "½", "⅞", " ", "  ",
         "\u00a0", "\t", "\n", "-", "−", "+", "*", "e", "nan", "inf", "lb", "#", "kraft", "text",
         "tex ", "25/3", "1 1/2 ", "0/1", "٣", "²", "x"]
    ),
    max_size=7,
).map("".join)  # fmt: skip
ANYTHING = st.text(max_size=20) | PIECES
DIMENSION = st.sampled_from(sorted(DIMENSIONS))
DIGITS = st.text("0123456789", min_size=1, max_size=9)


@st.composite
def numbers(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A number as a maker may write it, and its value."""
    whole, part = draw(DIGITS), draw(DIGITS)
    under = draw(DIGITS.filter(lambda digits: int(digits) > 0))
    ratio = Fraction(int(part), int(under))
    return draw(
        st.sampled_from(
            [
                (whole, Fraction(int(whole))),
                (f"{whole}.{part}", int(whole) + Fraction(int(part), 10 ** len(part))),
                (f"{part}/{under}", ratio),
                (f"{whole} {part}/{under}", int(whole) + ratio),
                (f"{whole}¾", int(whole) + Fraction(3, 4)),
            ]
        )
    )


@settings(max_examples=400, deadline=None)
@given(ANYTHING, DIMENSION, st.booleans())
def test_no_text_raises_and_pattern_and_parser_agree(
    text: str, dimension: str, positive: bool
) -> None:
    reading = parse_measure(text, dimension, positive=positive)
    matched = re.search(measure_pattern(dimension, positive=positive), text)
    assert isinstance(reading, Measure) == (matched is not None)
    if isinstance(reading, MeasureError):
        assert reading.text.isprintable() or "\u00a0" in reading.text
        assert reading.rule


@settings(max_examples=200, deadline=None)
@given(numbers(), st.sampled_from(sorted(UNITS)), st.sampled_from(["", " ", "\u00a0"]), DIMENSION,
       st.booleans())  # fmt: skip
def test_pattern_and_parser_agree_on_numbers_with_units(
    number: tuple[str, Fraction], unit: str, gap: str, dimension: str, positive: bool
) -> None:
    text = number[0] + gap + unit
    for one in (UNITS[unit].dimension, dimension):
        reading = parse_measure(text, one, positive=positive)
        matched = re.search(measure_pattern(one, positive=positive), text)
        assert isinstance(reading, Measure) == (matched is not None)
    assert len(text) <= LONGEST


@settings(max_examples=200, deadline=None)
@given(ANYTHING | numbers().map(lambda number: number[0]))
def test_pattern_and_parser_agree_on_threads(text: str) -> None:
    reading = parse_thread(text)
    assert isinstance(reading, Measure) == bool(re.search(thread_pattern(), text))


@settings(max_examples=200, deadline=None)
@given(numbers(), st.sampled_from(sorted(UNITS)))
def test_values_are_those_of_pint(number: tuple[str, Fraction], spelling: str) -> None:
    unit = UNITS[spelling]
    assume(number[1] > 0)
    reading = parse_measure(f"{number[0]} {spelling}", unit.dimension)
    assert isinstance(reading, Measure)
    assert reading.number == number[1]
    said = registry().Quantity(float(number[1]), unit.name)
    theirs = said.to("degC") if unit.dimension == "temperature" else said.to_base_units()
    magnitude = 1 / theirs.magnitude if unit.inverse else theirs.magnitude
    # 0 degC is 273.15 K to pint, so its temperatures carry that much rounding.
    near = 1e-9 if unit.dimension == "temperature" else 0.0
    assert float(reading.value) == pytest.approx(magnitude, rel=1e-12, abs=near)


@pytest.mark.skipif(shutil.which("node") is None, reason="needs a JavaScript engine")
def test_the_pattern_means_the_same_to_javascript() -> None:
    texts = [text for text, _, _ in LENGTH_MISTAKES] + [
        "7 in", "7 in\n", "3½ in", "3 1/2 in", '7"', "1/0 in", "0 mm", "0/3 mm", "180\u00a0mm",
        "4 leather  oz", "4 leather    oz", ".5 mm", "5. mm", "٣ mm", "7 in\u2028", "0.0 cm",
        "-5 degC", "-5.5 °C", "-100 °C", "0 lea", "1/3 lea", "70 lb/3000 ft2", "70 lb text",
    ]  # fmt: skip
    patterns = [measure_pattern(d, positive=p) for d in DIMENSIONS for p in (False, True)]
    patterns.append(thread_pattern())
    program = (
        "const [ps, ts] = JSON.parse(require('fs').readFileSync(0, 'utf8'));"
        "console.log(JSON.stringify(ps.map(p => ['', 'u'].map(f => "
        "ts.map(t => new RegExp(p, f).test(t))))))"
    )
    run = subprocess.run(
        ["node", "-e", program],
        input=json.dumps([patterns, texts]),
        capture_output=True,
        text=True,
        check=True,
    )
    for pattern, (plain, unicode) in zip(patterns, json.loads(run.stdout), strict=True):
        assert plain == unicode == [bool(re.search(pattern, text)) for text in texts]
