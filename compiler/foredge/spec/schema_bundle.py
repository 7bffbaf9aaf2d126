"""One schema for editors: the envelope, and every plugin's options under ``$defs``.

It says in standard keywords what the compiler checks with its own: a measure becomes a
pattern, a row of a table one of a list, a slot an ``if``/``then`` for each ``use``. Only what
depends on the rest of the spec is left out: that a name stands under ``stock``.

A spec that ``extends`` another, and each of its ``variants``, is held against the same
definitions with nothing required and ``null`` allowed, under the prefix ``partial.``.
"""

from __future__ import annotations

import json
from pathlib import Path as FilePath
from typing import Any

from foredge.registry import Registered, Registry
from foredge.spec.measure import amount_pattern, measure_pattern, thread_pattern
from foredge.spec.price import PRICE_PATTERN
from foredge.spec.schema import spec_schema
from foredge.spec.schema_generate import DIALECT, Schema, plugin_schema, stock_schema
from foredge.spec.schema_keywords import tag_of
from foredge.spec.words import unit_for
from foredge.tables import load_tables

_DEFS = "#/$defs/"
_PARTIAL = "partial."
_SCALARS = ("measure.", "row.")
_REUSE: Schema = {
    "extends": {"type": "string", "description": "The spec that this one is laid over."},
    "variants": {
        "type": "object",
        "description": "Overlays by name; each says only what differs.",
        "additionalProperties": {
            "if": {"not": {"type": "null"}},
            "then": {"$ref": f"{_DEFS}{_PARTIAL}book"},
        },
    },
}


def bundle(registry: Registry) -> Schema:
    """The whole schema of a spec, with the plugins of ``registry``."""
    defs: Schema = {}
    book = _editor(spec_schema(registry), registry, defs)
    for key in ("$id", "$schema", "title", "description"):
        book.pop(key, None)
    book["properties"] = {**book["properties"], **_REUSE}
    defs["book"] = book
    partial = {
        _PARTIAL + name: _relaxed(schema)
        for name, schema in defs.items()
        if not name.startswith(_SCALARS)
    }
    return {
        "$schema": DIALECT,
        "$id": "urn:foredge:book",
        "title": "Foredge spec",
        "description": "One handmade, decorated book.",
        "type": "object",
        "if": {"required": ["extends"]},
        "then": {"$ref": f"{_DEFS}{_PARTIAL}book"},
        "else": {"$ref": f"{_DEFS}book"},
        "$defs": dict(sorted({**defs, **partial}.items())),
    }


def bundle_text(registry: Registry) -> str:
    """The bundle as it is committed and written: the same bytes each time."""
    return json.dumps(bundle(registry), indent=1, ensure_ascii=False) + "\n"


def write(registry: Registry, file: str | FilePath) -> None:
    """Write the bundle to ``file``; raises OSError where that cannot be done."""
    FilePath(file).write_text(bundle_text(registry), encoding="utf-8", newline="\n")


def _editor(schema: Any, registry: Registry, defs: Schema) -> Any:
    """``schema`` in standard keywords; what it refers to is added to ``defs``."""
    if isinstance(schema, list):
        return [_editor(one, registry, defs) for one in schema]
    if not isinstance(schema, dict):
        return schema
    reference = _reference(schema, registry, defs)
    if reference is not None:
        said = {key: schema[key] for key in ("description",) if key in schema}
        return {"$ref": _DEFS + reference, **said}
    branches = schema.get("anyOf")
    if branches is not None and tag_of(branches) is not None:
        rest = {key: value for key, value in schema.items() if key != "anyOf"}
        return {**rest, **_dispatch(branches, registry, defs)}
    made: Schema = {}
    for key, value in schema.items():
        if key.startswith("x-foredge-") or key == "$id":
            continue
        if key == "properties":
            made[key] = {name: _editor(one, registry, defs) for name, one in value.items()}
        elif key in ("enum", "const", "default", "required", "examples"):
            made[key] = value
        else:
            made[key] = _editor(value, registry, defs)
    return made


