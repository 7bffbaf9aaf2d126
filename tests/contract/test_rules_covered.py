"""Every rule, and every problem that stages, parts, plan and reader report, has a spec that
sets it off; rules and what stages, parts and plan report also have a near miss that does not.

What a spec sets off stands in its sidecar, word by word (tests/test_specs.py holds it to
that). A near miss says so in its last lines: ``# near: rule-name, other-rule``.
"""

import re
from pathlib import Path

import pytest

from foredge.registry import collect
from foredge.reported import reported

TESTS = Path(__file__).parents[1]
ROOT = TESTS.parent
COMPILER = ROOT / "compiler" / "foredge"
OF_THE_WORK = (ROOT / "plugins", COMPILER / "plan", COMPILER / "contract", COMPILER / "readings.py")
"""Where stages, parts and plan report; the rest is the reader of the spec and the commands."""

NO_SPEC = {
    "extends-too-deep": "takes twenty-one files; tests/unit/spec/test_inherit.py writes them",
    "file-unreadable": "takes a file the system refuses; tests/unit/spec/test_files.py has one",
    "not-finite": "of data that was no YAML; the reader tells number-not-finite before it",
    "operation-cycle": "a fault in a plugin: its steps wait for each other",
    "operation-twice": "a fault in a plugin: two steps of one name",
    "operation-unknown": "a fault in a plugin: it waits for a step there is not",
    "optimal-not-installed": "depends on what is installed",
    "options-refused": "only of plugins whose options have checks of their own",
    "output-not-writable": "of the command line: the folder of the output",
    "plugin-failed": "a fault in a plugin",
    "plugin-load": "a fault in a plugin, or in its installation",
    "plugin-refused": "a fault in a plugin",
    "plugin-result": "a fault in a plugin",
    "plugin-unused": "of the command line: a plugin file that brings nothing",
    "stage-cycle": "a fault in a plugin: stages need each other",
    "stage-missing": "a fault in a plugin, or in its installation",
}
"""What no spec of its own can set off, and why."""

NO_NEAR = {"font-unreadable": "no font lies beside the specs; tests/unit/lettering reads some"}

REGISTRY = collect(entry_points=False)[0]
RULES = REGISTRY.names("rule")
FILES = [file for folder in (COMPILER, ROOT / "plugins") for file in folder.rglob("*.py")]
REPORTED = [one.name for one in reported(FILES)]
NAMES = sorted({*RULES, *REPORTED})
TOLD = {
    file: set(re.findall(r"\[([a-z0-9-]+)\]$", file.read_text("utf-8"), re.MULTILINE))
    for folder in TESTS.glob("specs-*")
    for file in folder.glob("*.errors.txt")
}
"""Sidecar -> the names in it; each ends its line."""


def of_the_work() -> list[str]:
    """The rules, and the names that stand in the code of stages, parts and plan."""
    found = [file for file in FILES if any(file.is_relative_to(place) for place in OF_THE_WORK)]
    text = "\n".join(file.read_text("utf-8") for file in found)
    said = {name for name in REPORTED if f'"{name}"' in text}
    return sorted({*RULES, *said} - set(NO_SPEC) - set(NO_NEAR))


def near_misses() -> dict[str, list[Path]]:
    """Rule -> the specs that are a near miss of it."""
    found: dict[str, list[Path]] = {}
    for spec in sorted((TESTS / "specs-valid").glob("*.yaml")):
        for line in re.findall(r"^# near: (.+)$", spec.read_text("utf-8"), re.MULTILINE):
            for rule in line.split(", "):
                found.setdefault(rule, []).append(spec)
    return found


def triggers(rule: str) -> list[str]:
    """The sidecars in which ``rule`` stands."""
    return [file.name for file, names in TOLD.items() if rule in names]


@pytest.mark.parametrize("rule", [name for name in NAMES if name not in NO_SPEC])
def test_a_spec_sets_it_off(rule: str) -> None:
    assert triggers(rule)


@pytest.mark.parametrize("rule", of_the_work())
def test_a_near_miss_does_not(rule: str) -> None:
    specs = near_misses().get(rule, [])
    assert specs, f"no spec says '# near: {rule}'"
    for spec in specs:
        assert rule not in TOLD.get(spec.with_suffix(".errors.txt"), set()), spec.name


def test_a_near_miss_names_a_rule_there_is() -> None:
    assert set(near_misses()) <= set(NAMES)


def test_exceptions_are_needed() -> None:
    """Each is reported by the code, and is without what it is excepted from."""
    assert set(NO_SPEC) | set(NO_NEAR) <= set(NAMES)
    assert [rule for rule in NO_SPEC if triggers(rule)] == []
    assert set(NO_NEAR) & set(near_misses()) == set()


def test_specs_set_off_only_what_the_code_reports() -> None:
    """A name in a sidecar that the code does not hold would be one nobody can look up."""
    assert set().union(*TOLD.values()) <= set(NAMES)
