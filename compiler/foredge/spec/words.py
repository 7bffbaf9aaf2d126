"""Words for messages: what a YAML value is called, and what was probably meant."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from typing import Any

_TYPES = {
    "string": "a text",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "object": "a mapping",
    "array": "a list",
    "null": "nothing",
}
_MEASURES = {
    "length": "a length such as 150 mm",
    "mass": "a mass such as 80 g",
    "time": "a time such as 24 h",
    "area": "an area such as 300 cm2",
    "volume": "a volume such as 60 ml",
    "grammage": "a grammage such as 90 g/m2",
    "density": "a density such as 0.7 g/cm3",
    "linear-density": "a thread size such as 200 tex",
    "thread-size": "a thread size such as 25/3 or 200 tex",
    "temperature": "a temperature such as 18 degC",
    "angle": "an angle such as 45 deg",
    "ratio": "a share such as 15 %",
    "amount": "an amount such as 250 ml, 500 g or 10 m",
    "price": "a price such as 4.50 EUR",
}
_MANY = 12
_LONG = 40


def listed(names: Iterable[str], last: str = "and") -> str:
    """``a, b and c``."""
    words = list(names)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def meant(
    said: str, names: Iterable[str], also: Iterable[str] = (), near: Sequence[str] = ()
) -> str:
    """``did you mean 'x'?``, else what there is; ``also`` is looked through for the first only."""
    known = list(names)
    close = (
        list(near)
        or get_close_matches(said, known, n=1)
        or get_close_matches(said.lower().replace("_", "-").replace(" ", "-"), [*known, *also], n=1)
    )
    if close:
        return f"did you mean '{close[0]}'?"
    if not known:
        return "there is none"
    if len(known) > _MANY:
        return f"there are {', '.join(known[:_MANY])} and {len(known) - _MANY} more"
    return f"there {'is' if len(known) == 1 else 'are'} {listed(known)}"


def type_name(type_: str) -> str:
    """What a JSON type is called in a spec."""
    return _TYPES[type_]


def unit_for(dimension: str) -> str:
    """What a measure of ``dimension`` is called, with an example."""
    return _MEASURES[dimension]


def named(value: Any = None, *, type_: str | None = None) -> str:
    """What a value of a spec is called: ``the text 'x'``, ``a list``; or a type by its name."""
    if type_ is not None:
        return _TYPES[type_]
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f"the text {shown(value)}"
        case int() | float():
            return f"the number {shown_number(value)}"
        case dict():
            return "a mapping"
        case list():
            return "a list"
    return "nothing"


def shown(text: str) -> str:
    """``text`` in quotes, on one line, cut when long."""
    plain = text if text.isprintable() else ascii(text)[1:-1]
    return f"'{plain}'" if len(plain) <= _LONG else f"'{plain[: _LONG - 3]}...'"


def shown_number(value: float) -> str:
    """A number, cut when absurd."""
    if isinstance(value, int) and value.bit_length() > 64:
        return "of more than 19 digits"
    return f"{value}"
