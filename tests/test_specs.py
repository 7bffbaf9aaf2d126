"""Every spec in specs-valid compiles; every one in specs-invalid fails with its exact messages.

A spec ``x.yaml`` in specs-invalid has ``x.errors.txt`` beside it: everything ``foredge
check`` prints, line by line. A spec in specs-valid may have one too: warnings and notes. A
line ``# variant: NAME`` near the top says which variant is checked. FOREDGE_ACCEPT=1
rewrites the expectations; read the difference.
"""

import os
import re
from collections.abc import Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner

from foredge.cli import main
from foredge.compile import compile_spec
from foredge.contract import Diagnostic
from foredge.registry import collect

HERE = Path(__file__).parent
VALID = sorted((HERE / "specs-valid").glob("*.yaml"))
INVALID = sorted((HERE / "specs-invalid").glob("*.yaml"))
REGISTRY, _ = collect(entry_points=False)


def variant_of(spec: Path) -> str | None:
    found = re.search(rb"^# variant: (\S+)", spec.read_bytes()[:200], re.MULTILINE)
    return found.group(1).decode() if found else None


@pytest.mark.parametrize("spec", VALID, ids=lambda spec: spec.stem)
def test_valid_specs_compile(spec: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(spec.parent)
    run = compile_spec(spec.name, REGISTRY, variant=variant_of(spec))
    assert told(spec, run.diagnostics) == expected(spec)
    assert run.build is not None


@pytest.mark.parametrize("spec", INVALID, ids=lambda spec: spec.stem)
def test_invalid_specs_say_exactly_what_is_wrong(
    spec: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(spec.parent)
    run = compile_spec(spec.name, REGISTRY, variant=variant_of(spec))
    assert told(spec, run.diagnostics) == expected(spec)
    assert run.build is None


@pytest.mark.parametrize("spec", INVALID, ids=lambda spec: spec.stem)
def test_the_command_line_says_the_same(spec: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(spec.parent)
    variant = variant_of(spec)
    options = ["--variant", variant] if variant else []
    result = CliRunner().invoke(main, ["check", spec.name, *options])
    assert result.exit_code == 1, result.output
    assert result.stderr.splitlines() == expected(spec)


def told(spec: Path, diagnostics: Sequence[Diagnostic]) -> list[str]:
    """What the compiler says; becomes the expectation when FOREDGE_ACCEPT is set."""
    lines = [str(diagnostic) for diagnostic in diagnostics]
    sidecar = spec.with_suffix(".errors.txt")
    if os.environ.get("FOREDGE_ACCEPT") and (lines or sidecar.exists()):
        sidecar.write_text("".join(f"{line}\n" for line in lines), "utf-8", newline="\n")
    return lines


def expected(spec: Path) -> list[str]:
    """What stands in the sidecar; a valid spec without one says nothing."""
    sidecar = spec.with_suffix(".errors.txt")
    return sidecar.read_text(encoding="utf-8").splitlines() if sidecar.exists() else []


def test_every_expectation_has_its_spec() -> None:
    folders = (HERE / "specs-valid", HERE / "specs-invalid")
    sidecars = [sidecar for folder in folders for sidecar in folder.glob("*.errors.txt")]
    assert [
        s
        for s in sidecars
        if not s.with_name(s.name.removesuffix(".errors.txt") + ".yaml").exists()
    ] == []
    assert [spec for spec in INVALID if not spec.with_suffix(".errors.txt").exists()] == []
