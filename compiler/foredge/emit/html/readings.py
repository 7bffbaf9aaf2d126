"""The boxes for the gate readings, from which the page writes the lines for the spec."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace

from markupsafe import Markup

from foredge.contract import LENGTH, Build, Gate, Quantity, Reading
from foredge.display import show
from foredge.display_number import decimal, exact
from foredge.emit.gates import gate_views
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.told import SYSTEMS, as_text, switched, told
from foredge.emit.html.work import anchor
from foredge.emit.work import step_numbers
from foredge.estimates import estimate_text
from foredge.readings import estimate_of


@dataclass(frozen=True, slots=True)
class PageBox:
    """One reading. ``low`` and ``high`` are the ends of its estimate in mm, as text.

    ``value`` is what the spec already says, as it is written there.
    """

    id: str
    key: str
    label: Markup
    estimate: Markup
    low: str
    high: str
    value: str
    off: Markup
    unit: Markup


@dataclass(frozen=True, slots=True)
class PageGate:
    """A gate, the step at whose end it is taken (its anchor may be empty), its boxes."""

    id: Markup
    anchor: str
    title: Markup
    step: Markup
    step_anchor: str
    how: tuple[Markup, ...]
    boxes: tuple[PageBox, ...]

    @property
    def open(self) -> bool:
        """Whether a reading is still to be taken."""
        return any(not box.value for box in self.boxes)


def page_gates(build: Build, numbers: Numbers) -> tuple[PageGate, ...]:
    """All gates in the order in which they are taken."""
    views = told(build, lambda one: gate_views(one, step_numbers(one)))
    known = {as_text(view.id): view for view in views}
    gates = sorted(build.whole.gates, key=lambda gate: list(known).index(gate.id))
    return tuple(
        _gate(build, numbers, gate, known[gate.id], place)
        for place, gate in enumerate(gates, start=1)
    )


def _gate(
    build: Build, numbers: Numbers, gate: Gate, view: SimpleNamespace, place: int
) -> PageGate:
    return PageGate(
        id=view.id,
        anchor=f"gate-{place}",
        title=view.title,
        step=view.step,
        step_anchor=anchor(view.step) if view.step else "",
        how=tuple(numbers.text(line) for line in gate.how),
        boxes=tuple(
            _box(build, numbers, reading, box, f"reading-{place}-{at}")
            for at, (reading, box) in enumerate(
                zip(gate.readings, view.boxes, strict=True), start=1
            )
        ),
    )


def _box(
    build: Build, numbers: Numbers, reading: Reading, view: SimpleNamespace, name: str
) -> PageBox:
    quantity = reading.quantity
    band = estimate_of(quantity)
    metric, imperial, both = (estimate_text(quantity, system) for system in SYSTEMS)
    length = quantity.dimension == LENGTH
    return PageBox(
        id=name,
        key=reading.key,
        label=view.label,
        estimate=numbers.told(quantity, (metric, imperial, both)),
        low=_plain(band.low) if length else "",
        high=_plain(band.high) if length else "",
        value=_written(quantity, "imperial" if build.book.display == "imperial" else "metric"),
        off=view.off,
        unit=switched(("mm", "in", "mm"), build.book.display),
    )


def _written(quantity: Quantity, system: str) -> str:
    """The reading as the spec has it; empty where there is none yet."""
    if quantity.op != "gate" or not quantity.data.read:
        return ""
    origin = quantity.args[-1].origin
    said = origin.text.strip() if origin is not None else ""
    return said or show(quantity, system)


def _plain(value: float) -> str:
    number = exact(value)
    return "" if number is None else decimal(number, 3)
