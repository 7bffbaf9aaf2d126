"""Readings against their estimates: how far off, and which belong to nothing."""

from __future__ import annotations

from foredge.contract import Book, Gate, Problem, Quantity, warning
from foredge.problem import Path
from foredge.quantity import Band, Program


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
                problems += _outside(reading.quantity, reading.key, reading.label)
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


def _outside(quantity: Quantity, key: str, label: str) -> list[Problem]:
    band = estimate_of(quantity)
    value = quantity.value
    slack = 1e-6
    if band.low - slack <= value <= band.high + slack:
        return []
    off = value - (band.high if value > band.high else band.low)
    return [
        warning(
            reading_path(key),
            f"the {label} was measured as {value:.4g} mm; the estimate was {band.low:.4g} to "
            f"{band.high:.4g} mm, so the reading is {abs(off):.2g} mm "
            f"{'above' if off > 0 else 'below'} it",
            "reading-outside-band",
            consequence="The reading is used",
            remedy="Measure once more, and look at what the estimate rests on",
        )
    ]
