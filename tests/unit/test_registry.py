"""Plugins are collected, looked at, and refused one by one; the registry never changes."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from foredge import plugin_sources
from foredge.contract import Options, PartOptions, StageResult
from foredge.plugin_check import KINDS, RESERVED
from foredge.plugin_sources import BUILT_IN, Brought
from foredge.problem import Severity
from foredge.registry import Registry, assemble, collect
from foredge.spec.schema_generate import envelope_schema
from foredge.testing import check_plugin

SEWING = '''
"""A sewing structure for a test."""
from __future__ import annotations
from typing import Annotated
from foredge.contract import PartOptions, Count, hookimpl
from msgspec import Meta

class NeedleOptions(PartOptions, tag="{name}", frozen=True, kw_only=True):
    """Options."""
    needles: Annotated[Count, Meta(description="How many needles.")] | None = None

class Needles:
    kind = "sewing"
    name = "{name}"
    title = "Many needles"
    options = NeedleOptions
    def sew(self, job): ...
'''


class Plain:
    """A stage with nothing in it."""

    kind = "stage"
    title = "A stage"
    options = Options

    def __init__(self, name: str, *needs: str) -> None:
        self.name = name
        self.section = self.prefix = name.replace("-", "_")
        self.needs = needs

    def run(self, book: object, upstream: object) -> StageResult:
        return StageResult()


class LongOptions(PartOptions, tag="long", frozen=True, kw_only=True):
    """Options."""


class Part:
    """A part whose attributes a test can spoil."""

    def __init__(self, **spoilt: object) -> None:
        self.kind, self.name, self.title = "sewing", "long", "Long stitch"
        self.options: object = LongOptions
        for key, value in spoilt.items():
            setattr(self, key, value)

    def sew(self, job: object) -> None: ...


def brought(plugin: object, owner: str = "someone") -> Brought:
    return Brought(plugin, owner, "1.0", f"{owner}.py")


def refusals(*plugins: object) -> list[str]:
    return [str(found) for found in assemble([brought(one) for one in plugins])[1]]


def test_the_built_ins_are_sound_and_all_found() -> None:
    registry, diagnostics = collect(entry_points=False)
    assert diagnostics == []
    assert all(found.owner == BUILT_IN for found in registry.all())
    again, faults = assemble(
        Brought(one.plugin, "thorough", one.version, one.file) for one in registry.all()
    )
    assert [str(fault) for fault in faults] == []
    assert len(again.all()) == len(registry.all())


def test_every_built_in_keeps_the_contract() -> None:
    for found in collect(entry_points=False)[0].all():
        check_plugin(found.plugin)


def test_no_built_in_stands_outside_the_known_kinds() -> None:
    """Else every start would make the schema of every plugin, to see who asks for it."""
    assert {found.plugin.kind for found in collect(entry_points=False)[0].all()} <= KINDS


def test_no_stage_can_take_a_key_of_the_spec() -> None:
    sections = {stage.section for stage in collect(entry_points=False)[0].stages()}
    assert {*envelope_schema()["properties"], "extends", "variants"} - sections == set(RESERVED)


def test_every_built_in_module_brings_something(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(plugin_sources, "BUILTINS", ("json",))
    _, diagnostics = collect(entry_points=False)
    assert [d.text for d in diagnostics] == [
        "foredge brings no plugin: it has no PLUGIN, PLUGINS or foredge_plugins"
    ]


def test_a_file_with_the_hook(tmp_path: Path) -> None:
    file = tmp_path / "mine.py"
    file.write_text(
        SEWING.format(name="many") + "@hookimpl\ndef foredge_plugins():\n    return [Needles()]\n"
    )
    registry, diagnostics = collect([str(file)], entry_points=False)
    assert diagnostics == []
    found = registry.find("sewing", "many")
    assert found is not None
    assert (found.owner, found.version, found.file) == (str(file), "", str(file))
    assert "many" in registry.names("sewing")
    assert "sewing" in registry.kinds()


@pytest.mark.parametrize("tail", ["PLUGIN = Needles()", "PLUGINS = (Needles(),)"])
def test_a_file_with_plugins_and_no_hook(tmp_path: Path, tail: str) -> None:
    file = tmp_path / "mine.py"
    file.write_text(SEWING.format(name="many") + tail + "\n")
    registry, diagnostics = collect([str(file)], entry_points=False)
    assert diagnostics == []
    assert registry.find("sewing", "many") is not None


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("import nothing_of_this_name\n", 1, "ModuleNotFoundError: No module named"),
        ("\n\nx = 1 / 0\n", 3, "ZeroDivisionError: division by zero"),
        ("x = 1\ndef (:\n", 2, "SyntaxError"),
        ("raise SystemExit(3)\n", 1, "SystemExit: 3"),
        (
            "from foredge.contract import hookimpl\n@hookimpl\ndef foredge_plugins():\n"
            "    return 1 / 0\n",
            4,
            "ZeroDivisionError",
        ),
        (
            "from foredge.contract import hookimpl\n@hookimpl\ndef foredge_plugin():\n"
            "    return []\n",
            1,
            "unknown hook 'foredge_plugin'",
        ),
        ("x = 1\n", 1, "brings no plugin"),
    ],
)
def test_a_broken_file_is_one_diagnostic(tmp_path: Path, text: str, line: int, words: str) -> None:
    file = tmp_path / "broken.py"
    file.write_text(text)
    registry, diagnostics = collect([str(file)], entry_points=False)
    assert len(diagnostics) == 1
    assert diagnostics[0].span.file == str(file)
    assert diagnostics[0].span.line == line
    assert words in diagnostics[0].text
    assert str(file) in diagnostics[0].text
    assert diagnostics[0].severity is Severity.ERROR
    assert isinstance(registry, Registry)


def test_a_missing_file_and_the_same_file_twice(tmp_path: Path) -> None:
    file = tmp_path / "mine.py"
    file.write_text(SEWING.format(name="many") + "PLUGIN = Needles()\n")
    missing = str(tmp_path / "no.py")
    _, diagnostics = collect([missing, str(file), str(file)], entry_points=False)
    assert [d.text.partition(":")[0] for d in diagnostics] == [
        f"there is no plugin file '{missing}'",
        f"the plugins of {file} cannot be loaded",
    ]


def test_an_installed_distribution(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "many_needles.py").write_text(SEWING.format(name="many") + "PLUGIN = Needles()\n")
    info = tmp_path / "many_needles-2.5.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: many-needles\nVersion: 2.5\n")
    (info / "entry_points.txt").write_text(
        "[foredge.plugins]\nmany = many_needles\nobject = many_needles:PLUGIN\nlost = no_such\n"
    )
    monkeypatch.syspath_prepend(str(tmp_path))
    registry, diagnostics = collect()
    monkeypatch.delitem(sys.modules, "many_needles")
    found = registry.find("sewing", "many")
    assert found is not None
    assert (found.owner, found.version) == ("many-needles", "2.5")
    texts = "\n".join(str(d) for d in diagnostics)
    assert "the plugins of many-needles cannot be loaded: ModuleNotFoundError" in texts
    assert (
        "there are two plugins 'many' of kind 'sewing', one of many-needles and one of many-needles"
        in texts
    )
    assert len(diagnostics) == 2


def test_two_of_one_name_are_refused_naming_both_owners() -> None:
    registry, diagnostics = assemble([brought(Part(), "first"), brought(Part(), "second")])
    found = registry.find("sewing", "long")
    assert found is not None
    assert found.owner == "first"
    assert str(diagnostics[0]) == (
        "second.py:1:1: error: the plugin 'long' of second is not taken: there are two plugins "
        "'long' of kind 'sewing', one of first and one of second. [plugin-refused]"
    )


@pytest.mark.parametrize(
    ("plugin", "words"),
    [
        (object(), "the plugin 'object' of someone is not taken: it has no 'kind'"),
        (Part(title=""), "it has no 'title'"),
        (Part(name="Long Stitch"), "its name 'Long Stitch' is not made of small letters"),
        (Part(name="other"), "the tag 'long'; it must be its name, 'other'"),
        (Part(options=Options), "its 'options' is no subclass of PartOptions"),
        (Part(options=None), "its 'options' is no subclass of PartOptions"),
        (Part(sew=None), "it has no method 'sew', which the kind 'sewing' asks for"),
    ],
)
def test_a_plugin_that_lacks_something(plugin: object, words: str) -> None:
    assert words in refusals(plugin)[0]


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        ({"section": "Text Block"}, "its section 'Text Block' is no word"),
        ({"prefix": None}, "its prefix None is no word"),
        ({"section": "stock"}, "its section 'stock' is a key of the spec itself"),
        ({"needs": "case"}, "its 'needs' is no tuple of stage names"),
        ({"options": dict}, "its 'options' is no subclass of Options"),
        ({"run": 3}, "it has no method 'run'"),
    ],
)
def test_a_stage_that_lacks_something(spoil: dict[str, object], words: str) -> None:
    stage = Plain("glazing")
    for key, value in spoil.items():
        setattr(stage, key, value)
    assert words in refusals(stage)[0]


def test_two_stages_with_one_section() -> None:
    first, second = Plain("one"), Plain("two")
    second.section = "one"
    assert "have the same section, 'one'" in refusals(first, second)[0]


def test_stages_come_after_their_needs_and_by_name() -> None:
    stages = [Plain("d"), Plain("c", "a", "b"), Plain("b", "a"), Plain("a")]
    registry, diagnostics = assemble([brought(stage) for stage in stages])
    assert diagnostics == []
    assert [stage.name for stage in registry.stages()] == ["a", "d", "b", "c"]


def test_a_missing_need_names_both_and_takes_out_what_rests_on_it() -> None:
    registry, diagnostics = assemble(
        [brought(Plain("b", "a")), brought(Plain("c", "b")), brought(Plain("d"))]
    )
    assert [str(d) for d in diagnostics] == [
        "someone.py:1:1: error: the stage 'b' of someone needs the stage 'a', and there is none "
        "of that name. [stage-missing]"
    ]
    assert [stage.name for stage in registry.stages()] == ["d"]


def test_a_circle_of_needs_names_its_stages() -> None:
    registry, diagnostics = assemble(
        [brought(Plain("a", "b")), brought(Plain("b", "a")), brought(Plain("c"))]
    )
    assert len(diagnostics) == 1
    assert diagnostics[0].rule == "stage-cycle"
    assert "'" not in diagnostics[0].text.replace("a -> b -> a", "").replace("b -> a -> b", "")
    assert " -> ".join(("a", "b")) in diagnostics[0].text
    assert [stage.name for stage in registry.stages()] == ["c"]


def test_a_kind_that_nothing_asks_for_is_a_warning() -> None:
    part = Part(kind="sewwing")
    diagnostics = assemble([brought(part)])[1]
    assert [(d.severity, d.text) for d in diagnostics] == [
        (
            Severity.WARNING,
            "nothing asks for a plugin of kind 'sewwing', so 'long' of someone is never used; "
            "did you mean 'sewing'?",
        )
    ]
