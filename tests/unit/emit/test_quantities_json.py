import json
from fractions import Fraction

import pytest
from hypothesis import given, strategies as st
from jsonschema import Draft202012Validator

from foredge.contract import AREA, GRAMMAGE, LENGTH, LINEAR_DENSITY, VOLUME, Dimension
from foredge.data import schema_text
from foredge.emit.plain_units import plain_number, plain_unit, quantised
from foredge.emit.quantities_json import Quantities
from unit.emit.sample import sample

SCHEMA = json.loads(schema_text("quantities.schema.json"))


def document(**options: object) -> dict[str, object]:
    files = Quantities().emit(sample(**options))  # type: ignore[arg-type]
    return json.loads(files["quantities.json"])  # type: ignore[no-any-return]


def test_it_keeps_to_its_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    validator = Draft202012Validator(SCHEMA)
    for options in ({}, {"measured": {"block.spine": 12.4}}, {"title": 'a "b" \n c'}):
        assert list(validator.iter_errors(document(**options))) == []


@pytest.mark.parametrize("place", ["", "quantities", "quantities.case.board.width"])
def test_the_schema_is_closed(place: str) -> None:
    made = document()
    level: object = made
    quantities = made["quantities"]
    assert isinstance(quantities, dict)
    if place == "quantities":
        level = quantities
    elif place:
        level = quantities["case.board.width"]
    assert isinstance(level, dict)
    level["Surplus"] = 1
    assert list(Draft202012Validator(SCHEMA).iter_errors(made))


def test_one_quantity() -> None:
    made = document()
    quantities = made["quantities"]
    assert isinstance(quantities, dict)
    assert quantities["case.board.height"] == {
        "firm": False,
        "formula": "block height + 2 × square, to the nearest 0.5 mm",
        "gates": ["G2"],
        "high": 215,
        "inputs": ["case.square", "text_block.block.height"],
        "label": "board height",
        "low": 215,
        "rule": "a square at head and tail",
        "source": "common practice",
        "steps": {},
        "unit": "mm",
        "value": 215,
    }


def test_keys_are_sorted() -> None:
    text = Quantities().emit(sample())["quantities.json"].decode()
    assert text == json.dumps(json.loads(text), ensure_ascii=False, indent=2, sort_keys=True) + "\n"


@pytest.mark.parametrize(
    ("value", "dimension", "number", "unit"),
    [
        (148.5, LENGTH, 148.5, "mm"),
        (148.0, LENGTH, 148, "mm"),
        (1 / 3, LENGTH, 0.333333, "mm"),
        (1234.5678, LENGTH, 1234.57, "mm"),
        (90e-6, GRAMMAGE, 90, "g/m2"),
        (141.73e-6, LINEAR_DENSITY, 141.73, "tex"),
        (250_000, VOLUME, 250, "ml"),
        (1e4, AREA, 10000, "mm2"),
        (2.5, Dimension(1, 1, -2), 2.5, "mm g s-2"),
        (-0.0, LENGTH, 0, "mm"),
    ],
)
def test_plain_numbers(value: float, dimension: Dimension, number: float, unit: str) -> None:
    assert plain_number(value, dimension) == number
    assert plain_unit(dimension).name == unit


@given(st.floats(1e-3, 1e6))
def test_the_last_bits_of_a_float_do_not_show(value: float) -> None:
    near = value * (1 + 2**-52)
    assert abs(quantised(Fraction(value)) - value) <= 1e-5 * value
    assert abs(quantised(Fraction(near)) - quantised(Fraction(value))) <= 1.0001e-5 * value


def test_what_is_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot be written"):
        plain_number(float("nan"), LENGTH)
