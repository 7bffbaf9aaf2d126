"""Why a text is not a measure, in one sentence that says what to write instead."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from difflib import get_close_matches

from foredge.spec.number import NUMBER, TYPOGRAPHIC, exact
from foredge.spec.units import UNITS

LONGEST = 60  # characters; the longest text the grammar takes is shorter

_KINDS: dict[str, tuple[str, str, tuple[str, ...]]] = {
    # dimension: what it is called, an example, its usual units
    "length": ("a length", "180 mm", ("mm", "in")),
    "mass": ("a mass", "80 g", ("g", "oz")),
    "time": ("a time", "24 h", ("min", "h")),
    "area": ("an area", "300 cm2", ("cm2", "in2")),
    "volume": ("a volume", "60 ml", ("ml", "cup")),
    "grammage": ("a grammage", "90 g/m2", ("g/m2", "lb text")),
    "density": ("a density", "0.7 g/cm3", ("g/cm3", "kg/m3")),
    "linear-density": ("a thread size", "200 tex", ("tex", "lea")),
    "temperature": ("a temperature", "20 degC", ("degC", "degF")),
    "angle": ("an angle", "45 deg", ("deg",)),
    "ratio": ("a share", "15 %", ("%",)),
    "amount": ("an amount", "250 ml", ("ml", "g", "m")),
}
_HINTS = {
    # (pint's name of the unit written, dimension expected): what the maker may have meant
    ("ounce", "length"): "for the thickness of leather write leather oz",
    ("ounce", "volume"): "for a volume write fl oz",
    ("us_fluid_ounce", "mass"): "for a mass write oz",
    ("leather_ounce", "mass"): "for a mass write oz",
    ("point", "volume"): "pt is the point of 1/72 in; a pint is 2 cup",
    ("meter", "time"): "for minutes write min",
}
_KRAFT = (
    ("lb/3000ft2", "24 x 36 in, 500 sheets"),
    ("lb/2880ft2", "24 x 36 in, 480 sheets"),
    ("lb/1000ft2", "1000 square feet"),
)
_AMOUNT = re.compile(NUMBER)
_NUMBERS = re.compile(f"[*+×±()^=0-9{TYPOGRAPHIC}]")
_POUNDS = re.compile(r"(?:lbs?|pounds?|#)\.?")


@dataclass(frozen=True, slots=True)
class MeasureError:
    """A sentence for the maker, and the kebab-case name of the rule that was broken."""

    text: str
    rule: str


def shown(text: str) -> str:
    """``text`` in quotes, on one line, cut when long."""
    plain = text if text.replace("\u00a0", " ").isprintable() else ascii(text)[1:-1]
    return f"'{plain}'" if len(plain) <= 40 else f"'{plain[:37]}...'"


def refuse(text: str, dimension: str) -> MeasureError:
    """Say why ``text`` is not a measure of ``dimension``; the grammar has refused it."""
    if len(text) > LONGEST:
        return MeasureError(
            f"{shown(text)} is too long ({len(text)} characters) for a measure; "
            f"write one number and one unit, such as {_KINDS[dimension][1]}",
            "not-a-measure",
        )
    for look in _LOOKS:
        found = look(text, dimension)
        if found:
            return found
    return _unit(text, dimension)


def _blank(text: str, dimension: str) -> MeasureError | None:
    kind, example, _ = _KINDS[dimension]
    if not text.strip():
        return MeasureError(f"{kind} is expected here, such as {example}", "not-a-measure")
    if text != text.strip():
        return MeasureError(f"take away the space around {shown(text.strip())}", "not-a-measure")
    return None


def _not_finite(text: str, dimension: str) -> MeasureError | None:
    if not re.match(r"[-+]?(?:\.?(?:nan|inf(?:inity)?)\b|∞)", text, re.IGNORECASE):
        return None
    kind, example, _ = _KINDS[dimension]
    return MeasureError(
        f"{shown(text)} is not a number that can be measured; {kind} is expected, "
        f"such as {example}",
        "measure-not-finite",
    )


def _signed(text: str, dimension: str) -> MeasureError | None:
    if text[0] == "+":
        return MeasureError(f"write {shown(text[1:].strip())} without the plus", "not-a-measure")
    if text[0] not in "-−–—‐‑":
        return None
    if dimension == "temperature":
        rest = text[1:].strip()
        return MeasureError(
            f"{shown(text)} is not read; write the minus as a plain hyphen, and nothing below "
            f"-99: {shown('-' + rest)}"
            if text[0] != "-"
            else f"{shown(text)} is not read; write it like -5 degC, and nothing below -99",
            "not-a-measure",
        )
    return MeasureError(
        f"{shown(text)} is negative; {_KINDS[dimension][0]} is never below zero",
        "measure-negative",
    )


def _comma(text: str, dimension: str) -> MeasureError | None:
    found = re.match(r"[0-9]+(?:,[0-9]+)+", text)
    if not found:
        return None
    number, rest = found[0], text[found.end() :]
    endings = (rest,) if rest.strip() else tuple(f" {unit}" for unit in _KINDS[dimension][2])
    readings = [number.replace(",", ".")] if number.count(",") == 1 else []
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+", number):
        readings.insert(0, number.replace(",", ""))
    if not readings:
        return None
    choices = " or ".join(reading + ending for reading in readings for ending in endings)
    return MeasureError(f"{shown(text)}: a comma is not read; write {choices}", "comma-decimal")


def _bare_point(text: str, dimension: str) -> MeasureError | None:
    found = re.match(r"([0-9]+)\.(?![0-9])\s*", text)
    if not found:
        return None
    rest = text[found.end() :]
    right = f"{found[1]} {rest or _KINDS[dimension][2][0]}"
    return MeasureError(f"{shown(text)}: write {right}", "not-a-measure")


def _exponent(text: str, dimension: str) -> MeasureError | None:
    if not re.match(r"[0-9]*\.?[0-9]+[eE][-+]?[0-9]", text):
        return None
    return MeasureError(
        f"{shown(text)}: write the number out, without an exponent", "not-a-measure"
    )


def _zero_divisor(text: str, dimension: str) -> MeasureError | None:
    if not re.match(r"(?:[0-9]+\s+)?[0-9]+[/⁄]0+(?![0-9.])", text):
        return None
    return MeasureError(f"{shown(text)} divides by zero", "zero-denominator")


def _many_digits(text: str, dimension: str) -> MeasureError | None:
    if not re.search("[0-9]{10}", text):
        return None
    return MeasureError(
        f"{shown(text)} has too many digits; at most 9 are read on each side of the point",
        "not-a-measure",
    )


def _no_unit(text: str, dimension: str) -> MeasureError | None:
    if not _AMOUNT.fullmatch(text):
        return None
    choices = " or ".join(f"{text} {unit}" for unit in _KINDS[dimension][2])
    return MeasureError(f"say the unit: {choices}?", "no-unit")


def _several(text: str, dimension: str) -> MeasureError | None:
    """Sums, products, ranges, and feet with inches: more than one number."""
    hyphened = re.match(r"([0-9]+)\s*-\s*([0-9]+[/⁄][0-9]+)", text)
    if hyphened:
        right = f"{hyphened[1]} {hyphened[2]}{text[hyphened.end() :]}"
        return MeasureError(f"{shown(text)}: write {right}", "not-a-measure")
    start = _AMOUNT.match(text)
    if not start and len(re.findall("[0-9]+", text)) < 2:
        return None  # one number after a word
    rest = text[start.end() :] if start else text
    loose = re.sub(r"lb/[0-9]+ ?ft2|[A-Za-z][23]\b", "", rest)
    if not _NUMBERS.search(loose):
        return None
    return MeasureError(
        f"{shown(text)}: write one number and one unit, such as {_KINDS[dimension][1]}; "
        "sums, products and lists are not read",
        "not-a-measure",
    )


def _pounds_of_paper(text: str, dimension: str) -> MeasureError | None:
    start = _AMOUNT.match(text)
    if not start or dimension != "grammage":
        return None
    number, words = start[0], text[start.end() :].split()
    if not words or not _POUNDS.fullmatch(words[0]):
        return None
    if words[1:] == ["kraft"]:
        readings = "; ".join(
            f"{number} {unit} ({basis}, {_grams(number, unit)})" for unit, basis in _KRAFT
        )
        return MeasureError(
            f"{shown(text)} has three readings; write the one of your mill: {readings}",
            "pounds-without-basis",
        )
    if len(words) == 1:
        return MeasureError(
            f"{shown(text)} says nothing without its basis size; give grams per square metre, "
            f"or name the basis: {number} lb text ({_grams(number, 'lb text')}), {number} lb "
            f"cover ({_grams(number, 'lb cover')}), {number} lb bond "
            f"({_grams(number, 'lb bond')})",
            "pounds-without-basis",
        )
    return None


_LOOKS: tuple[Callable[[str, str], MeasureError | None], ...] = (
    _blank,
    _not_finite,
    _signed,
    _comma,
    _bare_point,
    _exponent,
    _zero_divisor,
    _many_digits,
    _no_unit,
    _several,
    _pounds_of_paper,
)


def _unit(text: str, dimension: str) -> MeasureError:
    """The number is fine, or there is none: the unit is what is wrong."""
    kind, example, _ = _KINDS[dimension]
    start = _AMOUNT.match(text)
    if not start:
        return MeasureError(
            f"{shown(text)} is not {kind}; write a number and a unit, such as {example}",
            "not-a-measure",
        )
    number, word = start[0], " ".join(text[start.end() :].split())
    unit = UNITS.get(word)
    if unit and unit.dimension != dimension:
        hint = _HINTS.get((unit.name, dimension))
        return MeasureError(
            f"{shown(text)} is {_KINDS[unit.dimension][0]}; {kind} is expected, such as {example}"
            + (f" ({hint})" if hint else ""),
            "wrong-dimension",
        )
    if unit:
        return MeasureError(f"{shown(text)}: write {number} {word}", "not-a-measure")
    near = _nearest(word, dimension)
    advice = f"did you mean {near}?" if near else f"{kind} is written like {example}"
    return MeasureError(f"{shown(text)}: no unit is called {shown(word)}; {advice}", "unknown-unit")


def _nearest(word: str, dimension: str) -> str | None:
    """The allowed spelling nearest to ``word``, those of the dimension first."""
    mine = [text for text, unit in UNITS.items() if unit.dimension == dimension]
    for texts in (mine, list(UNITS)):
        folded = {text.lower(): text for text in reversed(texts)}
        for cutoff in (0.75, 0.6):
            close = get_close_matches(word.lower().strip("."), folded, n=1, cutoff=cutoff)
            if close:
                return folded[close[0]]
    return None


def _grams(number: str, unit: str) -> str:
    """``number`` of a unit of paper in g/m2, for a message."""
    return f"{float(UNITS[unit].canonical(exact(number)) * 1_000_000):.1f} g/m2"
