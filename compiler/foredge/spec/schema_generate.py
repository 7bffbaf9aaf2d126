"""JSON Schemas out of options classes: the one source of what a spec may say.

msgspec writes the schema; here it is made closed, self-contained (nothing is referred to)
and free of ``null``, since an absent key is how a spec says that there is none.
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any, Union

import msgspec

from foredge.contract.bench import Bench
from foredge.contract.money import Purse
from foredge.contract.stock import STOCK_KINDS
from foredge.data import schema_text

Schema = dict[str, Any]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_REFERENCE = "#/$defs/"
_DROPPED = ("title", "discriminator")

ANY_STOCK: Any = Union[STOCK_KINDS]  # noqa: UP007 - a union of whatever kinds there are
"""Any item of the shelf, as a type."""


class SchemaError(Exception):
    """An options class that no schema can be made of; the text says why."""


@cache
def options_schema(kind: str, name: str, options: type[msgspec.Struct]) -> Schema:
    """The closed schema of a plugin's options, with ``$id`` ``urn:foredge:<kind>:<name>``.

    Raises :class:`SchemaError` where the class cannot be described.
    """
    schema = {"$id": f"urn:foredge:{kind}:{name}", **struct_schema(options)}
    if kind == "stage":
        # Every stage has the same base; what its section is belongs to the stage's docstring.
        schema.setdefault("description", f"The stage {name}.")
    return schema


def plugin_schema(plugin: Any) -> Schema:
    """The schema of a plugin's options."""
    return options_schema(plugin.kind, plugin.name, plugin.options)


@cache
def stock_schema() -> Schema:
    """The schema of one item under ``stock:``, told apart by ``kind``."""
    return struct_schema(ANY_STOCK)


@cache
def envelope_schema() -> Schema:
    """The hand-written schema of a spec, ``bench`` and ``money`` in it, without the plugins'."""
    schema: Schema = json.loads(schema_text("envelope.schema.json"))
    known = schema["properties"]
    for key, struct in (("bench", Bench), ("money", Purse)):
        known[key] = {**struct_schema(struct), "description": known[key]["description"]}
    return schema


def struct_schema(struct: Any) -> Schema:
    """The schema of any type msgspec knows, inlined."""
    try:
        (top,), parts = msgspec.json.schema_components(
            [struct], schema_hook=lambda _: {"title": "custom"}, ref_template=_REFERENCE + "{name}"
        )
    except (TypeError, NameError, RecursionError) as failure:
        reason = " ".join(str(failure).split())
        raise SchemaError(f"no schema can be made of its options: {reason}") from failure
    schema: Schema = _inline(top, parts, ())
    return schema


def _inline(schema: Any, parts: dict[str, Schema], inside: tuple[str, ...]) -> Any:
    """``schema`` with everything it refers to put in its place."""
    if isinstance(schema, list):
        return [_inline(item, parts, inside) for item in schema]
    if not isinstance(schema, dict):
        return schema
    if "x-foredge-slot" in schema:
        # What msgspec says of Part itself is of no use to anyone who writes a spec.
        kept = {k: v for k, v in schema.items() if k in ("x-foredge-slot", "description")}
        return {"type": "object", **kept}
    if "$ref" in schema:
        name = schema["$ref"].removeprefix(_REFERENCE)
        if name in inside:
            raise SchemaError(f"no schema can be made of its options: '{name}' contains itself")
        rest = {key: value for key, value in schema.items() if key != "$ref"}
        return _inline({**parts[name], **rest}, parts, (*inside, name))
    return _plain(schema, parts, inside)


def _plain(schema: Schema, parts: dict[str, Schema], inside: tuple[str, ...]) -> Schema:
    made: Schema = {}
    for key, value in schema.items():
        if key in _DROPPED or (key == "default" and value in (None, [], {})):
            continue
        if key == "properties":
            made[key] = {name: _inline(one, parts, inside) for name, one in value.items()}
        elif key in ("enum", "default", "required", "const", "examples"):
            made[key] = value
        else:
            made[key] = _inline(value, parts, inside)
    return _without_null(made)


def _without_null(schema: Schema) -> Schema:
    branches = schema.get("anyOf")
    if branches is None:
        return schema
    left = [branch for branch in branches if branch != {"type": "null"}]
    if len(left) > 1:
        return {**schema, "anyOf": left}
    rest = {key: value for key, value in schema.items() if key != "anyOf"}
    return {**left[0], **rest}
