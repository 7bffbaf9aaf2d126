"""Problems as SARIF against the schema OASIS published for it, and as JSON against our own.

OASIS Open, Static Analysis Results Interchange Format (SARIF) Version 2.1.0, 2020 (errata 01,
2023): sarif-schema-2.1.0.json, see the .source.txt beside it. Numbers are its clauses, from memory.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any
from urllib.parse import quote, unquote

import pytest
from click.testing import CliRunner
from jsonschema import Draft7Validator, Draft202012Validator

from foredge.cli import main
from foredge.data import schema_text

TESTS = Path(__file__).parents[1]
SCHEMA = json.loads((Path(__file__).parent / "sarif-schema-2.1.0.json").read_text("utf-8"))
SPECS = sorted(
    sidecar.with_name(sidecar.name.replace(".errors.txt", ".yaml"))
    for folder in ("specs-valid", "specs-invalid")
    for sidecar in (TESTS / folder).glob("*.errors.txt")
)
SOME = [spec for spec in SPECS if b"# variant:" not in spec.read_bytes()][::9]
"""Every ninth will do: the form does not hang on what is wrong. A variant is asked for by name."""


def checked(*arguments: str) -> Any:
    result = CliRunner().invoke(main, ["check", *arguments])
    assert result.exception is None or isinstance(result.exception, SystemExit)
    return json.loads(result.stdout)


@pytest.mark.parametrize("spec", SOME, ids=lambda spec: spec.stem)
def test_what_is_printed_is_sarif_2_1_0(spec: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(spec.parent)
    log = checked(spec.name, "--format", "sarif")
    Draft7Validator(SCHEMA).validate(log)
    told = checked(spec.name, "--format", "json")
    (run,) = log["runs"]
    standing = [result for result in run["results"] if not result["suppressions"]]
    places = [result["locations"][0]["physicalLocation"] for result in standing]
    found = [
        (unquote(place["artifactLocation"]["uri"]), *place["region"].values(), result["level"])
        for place, result in zip(places, standing, strict=True)
    ]
    assert found == [
        tuple(one[key] for key in ("file", "line", "column", "severity")) for one in told
    ]


@pytest.mark.parametrize("spec", SOME, ids=lambda spec: spec.stem)
def test_json_problems_keep_their_own_schema(spec: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(spec.parent)
    schema = json.loads(schema_text("problems.schema.json"))
    Draft202012Validator.check_schema(schema)
    told = checked(spec.name, "--format", "json")
    assert told
    Draft202012Validator(schema).validate(told)


def test_the_schema_can_refuse() -> None:
    """3.14.6 and 3.27.10: a run needs its tool, a level is one of four words."""
    result = {"message": {"text": "a"}, "level": "fatal"}
    log = {"version": "2.1.0", "runs": [{"results": [result]}]}
    faults = {"/".join(map(str, one.path)) for one in Draft7Validator(SCHEMA).iter_errors(log)}
    assert faults == {"runs/0", "runs/0/results/0/level"}


def test_rules_are_found_by_their_index(monkeypatch: pytest.MonkeyPatch) -> None:
    """3.27.6: ruleIndex is the place of the rule in tool.driver.rules."""
    monkeypatch.chdir(TESTS / "specs-valid")
    specs = [spec.name for spec in SPECS if spec.parent.name == "specs-valid"][:12]
    (run,) = checked(*specs, "--format", "sarif")["runs"]
    rules = run["tool"]["driver"]["rules"]
    assert len({rule["id"] for rule in rules}) == len(rules) > 3
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]


def test_a_name_with_signs_in_it_becomes_a_uri(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """3.4.3 and RFC 3986, 2.1: what has a meaning in a URI is percent-encoded."""
    monkeypatch.chdir(tmp_path)
    name = "tide book: 100 % #1 é.yaml"
    Path(name).write_text("foredge: 1\ntytle: x\n", encoding="utf-8")
    log = checked(name, "--format", "sarif")
    Draft7Validator(SCHEMA).validate(log)
    uris = {
        one["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
        for one in log["runs"][0]["results"]
    }
    assert uris == {quote(name)} == {"tide%20book%3A%20100%20%25%20%231%20%C3%A9.yaml"}


def test_columns_count_characters(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """3.14.17: a sign beyond the basic plane is one column by unicodeCodePoints, two by UTF-16."""
    monkeypatch.chdir(tmp_path)
    Path("x.yaml").write_text('{foredge: 1, title: "\U0001f4d6", tytle: x}\n', encoding="utf-8")
    (run,) = checked("x.yaml", "--format", "sarif")["runs"]
    assert run["columnKind"] == "unicodeCodePoints"
    columns = [
        result["locations"][0]["physicalLocation"]["region"]["startColumn"]
        for result in run["results"]
        if result["ruleId"] == "unknown-key"
    ]
    assert columns == [26]
