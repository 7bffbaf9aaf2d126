"""Whether the schema of a plugin's options makes sense: known keywords, closed, described."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from jsonschema import Draft202012Validator
from jsonschema.exceptions import SchemaError as BadSchema

from foredge.contract.stock import STOCK_KINDS
from foredge.spec.schema_generate import Schema, SchemaError, plugin_schema
from foredge.spec.units import DIMENSIONS
from foredge.tables import TABLES

_ANNOTATIONS = frozenset(("$id", "$schema", "title", "description", "default", "examples"))
_OURS = frozenset(
    f"x-foredge-{word}" for word in ("file", "measure", "price", "zero", "stock", "row", "slot")
)
KEYWORDS = frozenset(Draft202012Validator.VALIDATORS) | _ANNOTATIONS | _OURS
_MEASURES = frozenset((*DIMENSIONS, "amount", "count", "thread-size"))
_STOCK = frozenset(str(kind.__struct_config__.tag) for kind in STOCK_KINDS)
_MAPS = ("properties", "patternProperties", "$defs")
_ONE = ("items", "additionalProperties", "propertyNames", "contains", "not")
_MANY = ("anyOf", "allOf", "oneOf", "prefixItems")


def unsound(plugin: Any) -> list[str]:
    """What is wrong with the schema of a plugin's options."""
    try:
        schema = plugin_schema(plugin)
        Draft202012Validator.check_schema(schema)
    except SchemaError as failure:
        return [str(failure)]
    except BadSchema as failure:
        place = ".".join(str(step) for step in failure.absolute_path)
        return [f"its options make no valid schema: {place}: {failure.message}"]
    return [fault for place, part in parts_of(schema) for fault in _faults(place, part)]


def parts_of(schema: Schema, place: str = "") -> Iterator[tuple[str, Schema]]:
    """Every schema inside ``schema``, itself first, with the options that lead to it."""
    yield place, schema
    for key in _MAPS:
        for name, part in schema.get(key, {}).items():
            yield from parts_of(part, f"{place}.{name}".lstrip("."))
    for key in _ONE:
        if isinstance(schema.get(key), dict):
            yield from parts_of(schema[key], f"{place}[]" if key == "items" else place)
    for key in _MANY:
        for part in schema.get(key, []):
            yield from parts_of(part, place)


def _faults(place: str, part: Schema) -> Iterator[str]:
    where = f"option '{place}'" if place else "its options"
    for keyword in part:
        if keyword not in KEYWORDS:
            yield f"{where}: the schema keyword '{keyword}' is not known"
    if "properties" in part and part.get("additionalProperties") is not False:
        yield f"{where}: unknown keys must be forbidden (forbid_unknown_fields=True)"
    if part.get("x-foredge-measure", "length") not in _MEASURES:
        yield f"{where}: there is no measure '{part['x-foredge-measure']}'"
    if part.get("x-foredge-row", TABLES[0]) not in TABLES:
        yield f"{where}: there is no reference table '{part['x-foredge-row']}'"
    for kind in part.get("x-foredge-stock", ()):
        if kind not in _STOCK:
            yield f"{where}: there is no kind of stock '{kind}'"


def undescribed(plugin: Any) -> list[str]:
    """The options of a plugin, nested ones too, that have no description."""
    return [
        f"{place}.{name}".lstrip(".")
        for place, part in parts_of(plugin_schema(plugin))
        for name, option in part.get("properties", {}).items()
        if name != "use" and not option.get("description")
    ]


def slots_of(plugin: Any) -> set[str]:
    """The kinds of plugin that the options of ``plugin`` ask for."""
    if getattr(plugin, "options", None) is None:
        return set()
    return {
        part["x-foredge-slot"]
        for _, part in parts_of(plugin_schema(plugin))
        if "x-foredge-slot" in part
    }
