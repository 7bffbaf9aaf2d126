"""The contract every registered plugin keeps, built-in or not."""

import ast
import re
from pathlib import Path

import pytest

from demo import DEMOS, compiled
from foredge.contract import Build, Upstream
from foredge.registry import collect
from foredge.testing import check_plugin, check_stage

CHECKOUT = Path(__file__).resolve().parents[2]
REGISTRY, FAULTS = collect(entry_points=False)
PLUGINS = [
    pytest.param(one.plugin, id=f"{one.plugin.kind}:{one.plugin.name}") for one in REGISTRY.all()
]
CHOSEN = [
    pytest.param(one.plugin.name, id=f"{one.plugin.kind}:{one.plugin.name}")
    for one in REGISTRY.all()
    if one.plugin.kind not in ("stage", "rule", "emitter")
]


def test_the_built_ins_load_without_a_word() -> None:
    assert FAULTS == []


@pytest.mark.parametrize("plugin", PLUGINS)
def test_a_plugin_keeps_the_contract(plugin: object) -> None:
    check_plugin(plugin)


def spelled(folder: str) -> set[str]:
    texts = (file.read_text("utf-8", "replace") for file in (CHECKOUT / folder).glob("*.yaml"))
    return {name for text in texts for name in re.findall(r"use: ([a-z0-9-]+)", text)}


@pytest.mark.parametrize("name", CHOSEN)
def test_a_part_has_an_example_that_compiles_and_one_that_does_not(name: str) -> None:
    assert name in spelled("specs") | spelled("tests/specs-valid")
    assert name in spelled("tests/specs-invalid")


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_stages_are_pure_and_explain_themselves(run) -> None:
    made = compiled(run)
    results = []
    for stage, _ in made.stages:
        known = tuple((name, result) for name, result in results if name in stage.needs)
        results.append((stage.name, check_stage(stage, made.book, Upstream(known))))


def imports(file: Path) -> set[str]:
    """Every module a file imports, wherever in it."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
    return found


@pytest.mark.parametrize("file", sorted((CHECKOUT / "plugins").rglob("*.py")), ids=lambda f: f.stem)
def test_of_ours_a_plugin_imports_only_the_contract(file: Path) -> None:
    own = file.relative_to(CHECKOUT / "plugins").parts[0]
    ours = {name for name in imports(file) if name.split(".")[0].startswith("foredge")}
    assert {
        name for name in ours if name != "foredge.contract" and name.split(".")[0] != own
    } == set()


def test_the_core_imports_no_built_in() -> None:
    for file in (CHECKOUT / "compiler").rglob("*.py"):
        assert not {name for name in imports(file) if name.startswith("foredge_")}, file


def gates_used(build: Build, gate_id: str) -> list[str]:
    """Operations up to the gate that use a number which rests on it."""
    gate = next(one for one in build.whole.gates if one.id == gate_id)
    pieces = {piece.name: piece for piece in build.whole.pieces}
    guilty = []
    for operation in build.order:
        numbers = [q for step in operation.steps for q in step.quantities()]
        numbers += [use.amount for use in operation.uses]
        numbers += [operation.hands_on, *([operation.wait] if operation.wait is not None else [])]
        for name in operation.pieces:
            numbers += [pieces[name].count, pieces[name].width, pieces[name].height]
        guilty += [operation.id for q in numbers if gate_id in q.gates]
        if operation.id == gate.after:
            break
    return guilty


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_no_step_before_a_gate_needs_its_reading(run) -> None:
    """Apart from blanks, which are cut large and trimmed, nothing is used before it is known."""
    build = compiled(run, without_readings=True)
    assert build.whole.gates
    for gate in build.whole.gates:
        assert gates_used(build, gate.id) == [], gate.id


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_boards_rest_on_both_gates_until_they_are_measured(run) -> None:
    build = compiled(run, without_readings=True)
    assert {"G1", "G2"} <= build.quantity("case.board.width").gates
    assert "G2" in build.quantity("case.board.height").gates
