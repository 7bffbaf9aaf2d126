"""Customary units set beside the metric ones of a sentence, for makers who asked for inches.

The texts of problems are sentences with millimetres in them. Under ``display: imperial`` or
``both`` each measure gets its other reading in brackets: ``3.5 mm (9/64 in)``. The metric one
stays, since it is what the limits are told in.
"""

from __future__ import annotations

import re
from fractions import Fraction

from foredge import display_imperial as imperial
from foredge.dimension import AREA, LENGTH, MASS, VOLUME, Dimension

_UNITS: dict[str, tuple[Dimension, Fraction]] = {
    "mm": (LENGTH, Fraction(1)),
    "cm": (LENGTH, Fraction(10)),
    "m": (LENGTH, Fraction(1000)),
    "cm²": (AREA, Fraction(100)),
    "g": (MASS, Fraction(1)),
    "kg": (MASS, Fraction(1000)),
    "ml": (VOLUME, Fraction(1000)),
}
_NUMBER = r"\d+(?:\.\d+)?"
_AMOUNT = re.compile(
    rf"(?<![\w.])({_NUMBER})( to | by | × )?({_NUMBER})? (mm|cm²|cm|m|kg|g|ml)\b(?![/²³])"
)
_SAID = re.compile(r"((?<!\w)'[^']*'|`[^`]*`)")
"""What the maker wrote is quoted, and stays as it is."""


def beside(text: str) -> str:
    """``text`` with inches, ounces or fluid ounces after each measure that is not quoted."""
    parts = _SAID.split(text)
    return "".join(
        part if place % 2 else _AMOUNT.sub(_both, part) for place, part in enumerate(parts)
    )


def _both(found: re.Match[str]) -> str:
    first, joint, second, unit = found.groups()
    if (joint is None) != (second is None) or found.string[found.end() :].startswith(" ("):
        return found[0]
    told = [_written(number, unit) for number in (first, second) if number]
    if len(told) == 2 and told[0].rpartition(" ")[2] == told[1].rpartition(" ")[2]:
        told[0] = told[0].rpartition(" ")[0]
    return f"{found[0]} ({(joint or '').join(told)})"


def _written(number: str, unit: str) -> str:
    dimension, scale = _UNITS[unit]
    return imperial.write(Fraction(number) * scale, dimension, None) or f"{number} {unit}"
