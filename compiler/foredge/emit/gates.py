"""The gates as the sheets tell them: what was measured, what is still to be measured."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from foredge.contract import Build, Gate, Reading
from foredge.emit.escape import escape
from foredge.emit.words import Words
from foredge.estimates import estimate_text, off_by
from foredge.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Box:
    """One reading: measured (``value``, ``off``), or a box to write it in."""

    key: str
    label: str
    unit: str
    estimate: str
    value: str
    off: str

    @property
    def read(self) -> bool:
        """Whether it was measured."""
        return bool(self.value)


@dataclass(frozen=True, slots=True)
class GateView:
    """A gate with its boxes; ``step`` is the number of the step at whose end it is taken."""

    id: str
    title: str
    after: str
    step: str
    how: tuple[str, ...]
    boxes: tuple[Box, ...]

    @property
    def open(self) -> tuple[Box, ...]:
        """Boxes still to be filled in."""
        return tuple(box for box in self.boxes if not box.read)

    @property
    def done(self) -> tuple[Box, ...]:
        """Boxes that were measured."""
        return tuple(box for box in self.boxes if box.read)

    @property
    def paste(self) -> str:
        """What to add to the spec for the open boxes."""
        return measured_yaml(self.open)


def gate_views(build: Build, steps: dict[str, str]) -> tuple[GateView, ...]:
    """All gates in the order in which they are taken; ``steps`` is operation -> its number."""
    place = {operation.id: at for at, operation in enumerate(build.order)}
    gates = sorted(build.whole.gates, key=lambda gate: (place.get(gate.after, -1), gate.id))
    return tuple(_view(build, gate, steps.get(gate.after, "")) for gate in gates)


def _view(build: Build, gate: Gate, step: str) -> GateView:
    words = Words(build)
    return GateView(
        id=escape(gate.id),
        title=escape(gate.title),
        after=gate.after,
        step=step,
        how=tuple(words.text(line) for line in gate.how),
        boxes=tuple(_box(words, reading) for reading in gate.readings),
    )


def _box(words: Words, reading: Reading) -> Box:
    quantity = reading.quantity
    read = _is_read(quantity)
    return Box(
        key=reading.key,
        label=escape(reading.label),
        unit="in" if words.system == "imperial" else "mm",
        estimate=estimate_text(quantity, words.system),
        value=_as_written(words, quantity) if read else "",
        off=off_by(quantity, words.system) if read else "",
    )


def _as_written(words: Words, quantity: Quantity) -> str:
    origin = quantity.args[-1].origin
    return escape(origin.text) if origin is not None and origin.text else words.number(quantity)


def _is_read(quantity: Quantity) -> bool:
    return quantity.op == "gate" and bool(quantity.data.read)


def measured_yaml(boxes: Sequence[Box]) -> str:
    """Lines to add to the spec: the keys nested, a gap for each number."""
    tree: dict[str, Any] = {}
    for box in boxes:
        *parents, last = box.key.split(".")
        level = tree
        for parent in parents:
            level = level.setdefault(parent, {})
        level[last] = box.unit
    return "\n".join(["measured:", *_nested(tree, "  ")])


def _nested(tree: dict[str, Any], pad: str) -> Iterable[str]:
    for key, value in tree.items():
        if isinstance(value, dict):
            yield f"{pad}{key}:"
            yield from _nested(value, pad + "  ")
        else:
            yield f"{pad}{key}: ____ {value}"
