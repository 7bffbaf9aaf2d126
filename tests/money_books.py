"""The plain journal with other stock, prices and copies, compiled whole."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from demo import registry
from foredge.compile import Compiled, compile_spec
from foredge.contract import Build, Cost, LedgerLine

PLAIN = Path(__file__).parent / "specs-valid" / "plain-journal.yaml"


def compiled_with(folder: Path, stock: dict[str, Any] | None = None, **top: Any) -> Compiled:
    """The plain journal; ``stock`` adds to its items, ``top`` replaces whole sections."""
    data = yaml.safe_load(PLAIN.read_text("utf-8"))
    for name, fields in (stock or {}).items():
        data["stock"].setdefault(name, {}).update(fields)
    data.update(top)
    file = folder / "book.yaml"
    file.write_text(yaml.safe_dump(data, sort_keys=False), "utf-8")
    return compile_spec(str(file), registry())


def build_with(folder: Path, stock: dict[str, Any] | None = None, **top: Any) -> Build:
    run = compiled_with(folder, stock, **top)
    assert run.build is not None, run.diagnostics
    return run.build


def rules(run: Compiled) -> list[str]:
    return [one.rule for one in run.diagnostics]


def line(build: Build, material: str) -> LedgerLine:
    (found,) = (one for one in build.plan.ledger.lines if material in (one.material, one.stock))
    return found


def cost(build: Build) -> Cost:
    assert build.plan.cost is not None
    return build.plan.cost
