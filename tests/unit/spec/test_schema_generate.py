"""The schema of a plugin comes out of its options class alone: closed, inlined, described."""

from __future__ import annotations

import json
from typing import Annotated, Any

import jsonschema
import msgspec
import pytest
from msgspec import Meta

from foredge.contract import Length, Options, PartOptions, stock_name, table_row
from foredge.contract.stock import STOCK_KINDS
from foredge.data import schema_text
from foredge.plugin_check import faults_of
from foredge.spec.schema_generate import (
    SchemaError,
    envelope_schema,
    plugin_schema,
    stock_schema,
    struct_schema,
)
from foredge.spec.schema_keywords import json_type
from foredge.spec.schema_sound import KEYWORDS, parts_of, slots_of, undescribed
from foredge.testing import check_plugin
from unit.spec.invented_plugins import Case, Half, Layer, Wrap


def test_the_schema_of_a_plugin() -> None:
    assert plugin_schema(Half()) == {
        "$id": "urn:foredge:covering:half",
        "description": "A covering in two pieces.",
        "type": "object",
        "properties": {
            "use": {"enum": ["half"]},
            "note": {
                "description": "A remark of the maker's; printed in the sheet.",
                "type": "string",
            },
            "spine": {
                "type": "string",
                "x-foredge-stock": ["cloth"],
                "description": "Which cloth.",
            },
        },
        "required": ["use", "spine"],
        "additionalProperties": False,
    }


def test_nothing_is_referred_to_and_null_is_not_a_value() -> None:
    text = json.dumps([plugin_schema(Wrap()), plugin_schema(Case()), stock_schema()])
    for word in ("$ref", "$defs", "null", "discriminator", "Part["):
        assert word not in text


def test_every_part_is_closed() -> None:
    for schema in (plugin_schema(Wrap()), plugin_schema(Case()), stock_schema()):
        for _, part in parts_of(schema):
            if "properties" in part:
                assert part["additionalProperties"] is False


def test_descriptions_and_slots() -> None:
    assert undescribed(Wrap()) == []
    assert slots_of(Case()) == {"covering"}
    layers = plugin_schema(Wrap())["properties"]["layers"]
    assert layers["items"]["properties"]["count"]["description"] == "How many."


def test_the_stock_is_described() -> None:
    bare = [
        f"{place}.{name}"
        for place, part in parts_of(stock_schema())
        for name, option in part.get("properties", {}).items()
        if name != "kind" and not option.get("description")
    ]
    assert bare == []
    assert len(stock_schema()["anyOf"]) == len(STOCK_KINDS)


def test_the_envelope_is_a_valid_schema_and_closed_and_described() -> None:
    envelope = json.loads(schema_text("envelope.schema.json"))
    jsonschema.Draft202012Validator.check_schema(envelope)
    known = KEYWORDS | {"x-foredge-stock-item"}
    for key in ("bench", "money"):
        assert envelope["properties"][key].keys() == {"description", "type"}
        envelope["properties"][key] = envelope_schema()["properties"][key]
    for place, part in parts_of(envelope):
        assert set(part) <= known, place
        if "properties" in part:
            assert part["additionalProperties"] is False, place
        for name, option in part.get("properties", {}).items():
            assert option.get("description"), f"{place}.{name}"
    assert envelope_schema() == envelope


def plugin_with(options: type[msgspec.Struct]) -> Any:
    class Odd(Wrap):
        name = str(options.__struct_config__.tag)

    odd = Odd()
    odd.options = options  # type: ignore[misc, assignment]
    return odd


class Loop(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """Contains itself."""

    inner: Loop | None = None


class LoopOptions(PartOptions, tag="loop", frozen=True, kw_only=True):
    loop: Annotated[Loop, Meta(description="L.")] | None = None


class OpenPart(msgspec.Struct, frozen=True):
    """Takes any key."""

    a: int = 1


class OpenOptions(PartOptions, tag="open", frozen=True, kw_only=True):
    part: Annotated[OpenPart, Meta(description="P.")] | None = None


class KeywordOptions(PartOptions, tag="keyword", frozen=True, kw_only=True):
    a: Annotated[int, Meta(extra_json_schema={"requird": ["x"]})] = 1


class BrokenOptions(PartOptions, tag="broken", frozen=True, kw_only=True):
    a: Annotated[int, Meta(extra_json_schema={"maximum": "five"})] = 1


class RowOptions(PartOptions, tag="row", frozen=True, kw_only=True):
    a: Annotated[str, table_row("clothes")] = "x"


class StockOptions(PartOptions, tag="stock", frozen=True, kw_only=True):
    a: Annotated[str, stock_name("clothe")] = "x"


class CustomOptions(PartOptions, tag="custom", frozen=True, kw_only=True):
    a: Length | str | None = None


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (LoopOptions, "'Loop' contains itself"),
        (OpenOptions, "option 'part': unknown keys must be forbidden"),
        (KeywordOptions, "option 'a': the schema keyword 'requird' is not known"),
        (BrokenOptions, "its options make no valid schema: properties.a.maximum"),
        (RowOptions, "option 'a': there is no reference table 'clothes'"),
        (StockOptions, "option 'a': there is no kind of stock 'clothe'"),
        (CustomOptions, "no schema can be made of its options: Type unions"),
    ],
)
def test_an_unsound_schema_is_told(options: type[msgspec.Struct], words: str) -> None:
    faults = faults_of(plugin_with(options), thorough=True)
    assert len(faults) == 1
    assert words in faults[0]


def test_check_plugin_wants_descriptions() -> None:
    class Bare(PartOptions, tag="bare", frozen=True, kw_only=True):
        width: Length | None = None

    check_plugin(Wrap())
    check_plugin(Case())
    with pytest.raises(AssertionError, match="the option 'width' has no description"):
        check_plugin(plugin_with(Bare))


def test_a_type_without_a_schema() -> None:
    class Odd(Options, frozen=True, kw_only=True):
        thing: object | complex = 1j

    with pytest.raises(SchemaError):
        struct_schema(Odd)


def test_types_by_their_json_names() -> None:
    values = [True, "a", 1, 1.5, {}, [], None]
    assert [json_type(value) for value in values] == [
        "boolean",
        "string",
        "number",
        "number",
        "object",
        "array",
        "null",
    ]
    assert struct_schema(Layer)["type"] == "object"
