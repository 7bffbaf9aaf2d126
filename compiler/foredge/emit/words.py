"""How a build's own words and numbers are told on the sheets."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, Piece, Text
from foredge.display import duration, show, show_size
from foredge.emit.escape import escape, escape_start
from foredge.estimates import is_estimate
from foredge.quantity import Band, Quantity, band

PROVISIONAL = "≈"
"""Stands before a number that rests on something not yet measured."""


@dataclass(frozen=True, slots=True)
class Words:
    """Renders for one build, in the units its maker reads."""

    build: Build

    @property
    def system(self) -> str:
        """``metric``, ``imperial`` or ``both``."""
        return self.build.book.display

    def number(self, quantity: Quantity) -> str:
        """A number in a sentence, marked while it is provisional."""
        mark = "" if quantity.firm else f"{PROVISIONAL} "
        return mark + show(quantity, self.system, within=range_of(self.build, quantity))

    def ranged(self, quantity: Quantity, band: Band | None = None) -> str:
        """A number with its 95 % range."""
        return show(quantity, self.system, self.build.band(quantity) if band is None else band)

    def text(self, text: Text) -> str:
        """A sentence with its numbers in it."""
        words = ""
        for part in text.segments():
            words += self.number(part) if isinstance(part, Quantity) else _keep_spaces(part)
        return escape_start(words)

    def size(self, piece: Piece) -> str:
        """Width × height of a piece."""
        return show_size(piece.width, piece.height, self.system)

    def time(self, quantity: Quantity) -> str:
        """A time."""
        return duration(quantity.value)


def range_of(build: Build, quantity: Quantity) -> Band:
    """The 95 % range of any quantity of ``build``, also of one that has no name."""
    return build.band(quantity) if quantity.name in build.bands else band(quantity)


def _keep_spaces(text: str) -> str:
    """Escaped words of a sentence, with the space they begin or end with."""
    lead = " " if text[:1].isspace() else ""
    tail = " " if text[-1:].isspace() and text.strip() else ""
    inner = escape(f".{text.strip()}")[1:]
    return lead + inner + tail


def state_of(*quantities: Quantity) -> str:
    """``firm``, ``blank`` or ``provisional (G1, G2)``."""
    gates = sorted(frozenset[str]().union(*(quantity.gates for quantity in quantities)))
    if gates:
        return f"provisional ({', '.join(gates)})"
    return "blank" if any(quantity.op == "blank" for quantity in quantities) else "firm"


def state_within(quantity: Quantity, band: Band) -> str:
    """The state of a number that is not a size to cut: ``estimate`` where it has a range."""
    state = state_of(quantity)
    return "estimate" if is_estimate(quantity, band) else state
