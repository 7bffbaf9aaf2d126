"""The units a spec may name, exact, from ``shared/units.txt``.

The file is a pint definition file. Importing pint costs about 0.2 s, so the table
:data:`UNITS` is read here, with fractions, from the few forms the file keeps to;
:func:`registry` gives pint's view of the same file. A test holds the two equal.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from foredge import dimension as dim
from foredge.data import table_text

if TYPE_CHECKING:
    import pint

DIMENSIONS: Mapping[str, dim.Dimension] = MappingProxyType(
    {
        "length": dim.LENGTH,
        "mass": dim.MASS,
        "time": dim.TIME,
        "area": dim.AREA,
        "volume": dim.VOLUME,
        "grammage": dim.GRAMMAGE,
        "density": dim.DENSITY,
        "linear-density": dim.LINEAR_DENSITY,
        "temperature": dim.RATIO,
        "angle": dim.RATIO,
        "ratio": dim.RATIO,
    }
)
"""Names of what a measure can be. Temperatures (degC) and angles (deg) are plain readings:
they carry no power of length, mass or time."""

_ZERO_CELSIUS = Fraction("273.15")  # K; ISO 80000-5, from memory
_BASES = ("length", "mass", "time", "temperature", "angle")
_BY_POWERS: dict[tuple[int, ...], str] = {
    **{
        (*powers, 0, 0): name
        for name, powers in DIMENSIONS.items()
        if name not in ("temperature", "angle")
    },
    (0, 0, 0, 1, 0): "temperature",
    (0, 0, 0, 0, 1): "angle",
}
_THREAD_COUNT = (1, -1, 0, 0, 0)  # length to a mass: the inverse of a linear density
_TOKEN = re.compile(r"\*\*|[*/+]|[0-9]+(?:\.[0-9]+)?|[A-Za-z_]+[0-9]*(?:_[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: ``number * factor + offset`` is the canonical value (mm, g, s, degC, deg, 1).

    ``inverse`` marks thread counts (lea, Ne, Nm), where the canonical value is
    ``factor / number``. ``name`` is pint's name, ``written`` the spellings a spec may use.
    """

    name: str
    dimension: str
    factor: Fraction
    offset: Fraction
    inverse: bool
    written: tuple[str, ...]

    def canonical(self, number: Fraction) -> Fraction:
        """The canonical value of ``number`` of this unit; a thread count must not be zero."""
        if self.inverse:
            return self.factor / number
        return number * self.factor + self.offset


@dataclass(frozen=True, slots=True)
class _Amount:
    """A factor with its powers of the five bases."""

    factor: Fraction
    powers: tuple[int, ...] = (0, 0, 0, 0, 0)

    def times(self, other: _Amount, power: int) -> _Amount:
        powers = tuple(a + power * b for a, b in zip(self.powers, other.powers, strict=True))
        return _Amount(self.factor * other.factor**power, powers)


def _evaluate(expression: str, known: Mapping[str, _Amount]) -> _Amount:
    """Value of a product such as ``231 * inch ** 3 / 16``."""
    tokens = _TOKEN.findall(expression)
    if "".join(tokens) != "".join(expression.split()):
        raise ValueError(f"shared/units.txt: cannot read {expression!r}")
    result, sign = _Amount(Fraction(1)), 1
    position = 0
    while position < len(tokens):
        token = tokens[position]
        amount = _Amount(Fraction(token)) if token[0].isdigit() else known[token]
        power = sign
        if tokens[position + 1 : position + 2] == ["**"]:
            power *= int(tokens[position + 2])
            position += 2
        result = result.times(amount, power)
        sign = -1 if tokens[position + 1 : position + 2] == ["/"] else 1
        position += 2
    return result


def _read_line(line: str, known: dict[str, _Amount]) -> Unit | None:
    """Learn one definition; the unit it makes, or None when a spec may not name it."""
    definition, _, remark = line.partition("#")
    if not definition.strip():
        return None
    body, _, tail = definition.partition(";")
    name, value, *aliases = (part.strip() for part in body.split("="))
    offset = Fraction(0)
    if tail:
        offset_text, *aliases = (part.strip() for part in tail.split("="))
        for part in offset_text.removeprefix("offset:").split("+"):
            offset += _evaluate(part, {}).factor
    if value.startswith("["):
        base = _BASES.index(value.strip("[]"))
        amount = _Amount(Fraction(1), tuple(int(i == base) for i in range(len(_BASES))))
    else:
        amount = _evaluate(value, known)
    known.update(dict.fromkeys((name, *aliases), amount))
    label, _, spellings = remark.strip().partition("written:")
    if label or not spellings:
        return None
    inverse = amount.powers == _THREAD_COUNT
    dimension = "linear-density" if inverse else _BY_POWERS[amount.powers]
    return Unit(
        name=name,
        dimension=dimension,
        factor=1 / amount.factor if inverse else amount.factor,
        offset=offset - _ZERO_CELSIUS if dimension == "temperature" else offset,
        inverse=inverse,
        written=tuple(spelling.strip() for spelling in spellings.split(", ")),
    )


def read_units(text: str) -> dict[str, Unit]:
    """Every allowed spelling and its unit, from the text of a unit file.

    Raises ValueError or KeyError when the file leaves the forms it says it keeps to, or
    gives one spelling to two units: it is our own file, so that is a defect of the build.
    """
    known: dict[str, _Amount] = {}
    table: dict[str, Unit] = {}
    for line in text.splitlines():
        unit = _read_line(line, known)
        for spelling in unit.written if unit else ():
            if unit is None or spelling in table:
                raise ValueError(f"shared/units.txt: {spelling!r} is written for two units")
            table[spelling] = unit
    return table


UNITS: Mapping[str, Unit] = MappingProxyType(read_units(table_text("units.txt")))
"""Every spelling a spec may use, and its unit."""


@cache
def registry() -> pint.UnitRegistry[float]:
    """The one pint registry of the process, built from the same file. Slow: import is lazy."""
    import pint

    return pint.UnitRegistry(table_text("units.txt").splitlines())
