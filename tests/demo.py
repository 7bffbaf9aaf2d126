"""The demo specs, compiled once and shared by the tests."""

import tempfile
from contextlib import chdir
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from foredge.compile import compile_spec
from foredge.contract import Build
from foredge.registry import collect
from foredge.spec.inherit import load_spec

SPECS = Path(__file__).resolve().parents[1] / "specs"


@dataclass(frozen=True)
class Run:
    """One demo spec in one variant."""

    spec: str
    variant: str | None = None


DEMOS = tuple(
    Run(file.name, variant)
    for file in sorted(SPECS.glob("*.yaml"))
    for variant in (None, *load_spec(str(file)).variants)
)


@cache
def registry():
    """The built-ins."""
    found, faults = collect(entry_points=False)
    assert faults == []
    return found


@cache
def compiled(run: Run, *, without_readings: bool = False) -> Build:
    """The build of a demo; ``without_readings`` as before anything was measured."""
    file = SPECS / run.spec
    if not without_readings:
        with chdir(SPECS.parent):
            result = compile_spec(f"specs/{run.spec}", registry(), variant=run.variant)
    else:
        result = _unmeasured(file, run.variant)
    assert result.build is not None, [str(one) for one in result.diagnostics]
    return result.build


def _unmeasured(file: Path, variant: str | None):
    """``measured`` never inherits, so a spec that only extends the demo has none."""
    with tempfile.TemporaryDirectory() as folder:
        child = Path(folder) / file.name
        child.write_text(f"extends: {file.as_posix()}\n", encoding="utf-8")
        return compile_spec(str(child), registry(), variant=variant, allow=[str(file)])
