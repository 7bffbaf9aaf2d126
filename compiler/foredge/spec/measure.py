"""The grammar of measures: one number, then one unit from ``shared/units.txt``.

A number is an integer, a decimal, a fraction ``3/4`` or a mixed number ``3 1/2``, with the
typographic forms of each. Everything is exact, and nothing is ever evaluated as an
expression. The same pieces make the parser and the pattern that editors use.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from foredge.spec.measure_error import MeasureError, refuse, shown
from foredge.spec.number import BELOW_ZERO, BREAK, FRACTION_POSITIVE, GAP, NUMBER, POSITIVE, exact
from foredge.spec.units import DIMENSIONS, UNITS, Unit

__all__ = [
    "AMOUNTS",
    "Measure",
    "MeasureError",
    "amount_pattern",
    "measure_pattern",
    "parse_amount",
    "parse_measure",
    "parse_thread",
    "thread_pattern",
]

_END = r"(?![\s\S])"  # the end of the text, for Python and for ECMA
_SPLIT = re.compile(f"({BELOW_ZERO}|{NUMBER}){GAP}([\\s\\S]*)")
AMOUNTS = ("length", "area", "volume", "mass")
"""What an amount of some material can be told in."""

_THREAD_PREFIXES = ("tex", "Tex", "dtex", "denier", "lea", "NeL", "Ne", "Nm")


@dataclass(frozen=True, slots=True)
class Measure:
    """``text`` as read: ``number`` of ``unit``, and its exact canonical ``value``.

    Canonical units are mm, g and s and their powers (mm2, mm3, g/mm2, g/mm3, g/mm), degC for
    temperatures, deg for angles, 1 for ratios.
    """

    value: Fraction
    unit: str
    number: Fraction
    dimension: str
    text: str


def parse_measure(text: str, dimension: str, *, positive: bool = False) -> Measure | MeasureError:
    """Read ``text`` as a measure of ``dimension`` (a key of ``DIMENSIONS``).

    Args:
        text: what the spec says, such as ``3 1/2 in``, ``90 g/m2``, ``70 lb text``.
        dimension: what is expected.
        positive: refuse zero too.

    Returns:
        The measure, or an error whose sentence says what to write instead. Never raises on
        any text; KeyError when the dimension is not one of ours.
    """
    if dimension not in DIMENSIONS:
        raise KeyError(dimension)
    split = _SPLIT.fullmatch(text)
    if split is None:
        return refuse(text, dimension)
    unit_text = re.sub(BREAK, " ", split[2])
    unit = UNITS.get(unit_text)
    number = exact(split[1])
    if unit is None or unit.dimension != dimension or (number < 0 and dimension != "temperature"):
        return refuse(text, dimension)
    if number <= 0 and (positive or unit.inverse):
        return MeasureError(f"{shown(text)} is not above zero", "measure-not-positive")
    return Measure(unit.canonical(number), unit_text, number, dimension, text)


def parse_thread(text: str) -> Measure | MeasureError:
    """Read a thread size as a linear density (canonical g/mm, so 1 tex is 1e-6).

    ``25/3`` is linen lea and ply: the strands of that lea twisted together, so the
    resultant tex is 1653.515 / 25 * 3. ``200 tex``, ``tex 200``, ``Ne 20/2``, ``Nm 30/3``
    and ``150 denier`` are read as well. Zero is refused.
    """
    turned = re.fullmatch(f"({'|'.join(_THREAD_PREFIXES)}){GAP}({NUMBER})", text)
    if turned:
        reading = parse_measure(f"{turned[2]} {turned[1]}", "linear-density", positive=True)
    elif re.fullmatch(FRACTION_POSITIVE, text):
        reading = parse_measure(f"{text} lea", "linear-density", positive=True)
    else:
        reading = parse_measure(text, "linear-density", positive=True)
    if isinstance(reading, Measure):
        return replace(reading, text=text)
    if reading.rule == "no-unit":
        return MeasureError(
            f"say what the {text} counts: {text}/3 for lea and ply, {text} tex or {text} denier?",
            "no-unit",
        )
    return reading


def parse_amount(text: str) -> Measure | MeasureError:
    """Read so much of a material: a length, an area, a volume or a mass, above zero."""
    split = _SPLIT.fullmatch(text)
    unit = UNITS.get(re.sub(BREAK, " ", split[2])) if split is not None else None
    if unit is None or unit.dimension not in AMOUNTS:
        return refuse(text, "amount")
    return parse_measure(text, unit.dimension, positive=True)


@cache
def amount_pattern() -> str:
    """JSON Schema (ECMA) pattern of exactly the texts :func:`parse_amount` accepts."""
    return f"^(?:{'|'.join(_body(dimension, True) for dimension in AMOUNTS)}){_END}"


@cache
def measure_pattern(dimension: str, *, positive: bool = False) -> str:
    """JSON Schema (ECMA) pattern of exactly the texts :func:`parse_measure` accepts."""
    return f"^(?:{_body(dimension, positive)}){_END}"


@cache
def thread_pattern() -> str:
    """JSON Schema (ECMA) pattern of exactly the texts :func:`parse_thread` accepts."""
    turned = f"(?:{'|'.join(_THREAD_PREFIXES)}){GAP}{POSITIVE}"
    return f"^(?:{turned}|{FRACTION_POSITIVE}|{_body('linear-density', True)}){_END}"


def _body(dimension: str, positive: bool) -> str:
    """Number and unit of one dimension; thread counts never take zero."""
    if dimension not in DIMENSIONS:
        raise KeyError(dimension)
    mine = {text: unit for text, unit in UNITS.items() if unit.dimension == dimension}
    number = POSITIVE if positive else NUMBER
    if dimension == "temperature" and not positive:
        number = f"(?:{BELOW_ZERO}|{number})"
    parts = [f"{number}{GAP}(?:{_spellings(mine, inverse=False)})"]
    if any(unit.inverse for unit in mine.values()):
        parts.append(f"{POSITIVE}{GAP}(?:{_spellings(mine, inverse=True)})")
    return "|".join(parts)


def _spellings(units: dict[str, Unit], *, inverse: bool) -> str:
    texts = (text for text, unit in units.items() if unit.inverse is inverse)
    return "|".join(
        re.sub(r"([.^$*+?()\[\]{}|\\/])", r"\\\1", text).replace(" ", BREAK)
        for text in sorted(texts, key=lambda text: (-len(text), text))
    )
