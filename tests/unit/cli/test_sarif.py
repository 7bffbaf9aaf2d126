"""SARIF: accepted problems, exit status, the same bytes, and the build command."""

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from foredge.cli import main
from foredge.cli.sarif import uri_of

PLAIN = (Path(__file__).parents[2] / "specs-valid" / "plain-journal.yaml").read_text("utf-8")
SWELL = "swell-large"


@pytest.fixture(autouse=True)
def bench(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """``taken.yaml`` accepts its swell, ``standing.yaml`` is the same and does not."""
    monkeypatch.chdir(tmp_path)
    before, accept = PLAIN.split("accept:\n")
    assert SWELL in accept
    Path("standing.yaml").write_text(before, encoding="utf-8")
    Path("taken.yaml").write_text(PLAIN, encoding="utf-8")


def run(*arguments: str) -> Result:
    result = CliRunner().invoke(main, arguments)
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result


def cool() -> None:
    """``cold.yaml``: the room is too cool for its paint, which is a warning."""
    painted = "finishing: [{use: prime}, {use: base-coat}]\n"
    room = "bench: {room: {temperature: 12 degC}}\n"
    Path("cold.yaml").write_text(PLAIN + painted + room, encoding="utf-8")


def swell(result: Result) -> dict[str, Any]:
    found: list[dict[str, Any]] = json.loads(result.stdout)["runs"][0]["results"]
    (one,) = (each for each in found if each["ruleId"] == SWELL)
    return one


def test_an_accepted_problem_is_a_suppressed_result() -> None:
    standing, taken = (
        swell(run("check", spec, "--format", "sarif")) for spec in ("standing.yaml", "taken.yaml")
    )
    assert standing["suppressions"] == []
    assert taken["suppressions"] == [
        {"kind": "inSource", "justification": "letters are pasted in later"}
    ]
    for key in ("level", "message", "properties"):
        assert standing[key] == taken[key]
    regions = [one["locations"][0]["physicalLocation"]["region"] for one in (standing, taken)]
    assert regions[0] == regions[1]


def test_the_log_is_the_same_each_time_and_each_variant_is_told_once() -> None:
    Path("taken.yaml").write_text(f"{PLAIN}variants: {{other: {{title: Other}}}}\n", "utf-8")
    arguments = ("check", "taken.yaml", "--variant", "all", "--format", "sarif")
    first, second = run(*arguments), run(*arguments)
    assert first.stdout_bytes == second.stdout_bytes
    assert swell(first)["suppressions"]


def test_a_rule_plugin_is_described_by_itself() -> None:
    cool()
    log = json.loads(run("check", "cold.yaml", "--format", "sarif").stdout)
    (rule,) = (
        rule for rule in log["runs"][0]["tool"]["driver"]["rules"] if rule["id"] == "room-cold"
    )
    assert rule["name"] == "RoomCold"
    assert rule["shortDescription"] == {"text": "A room too cold for acrylic."}
    assert "Golden Artist Colors" in rule["help"]["text"]
    assert rule["defaultConfiguration"] == {"level": "error"}
    (result,) = (one for one in log["runs"][0]["results"] if one["ruleId"] == "room-cold")
    assert result["level"] == "warning"


def test_exit_status_and_silence_are_as_with_text() -> None:
    assert run("check", "taken.yaml", "--format", "sarif").exit_code == 0
    cool()
    assert run("check", "cold.yaml", "--format", "sarif").exit_code == 0
    assert run("check", "cold.yaml", "--format", "sarif", "--strict").exit_code == 1
    Path("wrong.yaml").write_text("foredge: 1\n", encoding="utf-8")
    result = run("check", "wrong.yaml", "--format", "sarif")
    assert (result.exit_code, result.stderr) == (1, "")


def test_build_prints_nothing_else_on_standard_output() -> None:
    result = run("build", "standing.yaml", "--out", "out", "--format", "sarif")
    assert result.exit_code == 0
    assert swell(result)["level"] in ("note", "warning")
    assert Path("out/standing/build-sheet.md").is_file()


def test_a_plugin_that_is_refused_is_told_in_sarif_too() -> None:
    Path("bad.py").write_text("PLUGIN = object()\n", encoding="utf-8")
    result = run("check", "taken.yaml", "--plugin", "bad.py", "--format", "sarif")
    assert result.exit_code == 1
    assert {one["ruleId"] for one in json.loads(result.stdout)["runs"][0]["results"]} == {
        "plugin-refused"
    }


def test_the_list_of_rules_is_no_sarif() -> None:
    assert run("check", "--rules", "--format", "sarif").exit_code == 2


def test_a_file_elsewhere_is_named_whole(tmp_path: Path) -> None:
    inside = tmp_path / "in"
    inside.mkdir()
    assert uri_of("a b.yaml", inside) == "a%20b.yaml"
    assert uri_of(str(inside / "x.yaml"), inside) == "x.yaml"
    assert uri_of("../base.yaml", inside) == (tmp_path / "base.yaml").as_uri()
