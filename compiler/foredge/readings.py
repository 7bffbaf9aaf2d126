"""Readings against their estimates: how far off, and which belong to nothing."""

from __future__ import annotations

from foredge.contract import Book, Gate, Problem, Quantity, Reading, warning
from foredge.display import show
from foredge.problem import Path
from foredge.quantity import Band, Program

SLACK = 1e-6
"""A reading this far outside its band (canonical units) still counts as on its edge."""


def estimate_of(quantity: Quantity) -> Band:
    """The band a gate's quantity had before it was measured."""
    return Program([quantity], estimates=True).band(quantity)


def reading_path(key: str) -> Path:
    """Where the reading ``block.height`` stands in the spec."""
    return ("measured", *key.split("."))


def check_readings(book: Book, gates: tuple[Gate, ...]) -> list[Problem]:
    """A warning for each reading outside its estimate's band, and for each unused one."""
    problems: list[Problem] = []
    used: set[str] = set()
    for gate in gates:
        for reading in gate.readings:
            used.add(reading.key)
            if reading.key in book.readings:
                problems += _outside(reading, book.display)
    for key in book.readings:
        if key not in used:
            problems.append(
                warning(
                    reading_path(key),
                    f"nothing in this book asks for the reading '{key}'",
                    "reading-unused",
                    remedy="Take it out, or add the part it belongs to",
                    on_key=True,
                )
            )
    return problems


def _outside(reading: Reading, display: str) -> list[Problem]:
    quantity = reading.quantity
    estimate, read = quantity.args
    band = estimate_of(quantity)
    over, under = quantity.value - band.high, band.low - quantity.value
    if max(over, under) <= SLACK:
        return []
    off = Quantity("leaf", max(over, under), quantity.dimension)
    return [
        warning(
            reading_path(reading.key),
            f"the {reading.label} was measured as {show(read, display)}; the estimate was "
            f"{show(estimate, display, band)}, so the reading is {show(off, display)} "
            f"{'above' if over > 0 else 'below'} its band",
            "reading-outside-band",
            consequence="The reading is used",
            remedy="Measure once more, and look at what the estimate rests on",
        )
    ]
