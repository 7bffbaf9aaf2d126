"""``foredge check --rules`` leaves no rule out that any spec has ever set off."""

import json
import re
from pathlib import Path

from click.testing import CliRunner

from foredge.cli import main
from foredge.reported import reported

TESTS = Path(__file__).parents[1]


def test_every_rule_that_fires_is_listed_with_its_severity() -> None:
    result = CliRunner().invoke(main, ["check", "--rules", "--format", "json"])
    listed = {row["name"]: row["severity"] for row in json.loads(result.stdout)}
    assert len(listed) == len(json.loads(result.stdout))
    for sidecar in TESTS.glob("specs-*/*.errors.txt"):
        for severity, rule in re.findall(
            r": (error|warning|note): .*\[([a-z0-9-]+)\]$", sidecar.read_text("utf-8"), re.MULTILINE
        ):
            assert rule in listed, (sidecar.name, rule)
            plugin = rule in _PLUGINS
            assert plugin or severity in listed[rule].split(" or "), (sidecar.name, rule)


_PLUGINS = {
    file.stem.replace("_", "-")
    for file in (TESTS.parents[0] / "plugins" / "foredge_rules").glob("*.py")
}
"""A plugin may tell what it finds more gently than its usual severity."""


def test_names_are_found_where_they_are_made_or_handed_on(tmp_path: Path) -> None:
    code = tmp_path / "made.py"
    code.write_text(
        "ONE = 'by-constant'\n"
        "class Bad:\n"
        "    text: str\n"
        "    rule: str\n"
        "def plain(path):\n"
        "    return warning(path, 'text', 'as-literal', source='common practice')\n"
        "def chosen(path, hot):\n"
        "    tell = warning if hot else note\n"
        "    return tell(path, 'text', 'as-chosen')\n"
        "def constant(path):\n"
        "    return note(path, 'text', ONE)\n"
        "def _handed(path, rule):\n"
        "    return error(path, 'text', rule)\n"
        "def hands(path):\n"
        "    return _handed(path, 'as-argument'), _handed(path, rule='as-keyword')\n"
        "def carried():\n"
        "    return Bad('text', 'in-carrier')\n"
        "def other(path):\n"
        "    return note('no-name-here', 'nor-here', path)\n",
        encoding="utf-8",
    )
    assert {one.name: (one.severities, one.sources) for one in reported([code])} == {
        "as-argument": (("error",), ()),
        "as-chosen": (("warning", "note"), ()),
        "as-keyword": (("error",), ()),
        "as-literal": (("warning",), ("common practice",)),
        "by-constant": (("note",), ()),
        "in-carrier": (("error",), ()),
    }