def _reference(schema: Schema, registry: Registry, defs: Schema) -> str | None:
    """The name under ``$defs`` of what one of our own keywords stands for."""
    measure = schema.get("x-foredge-measure")
    if measure is not None and measure != "count":
        zero = schema.get("x-foredge-zero", False)
        name = f"measure.{measure}{'-or-zero' if zero else ''}"
        own = {"thread-size": thread_pattern, "amount": amount_pattern}.get(measure)
        pattern = measure_pattern(measure, positive=not zero) if own is None else own()
        defs[name] = {"type": "string", "description": unit_for(measure), "pattern": pattern}
        return name
    if "x-foredge-price" in schema:
        said = {"type": "string", "description": unit_for("price"), "pattern": PRICE_PATTERN}
        defs["measure.price"] = said
        return "measure.price"
    if "x-foredge-row" in schema:
        name = f"row.{schema['x-foredge-row']}"
        defs[name] = {"enum": list(load_tables().names(schema["x-foredge-row"]))}
        return name
    if "x-foredge-slot" in schema:
        return _slot(schema["x-foredge-slot"], registry, defs)
    if "x-foredge-stock-item" in schema:
        if "stock-item" not in defs:
            defs["stock-item"] = _editor(stock_schema(), registry, defs)
        return "stock-item"
    return None


def _slot(kind: str, registry: Registry, defs: Schema) -> str:
    name = f"slot.{kind}"
    if name in defs:
        return name
    defs[name] = {}  # a plugin may have a slot of its own kind
    plugins = [found for use in registry.names(kind) if (found := registry.find(kind, use))]
    for found in plugins:
        schema = _editor(plugin_schema(found.plugin), registry, defs)
        defs[f"{kind}.{found.plugin.name}"] = {"title": found.plugin.title, **schema}
    defs[name] = _choice(kind, plugins) if plugins else {"not": {}}
    return name


def _choice(kind: str, plugins: list[Registered]) -> Schema:
    """A mapping whose ``use`` decides which plugin's schema it is held against."""
    names = [found.plugin.name for found in plugins]
    titles = "; ".join(f"{found.plugin.name}: {found.plugin.title}" for found in plugins)
    return {
        "type": "object",
        "properties": {"use": {"description": titles, "enum": names}},
        "required": ["use"],
        "allOf": [_when("use", [name], {"$ref": f"{_DEFS}{kind}.{name}"}) for name in names],
    }


def _dispatch(branches: list[Schema], registry: Registry, defs: Schema) -> Schema:
    """A union told apart by ``use`` or ``kind``, as a choice in standard keywords."""
    tag = tag_of(branches)
    assert tag is not None
    tags = [branch["properties"][tag]["enum"] for branch in branches]
    return {
        "type": "object",
        "properties": {tag: {"enum": [one for names in tags for one in names]}},
        "required": [tag],
        "allOf": [
            _when(tag, names, _editor(branch, registry, defs))
            for names, branch in zip(tags, branches, strict=True)
        ],
    }


def _when(tag: str, names: list[str], then: Schema) -> Schema:
    return {"if": {"properties": {tag: {"enum": names}}, "required": [tag]}, "then": then}


def _relaxed(schema: Any) -> Any:
    """``schema`` for something that is laid over something else; lists replace, so stay whole."""
    made: Schema = {}
    for key, value in schema.items():
        if key == "required":
            continue
        if key == "$ref":
            name = value.removeprefix(_DEFS)
            whole = name.startswith((*_SCALARS, _PARTIAL))
            made[key] = value if whole else f"{_DEFS}{_PARTIAL}{name}"
        elif key == "properties":
            made[key] = {name: _or_null(one) for name, one in value.items()}
        elif key == "additionalProperties" and isinstance(value, dict):
            made[key] = _or_null(value)
        elif key in ("allOf", "anyOf"):
            made[key] = [_relaxed(one) for one in value]
        elif key == "then":
            made[key] = _relaxed(value)
        else:
            made[key] = value
    return made


def _or_null(schema: Schema) -> Schema:
    return {"if": {"not": {"type": "null"}}, "then": _relaxed(schema)}
