"""Every rule plugin has a spec that sets it off and a near miss that does not.

What a spec sets off stands in its sidecar, word by word (tests/test_specs.py holds it to
that). A near miss says so in its last line: ``# near: rule-name, other-rule``.
"""

import re
from pathlib import Path

import pytest

from foredge.registry import collect

TESTS = Path(__file__).parents[1]
RULES = collect(entry_points=False)[0].names("rule")
SIDECARS = [file for folder in TESTS.glob("specs-*") for file in folder.glob("*.errors.txt")]


def near_misses() -> dict[str, list[Path]]:
    """Rule -> the specs that are a near miss of it."""
    found: dict[str, list[Path]] = {}
    for spec in sorted((TESTS / "specs-valid").glob("*.yaml")):
        for line in re.findall(r"^# near: (.+)$", spec.read_text("utf-8"), re.MULTILINE):
            for rule in line.split(", "):
                found.setdefault(rule, []).append(spec)
    return found


@pytest.mark.parametrize("rule", RULES)
def test_a_spec_sets_it_off(rule: str) -> None:
    assert [file.name for file in SIDECARS if f"[{rule}]" in file.read_text("utf-8")]


@pytest.mark.parametrize("rule", RULES)
def test_a_near_miss_does_not(rule: str) -> None:
    specs = near_misses().get(rule, [])
    assert specs, f"no spec says '# near: {rule}'"
    for spec in specs:
        sidecar = spec.with_suffix(".errors.txt")
        assert not sidecar.exists() or f"[{rule}]" not in sidecar.read_text("utf-8"), spec.name


def test_a_near_miss_names_a_rule_there_is() -> None:
    assert set(near_misses()) <= set(RULES)
