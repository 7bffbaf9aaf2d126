"""Between them the demo specs and their variants use every built-in part."""

from collections.abc import Iterator
from contextlib import chdir
from typing import Any

from demo import DEMOS, SPECS, registry
from foredge.spec.inherit import load_spec


def uses(data: Any) -> Iterator[str]:
    """Every ``use:`` in the data."""
    if isinstance(data, dict):
        if isinstance(data.get("use"), str):
            yield data["use"]
        for value in data.values():
            yield from uses(value)
    elif isinstance(data, list):
        for value in data:
            yield from uses(value)


def test_every_built_in_part_is_in_a_demo() -> None:
    with chdir(SPECS.parent):
        shown = {
            name
            for run in DEMOS
            for name in uses(load_spec(f"specs/{run.spec}", variant=run.variant).data)
        }
    parts = {one.plugin.name for one in registry().all() if hasattr(one.plugin, "options")}
    stages = {stage.name for stage in registry().stages()}
    assert parts - stages - shown == set()
