"""The table of units against pint, which reads the same file."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from typing import Any

import pytest

from foredge.data import table_text
from foredge.dimension import RATIO, Dimension
from foredge.spec.units import DIMENSIONS, UNITS, Unit, read_units, registry

ALL = sorted({unit.name: unit for unit in UNITS.values()}.values(), key=lambda unit: unit.name)


@pytest.mark.parametrize("unit", ALL, ids=lambda unit: unit.name)
def test_each_unit_is_what_pint_makes_of_it(unit: Unit) -> None:
    quantity = registry().Quantity(1.0, unit.name)
    if unit.dimension == "temperature":
        for number in (-40.0, 0.0, 20.0, 100.0):
            degrees = registry().Quantity(number, unit.name).to("degC").magnitude
            assert float(unit.canonical(Fraction(number))) == pytest.approx(degrees, abs=1e-9)
        return
    base = quantity.to_base_units().magnitude
    assert float(1 / unit.factor if unit.inverse else unit.factor) == pytest.approx(base, rel=1e-14)
    assert unit.offset == 0


@pytest.mark.parametrize("unit", ALL, ids=lambda unit: unit.name)
def test_each_dimension_is_pints(unit: Unit) -> None:
    powers: Any = registry().Quantity(1.0, unit.name).dimensionality
    sign = -1 if unit.inverse else 1
    found = Dimension(*(sign * int(powers.get(f"[{b}]", 0)) for b in ("length", "mass", "time")))
    assert found == DIMENSIONS[unit.dimension]
    assert ("[temperature]" in powers) == (unit.dimension == "temperature")
    assert ("[angle]" in powers) == (unit.dimension == "angle")


def test_pint_knows_every_unit_of_the_file_and_the_same_aliases() -> None:
    names = [
        line.split("=")[0].strip()
        for line in table_text("units.txt").splitlines()
        if "=" in line.partition("#")[0]
    ]
    assert set(names) == {unit.name for unit in ALL} | {"kelvin"}
    for alias in ("mm", "g", "s", "in", "pt", "lb", "oz", "tex", "degC"):
        assert registry().get_name(alias) == UNITS[alias].name


def test_every_dimension_has_a_unit_and_a_name() -> None:
    assert {unit.dimension for unit in ALL} == set(DIMENSIONS)
    assert {name for name, powers in DIMENSIONS.items() if powers == RATIO} == {
        "temperature",
        "angle",
        "ratio",
    }


def test_spellings_do_not_begin_like_a_number() -> None:
    for spelling in UNITS:
        assert not spelling[0].isnumeric()
        assert spelling[0] not in " ./-⁄"
        assert spelling == " ".join(spelling.split())


def test_pt_is_a_point_and_pint_is_no_unit() -> None:
    assert UNITS["pt"].dimension == "length"
    assert "pint" not in UNITS


def test_a_spelling_for_two_units_is_refused() -> None:
    text = "mm = [length]  # written: mm\ncm = 10 * mm  # written: cm, mm"
    with pytest.raises(ValueError, match="'mm' is written for two units"):
        read_units(text)


def test_a_form_the_file_does_not_keep_to_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot read"):
        read_units("mm = [length]\ncm = (10) * mm  # written: cm")


def test_reading_measures_does_not_import_pint() -> None:
    program = (
        "import sys; from foredge.spec import measure; "
        "measure.parse_measure('7 in', 'length'); sys.exit('pint' in sys.modules)"
    )
    paths = [path for path in sys.path if path]
    run = subprocess.run(
        [sys.executable, "-c", f"import sys; sys.path[:0] = {paths!r}; {program}"], check=False
    )
    assert run.returncode == 0


def test_one_registry_a_process() -> None:
    assert registry() is registry()
