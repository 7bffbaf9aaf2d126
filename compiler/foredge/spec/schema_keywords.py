"""What our own schema keywords mean, and the validator that knows them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

from jsonschema import Draft202012Validator, FormatChecker
from jsonschema.exceptions import ValidationError
from jsonschema.protocols import Validator
from jsonschema.validators import extend

from foredge.registry import Registry
from foredge.spec.measure import (
    Measure,
    MeasureError,
    parse_amount,
    parse_measure,
    parse_thread,
)
from foredge.spec.price import parse_price
from foredge.spec.schema_generate import Schema, plugin_schema, stock_schema
from foredge.spec.words import listed, meant, named, shown, unit_for
from foredge.tables import Near, Tables

Faults = Iterator[ValidationError]
Keyword = Callable[[Any, Any, Any, Any], Faults]


class Fault(ValidationError):
    """A fault that our own keywords found: already in words, with the name of its rule."""

    def __init__(self, text: str, rule: str, *, on_key: bool = False, at: str | None = None):
        super().__init__(text, path=() if at is None else (at,))
        self.rule = rule
        self.on_key = on_key


def read_measure(text: str, schema: Schema) -> Measure | MeasureError:
    """``text`` as the measure that ``schema`` asks for."""
    dimension = schema["x-foredge-measure"]
    if dimension == "thread-size":
        return parse_thread(text)
    if dimension == "amount":
        return parse_amount(text)
    return parse_measure(text, dimension, positive=not schema.get("x-foredge-zero", False))


def json_type(value: Any) -> str:
    """The JSON name of the type of ``value``."""
    match value:
        case bool():
            return "boolean"
        case str():
            return "string"
        case int() | float():
            return "number"
        case dict():
            return "object"
        case list() | tuple():
            return "array"
    return "null"


def types_of(schema: Schema) -> set[str]:
    """The JSON types that ``schema`` takes; ``number`` stands for whole numbers too."""
    if "anyOf" in schema:
        return set().union(*(types_of(branch) for branch in schema["anyOf"]))
    if "enum" in schema:
        return {json_type(value) for value in schema["enum"]}
    if "const" in schema:
        return {json_type(schema["const"])}
    said = schema.get("type", "object" if "x-foredge-slot" in schema else [])
    types = {said} if isinstance(said, str) else set(said)
    return {"number" if one == "integer" else one for one in types}


def tag_of(branches: list[Schema]) -> str | None:
    """The key by which all ``branches`` are told apart: ``use``, ``kind``; None if none is."""
    for key in ("use", "kind"):
        if all("enum" in branch.get("properties", {}).get(key, {}) for branch in branches):
            return key
    return None


def branch_for(value: Any, branches: list[Schema]) -> list[Schema]:
    """Those of ``branches`` that ``value`` can be meant for, by its type and its tag."""
    fitting = [branch for branch in branches if json_type(value) in types_of(branch)]
    tag = tag_of(fitting) if len(fitting) > 1 else None
    if tag is None or not isinstance(value, dict):
        return fitting
    return [
        branch for branch in fitting if value.get(tag) in branch["properties"][tag]["enum"]
    ] or fitting


def validator_for(data: Any, schema: Schema, registry: Registry, tables: Tables) -> Validator:
    """A validator of ``schema``; ``data`` is the whole spec, for the names under ``stock``."""
    stock = data.get("stock") if isinstance(data, dict) else None
    shelf = {
        name: item.get("kind") if isinstance(item, dict) else None
        for name, item in (stock.items() if isinstance(stock, dict) else ())
    }
    keywords: dict[str, Keyword] = {
        "type": _type,
        "anyOf": _any_of,
        "x-foredge-measure": _measure,
        "x-foredge-price": _price,
        "x-foredge-stock": _stock(shelf),
        "x-foredge-stock-item": _stock_item,
        "x-foredge-row": _row(tables),
        "x-foredge-slot": _slot(registry),
    }
    known = extend(Draft202012Validator, keywords)  # type: ignore[no-untyped-call]
    validator: Validator = known(schema, format_checker=FormatChecker(["date"]))
    return validator


def _type(validator: Any, types: Any, value: Any, schema: Schema) -> Faults:
    if isinstance(value, float) and not math.isfinite(value):
        yield Fault(f"{value} is not a number that can be used", "not-finite")
    elif types == "string" and ("x-foredge-measure" in schema or "x-foredge-price" in schema):
        return  # the measure says it better
    else:
        yield from Draft202012Validator.VALIDATORS["type"](validator, types, value, schema)


def _measure(validator: Any, dimension: str, value: Any, schema: Schema) -> Faults:
    if dimension == "count":
        return
    if isinstance(value, str):
        reading = read_measure(value, schema)
        if isinstance(reading, MeasureError):
            yield Fault(reading.text, reading.rule)
    elif json_type(value) == "number":
        # As text it has a number and no unit, which is what the parser's own words are for.
        reading = read_measure(str(value), schema)
        if isinstance(reading, MeasureError):
            yield Fault(reading.text, reading.rule)
        else:
            yield Fault(f"write it as a text: '{value}'", "wrong-type")
    else:
        yield Fault(f"{unit_for(dimension)} is expected here, not {named(value)}", "wrong-type")


def _price(validator: Any, wanted: bool, value: Any, schema: Schema) -> Faults:
    if isinstance(value, str) or json_type(value) == "number":
        # As text a number has no currency, which is what the parser's own words are for.
        reading = parse_price(str(value))
        if isinstance(reading, MeasureError):
            yield Fault(reading.text, reading.rule)
    else:
        yield Fault(f"{unit_for('price')} is expected here, not {named(value)}", "wrong-type")


def _any_of(validator: Any, branches: list[Schema], value: Any, schema: Schema) -> Faults:
    fitting = branch_for(value, branches)
    if not fitting:
        kinds = {kind: None for branch in branches for kind in sorted(types_of(branch))}
        words = " or ".join(named(type_=kind) for kind in kinds)
        yield Fault(f"{words} is expected here, not {named(value)}", "wrong-type")
        return
    tag = tag_of(fitting)
    if len(fitting) > 1 and tag is not None and isinstance(value, dict):
        yield from _tag(tag, value, [one for b in fitting for one in b["properties"][tag]["enum"]])
        return
    if len(fitting) == 1:
        yield from validator.descend(value, fitting[0])
        return
    found = [list(validator.descend(value, branch)) for branch in fitting]
    if all(found):
        yield from _nearest(value, fitting, found)


def _nearest(value: Any, branches: list[Schema], found: list[list[ValidationError]]) -> Faults:
    """Faults of the branch most likely meant, where several take the type that is written."""
    choices = [str(one) for branch in branches for one in branch.get("enum", ())]
    others = [
        faults for branch, faults in zip(branches, found, strict=True) if "enum" not in branch
    ]
    if choices and not others:
        yield Fault(f"'{value}' is not allowed here; {meant(value, choices)}", "not-allowed")
    elif choices and len(others[0]) == 1:
        text = getattr(others[0][0], "message", "")
        yield Fault(f"{text}; or write {listed(choices, 'or')}", _rule(others[0][0]))
    else:
        yield from min(others, key=len)


def _rule(fault: ValidationError) -> str:
    return fault.rule if isinstance(fault, Fault) else "not-allowed"


def _stock(shelf: dict[str, Any]) -> Keyword:
    def stock(validator: Any, kinds: list[str], value: Any, schema: Schema) -> Faults:
        if not isinstance(value, str):
            return
        wanted = listed([f"a {kind}" for kind in kinds], "or")
        fitting = [name for name, kind in shelf.items() if not kinds or kind in kinds]
        if value not in shelf:
            yield Fault(
                f"there is no '{value}' under stock; {meant(value, fitting, shelf)}",
                "unknown-stock",
            )
        elif value not in fitting and shelf[value] is not None:
            yield Fault(
                f"'{value}' is a {shelf[value]} under stock; {wanted} is needed here",
                "wrong-stock-kind",
            )

    return stock


def _stock_item(validator: Any, wanted: bool, value: Any, schema: Schema) -> Faults:
    if not isinstance(value, dict):
        text = f"a mapping is expected here, such as {{kind: sheet, ...}}, not {named(value)}"
        yield Fault(text, "wrong-type")
        return
    yield from validator.descend(value, stock_schema())


def _row(tables: Tables) -> Keyword:
    def row(validator: Any, table: str, value: Any, schema: Schema) -> Faults:
        if not isinstance(value, str):
            return
        found = tables.find(table, value)
        if isinstance(found, Near):
            words = meant(value, tables.names(table), near=found.names)
            yield Fault(f"the reference table '{table}' has no '{value}'; {words}", "unknown-row")

    return row


def _slot(registry: Registry) -> Keyword:
    def slot(validator: Any, kind: str, value: Any, schema: Schema) -> Faults:
        names = registry.names(kind)
        if not isinstance(value, dict):
            return
        if not names:
            yield Fault(
                f"no plugin of kind '{kind}' is there to be used", "unknown-use", on_key=True
            )
            return
        yield from _tag("use", value, names, kind)
        found = registry.find(kind, value["use"]) if isinstance(value.get("use"), str) else None
        if found is not None:
            yield from validator.descend(value, plugin_schema(found.plugin))

    return slot


def _tag(tag: str, value: Schema, names: Any, kind: str = "") -> Faults:
    """The fault of a mapping whose tag is missing or unknown; none where it is known."""
    if tag not in value:
        text = f"say which with {tag}: {listed(names, 'or')}"
        yield Fault(text, f"missing-{tag}", on_key=True)
    elif value[tag] not in names:
        what = kind.replace("-", " ") if kind else tag
        verb = "are" if what.endswith("s") else "is"
        text = f"no {what} {verb} called {shown(str(value[tag]))}; {meant(str(value[tag]), names)}"
        yield Fault(text, f"unknown-{tag}", at=tag)
