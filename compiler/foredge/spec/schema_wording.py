"""A validator's faults in plain words, each at the place that a maker would correct."""

from __future__ import annotations

from collections.abc import Callable
from difflib import get_close_matches
from typing import Any

from jsonschema.exceptions import ValidationError

from foredge.contract import Path, Problem, error
from foredge.spec.schema_keywords import Fault
from foredge.spec.words import listed, meant, named, shown, type_name


def worded(fault: ValidationError) -> list[Problem]:
    """The problems that one fault of the validator stands for: one an unknown key."""
    path: Path = tuple(fault.absolute_path)
    if isinstance(fault, Fault):
        return [error(path, fault.message, fault.rule, on_key=fault.on_key)]
    if "propertyNames" in fault.absolute_schema_path:
        return [_name(path, str(fault.instance))]
    write = _WORDS.get(str(fault.validator))
    if write is None:
        return [error(path, fault.message, "not-allowed")]
    return write(path, fault.validator_value, fault.instance, fault.schema)


def _name(path: Path, name: str) -> Problem:
    return error(
        (*path, name),
        f"the name {shown(name)} is not made of small letters, digits and hyphens, "
        "starting with a letter",
        "bad-name",
        on_key=True,
    )


def _type(path: Path, types: Any, value: Any, schema: Any) -> list[Problem]:
    wanted = [types] if isinstance(types, str) else types
    words = listed([type_name(one) for one in wanted], "or")
    text = f"{words} is expected here, not {named(value)}"
    advice = {}
    if wanted == ["integer"] and isinstance(value, str) and value.isdecimal() and value.isascii():
        advice["remedy"] = "Write it without quotes and without leading zeros"
    elif wanted == ["string"] and isinstance(value, int | float):
        advice["remedy"] = "Put it in quotes"
    elif "x-foredge-slot" in schema and isinstance(value, str):
        advice["remedy"] = f"Write {{use: {value}}}" if value.isprintable() else ""
    return [error(path, text, "wrong-type", **advice)]


def _required(path: Path, keys: list[str], value: Any, schema: Any) -> list[Problem]:
    # One fault a missing key, which does not say which: all are worded, and kept once.
    known = list(schema.get("properties", {}))
    misspelt = {near for key in value if key not in known for near in _near(key, known)}
    place = f"'{path[-1]}'" if path and isinstance(path[-1], str) else "this item"
    return [
        error(
            path,
            f"{place if path else 'the spec'} lacks '{key}'",
            "missing-key",
            on_key=True,
            remedy=_described(schema, key),
        )
        for key in keys
        if key not in value and key not in misspelt
    ]


def _described(schema: Any, key: str) -> str:
    said = str(schema.get("properties", {}).get(key, {}).get("description", ""))
    first = said.partition("\n")[0].rstrip(".")
    return f"Add {key}: {first[:1].lower()}{first[1:]}" if first else ""


def _unknown_keys(path: Path, allowed: Any, value: Any, schema: Any) -> list[Problem]:
    known = list(schema.get("properties", {}))
    return [
        error(
            (*path, key),
            f"there is no key {shown(key)} here; {_key_meant(key, known)}",
            "unknown-key",
            on_key=True,
        )
        for key in value
        if key not in known
    ]


def _key_meant(key: str, known: list[str]) -> str:
    near = _near(key, known)
    return f"did you mean '{near[0]}'?" if near else f"the keys here are {listed(known)}"


def _near(key: str, known: list[str]) -> list[str]:
    return get_close_matches(key.lower().replace("-", "_"), known, n=1)


def _enum(path: Path, allowed: list[Any], value: Any, schema: Any) -> list[Problem]:
    said = shown(value) if isinstance(value, str) else named(value)
    words = meant(str(value), [str(one) for one in allowed])
    if words.startswith("there"):
        words = f"write {listed([str(one) for one in allowed], 'or')}"
    return [error(path, f"{said} is not allowed here; {words}", "not-allowed")]


def _const(path: Path, wanted: Any, value: Any, schema: Any) -> list[Problem]:
    if path == ("foredge",):
        text = f"{named(value)} is no version of the spec that is known here; write foredge: 1"
        return [error(path, text, "unknown-version")]
    return [error(path, f"{named(value)} is not allowed here; write {wanted}", "not-allowed")]


def _limit(words: str) -> Callable[[Path, Any, Any, Any], list[Problem]]:
    def limit(path: Path, bound: Any, value: Any, schema: Any) -> list[Problem]:
        text = (
            f"{named(value).removeprefix('the number ')} is not allowed: it must be {words} {bound}"
        )
        return [error(path, text, "out-of-range")]

    return limit


def _length(words: str) -> Callable[[Path, Any, Any, Any], list[Problem]]:
    def length(path: Path, bound: Any, value: Any, schema: Any) -> list[Problem]:
        unit = "character" if isinstance(value, str) else "item"
        plural = "" if bound == 1 else "s"
        there = "is none" if not value else f"{'is' if len(value) == 1 else 'are'} {len(value)}"
        text = f"{words} {bound} {unit}{plural} must stand here; there {there}"
        return [error(path, text, "wrong-length")]

    return length


def _pattern(path: Path, pattern: str, value: Any, schema: Any) -> list[Problem]:
    meaning = str(schema.get("description", "")).rstrip(".")
    words = f"; expected is: {meaning[:1].lower()}{meaning[1:]}" if meaning else ""
    return [error(path, f"{shown(value)} does not have the form asked for{words}", "wrong-form")]


def _format(path: Path, wanted: str, value: Any, schema: Any) -> list[Problem]:
    example = " such as 2026-12-01" if wanted == "date" else ""
    return [error(path, f"{shown(value)} is not a {wanted}{example}", "wrong-form")]


def _unique(path: Path, wanted: bool, value: Any, schema: Any) -> list[Problem]:
    for place, item in enumerate(value):
        if item in value[:place]:
            return [error((*path, place), f"{named(item)} stands here twice", "twice")]
    return []


_WORDS: dict[str, Callable[[Path, Any, Any, Any], list[Problem]]] = {
    "type": _type,
    "required": _required,
    "additionalProperties": _unknown_keys,
    "enum": _enum,
    "const": _const,
    "minimum": _limit("at least"),
    "maximum": _limit("at most"),
    "exclusiveMinimum": _limit("more than"),
    "exclusiveMaximum": _limit("less than"),
    "minLength": _length("at least"),
    "maxLength": _length("at most"),
    "minItems": _length("at least"),
    "maxItems": _length("at most"),
    "minProperties": _length("at least"),
    "maxProperties": _length("at most"),
    "pattern": _pattern,
    "format": _format,
    "uniqueItems": _unique,
}
