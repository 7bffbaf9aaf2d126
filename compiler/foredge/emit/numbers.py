"""Each stage's quantities as lines of a table."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, StageResult
from foredge.emit.escape import code, escape
from foredge.emit.words import Words, state_within


@dataclass(frozen=True, slots=True)
class NumberRow:
    """A quantity: what it is called, its value with its range, its state, its name."""

    label: str
    value: str
    state: str
    name: str


@dataclass(frozen=True, slots=True)
class StageNumbers:
    """The quantities of one stage."""

    title: str
    rows: tuple[NumberRow, ...]


def stage_numbers(build: Build, title: str, result: StageResult) -> StageNumbers:
    """Quantities of ``result`` in the order the stage gives them."""
    words = Words(build)
    rows = tuple(
        NumberRow(
            label=escape(quantity.label),
            value=words.ranged(quantity),
            state=state_within(quantity, build.band(quantity)),
            name=code(quantity.name or ""),
        )
        for quantity in result.quantities
    )
    return StageNumbers(escape(title), rows)
