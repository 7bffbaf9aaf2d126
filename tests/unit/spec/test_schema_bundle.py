"""The schema for editors says the same as the compiler, and the committed one is fresh."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings, strategies as st
from jsonschema import Draft202012Validator, FormatChecker

from foredge.data import schema_text
from foredge.registry import Registry, collect
from foredge.spec.inherit import load_spec
from foredge.spec.schema import check
from foredge.spec.schema_bundle import bundle, bundle_text, write
from foredge.spec.yaml_reader import read_yaml
from foredge.tables import load_tables
from unit.spec.invented_plugins import REGISTRY, SPEC

TESTS = Path(__file__).parents[2]
BUILT_INS, _ = collect(entry_points=False)
# Only the compiler sees the whole spec, so only it knows what stands under stock.
BEYOND_AN_EDITOR = ("unknown-stock", "wrong-stock-kind")


def editor(registry: Registry) -> Draft202012Validator:
    return Draft202012Validator(bundle(registry), format_checker=FormatChecker(["date"]))


EDITOR = editor(REGISTRY)
BUILT_IN_EDITOR = editor(BUILT_INS)


def refused(data: Any, registry: Registry) -> bool:
    found = check(data, registry, load_tables())
    return any(problem.rule not in BEYOND_AN_EDITOR for problem in found)


def test_the_committed_bundle_is_fresh() -> None:
    assert schema_text("book.schema.json") == bundle_text(BUILT_INS), (
        "run `foredge schema` and commit schemas/book.schema.json"
    )


def test_the_bundle_is_a_valid_schema_of_standard_keywords() -> None:
    schema = bundle(REGISTRY)
    Draft202012Validator.check_schema(schema)
    text = json.dumps(schema)
    assert "x-foredge" not in text
    names = set(schema["$defs"])
    references = {part for part in text.split('"') if part.startswith("#/$defs/")}
    assert {reference.removeprefix("#/$defs/") for reference in references} <= names


def test_it_is_the_same_each_time_and_written_as_it_is(tmp_path: Path) -> None:
    file = tmp_path / "book.schema.json"
    write(REGISTRY, file)
    assert file.read_bytes() == bundle_text(REGISTRY).encode()


def test_descriptions_reach_the_editor() -> None:
    defs = bundle(REGISTRY)["$defs"]
    assert defs["covering.wrap"]["properties"]["turn_in"]["description"] == "Over the edges."
    assert defs["slot.covering"]["properties"]["use"]["enum"] == ["half", "wrap"]


def specs() -> list[Path]:
    return sorted(
        file
        for folder in ("specs-valid", "specs-invalid", "../specs")
        for file in (TESTS / folder).glob("*.yaml")
    )


@pytest.mark.parametrize("file", specs(), ids=lambda file: file.name)
def test_bundle_and_dispatch_agree_on_every_spec(file: Path) -> None:
    document = load_spec(str(file))
    if document.data is None or document.problems:
        pytest.skip("it cannot be read, so no schema sees it")
    assert BUILT_IN_EDITOR.is_valid(document.data) is not refused(document.data, BUILT_INS)


def test_the_sample_is_valid_in_both() -> None:
    data = read_yaml(SPEC, "book.yaml").data
    assert EDITOR.is_valid(data)
    assert not refused(data, REGISTRY)


def places(data: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every path into ``data``."""
    found = [path] if path else []
    inside = enumerate(data) if isinstance(data, list) else ()
    for key, value in data.items() if isinstance(data, dict) else inside:
        found += places(value, (*path, key))
    return found


SAMPLE = read_yaml(SPEC, "book.yaml").data
PLACES = places(SAMPLE)
VALUES = st.one_of(
    st.sampled_from(
        ["none", "wrap", "half", "5 mm", "0 mm", "5", "200 tex", "25/3", "15 %", "canvas", "mon"]
    ),
    st.sampled_from(["24 h", "-3 degC", "1/2 in", "70 lb text", "2026-12-01", "A", "", "one side"]),
    st.integers(-2, 7),
    st.floats(allow_nan=False, allow_infinity=False, width=16),
    st.booleans(),
    st.none(),
    st.sampled_from([{}, [], {"use": "half"}, {"use": "wrap"}, {"kind": "tape"}, ["mon"]]),
    st.sampled_from([{"use": "half", "spine": "sail"}, {"kind": "tape", "width": "5 mm"}]),
)


@st.composite
def spoilt(draw: st.DrawFn) -> Any:
    """The sample with one to three things changed, taken out or added."""
    data = copy.deepcopy(SAMPLE)
    for _ in range(draw(st.integers(1, 3))):
        *way, last = draw(st.sampled_from(PLACES))
        target = data
        try:
            for step in way:
                target = target[step]
            action = draw(st.sampled_from(["set", "drop", "add", "swap"]))
            if action == "set":
                target[last] = draw(VALUES)
            elif action == "drop":
                del target[last]
            elif action == "add" and isinstance(target, dict):
                keys = ["use", "note", "extra", "head", "kind", "count"]
                target[draw(st.sampled_from(keys))] = draw(VALUES)
            else:
                target[last] = copy.deepcopy(draw(st.sampled_from(list(target.values()))))
        except (KeyError, IndexError, TypeError, AttributeError):
            continue
    return data


@settings(max_examples=300, deadline=None)
@given(spoilt())
def test_bundle_and_dispatch_agree_on_spoilt_samples(data: Any) -> None:
    assert EDITOR.is_valid(data) is not refused(data, REGISTRY)


@pytest.mark.parametrize(
    ("text", "valid"),
    [
        ("extends: base.yaml\ntitle: Another\n", True),
        ("extends: base.yaml\ncase: {covering: {turn_in: 20 mm, use: wrap}}\n", True),
        ("extends: base.yaml\ncase: {covering: null, square: 5 mm}\n", True),
        ("extends: base.yaml\ncase: {covering: {use: warp}}\n", False),
        ("extends: base.yaml\ncase: {sqare: 5 mm}\n", False),
        ("extends: base.yaml\ncase: {square: 5}\n", False),
        ("extends: base.yaml\nstock: {sail: {width: 2 m}}\n", True),
        ("extends: base.yaml\ncase: {more: [{}]}\n", False),
        (SPEC + "variants: {pocket: {case: {square: 3 mm}}, folio: null}\n", True),
        (SPEC + "variants: {pocket: {case: {square: 3}}}\n", False),
        (SPEC + "variants: {pocket: {variants: {}}}\n", True),
    ],
)
def test_overlays_need_not_be_whole(text: str, valid: bool) -> None:
    assert EDITOR.is_valid(read_yaml(text, "book.yaml").data) is valid
