"""The committed output of the demo specs is what they give now, and the editor's schema too."""

from pathlib import Path

import pytest

from demo import DEMOS, SPECS, compiled, registry
from foredge.emit import emit
from foredge.emit.write import compare
from foredge.spec.schema_bundle import bundle_text

BUILT = SPECS / "built"
SCHEMA_LINE = "# yaml-language-server: $schema=../schemas/book.schema.json"


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_the_committed_output_is_fresh(run) -> None:
    """Renew it with ``make fresh``."""
    build = compiled(run)
    assert compare(BUILT, build.name, emit(build)) == []


def test_nothing_else_is_committed_there() -> None:
    assert {folder.name for folder in BUILT.iterdir()} == {compiled(run).name for run in DEMOS}


def test_the_editors_schema_is_fresh() -> None:
    committed = SPECS.parent / "schemas" / "book.schema.json"
    assert committed.read_text(encoding="utf-8") == bundle_text(registry())


@pytest.mark.parametrize("spec", sorted(SPECS.glob("*.yaml")), ids=lambda spec: spec.stem)
def test_the_editors_line_is_there(spec: Path) -> None:
    assert spec.read_text(encoding="utf-8").splitlines()[0] == SCHEMA_LINE
