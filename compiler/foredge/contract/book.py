"""The book as a stage sees it: the resolved spec, the tables, the readings. Immutable."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from foredge.contract.bench import Bench
from foredge.contract.measures import Part
from foredge.contract.money import Purse
from foredge.contract.stock import StockItem
from foredge.problem import Path
from foredge.quantity import Quantity, blank, gate, leaf, rounded, rounded_up

Lookup = Callable[[str, str, str], Quantity]
"""(table, row, figure) -> leaf quantity with its citation."""


@dataclass(frozen=True, slots=True)
class Book:
    """One spec, resolved.

    ``sections`` holds each stage's own options by top-level key; ``embellishment``,
    ``finishing`` and ``closure`` the parts chosen there; ``stock`` the shelf; ``readings``
    what was measured, by key (``block.height``). ``step_mm`` is what sizes are rounded to.
    ``lookup`` reads a figure of the reference tables (the same leaf each time it is
    asked), ``words`` a text of a row, ``choose_part`` the default plugin of a slot.
    ``bench`` says when and in what air the work is done, ``money`` what it is to earn,
    ``print_on`` the paper that templates are printed on.
    """

    title: str
    copies: Quantity
    display: str
    step_mm: float
    stock: Mapping[str, StockItem]
    sections: Mapping[str, Any]
    readings: Mapping[str, Quantity]
    lookup: Lookup
    words: Callable[[str, str, str], str]
    choose_part: Callable[[str, str, Path], Part[Any]]
    embellishment: tuple[Part[Any], ...] = ()
    finishing: tuple[Part[Any], ...] = ()
    closure: Part[Any] | None = None
    bench: Bench = field(default_factory=Bench)
    done: Mapping[str, str] = field(default_factory=dict)
    money: Purse = field(default_factory=Purse)
    print_on: Literal["a4", "letter"] = "a4"

    def table(self, table: str, row: str, figure: str) -> Quantity:
        """A figure of a reference table; ``TableError`` when it is not there.

        ``folios.least`` and ``folios.most`` are the ends of the range advised for ``folios``.
        """
        return self.lookup(table, row, figure)

    def practice(self, name: str) -> Quantity:
        """A single constant of the trade, from the table ``practice``."""
        return self.lookup("practice", name, "amount")

    def default(self, name: str) -> Quantity:
        """A constant of the trade as a decision: its value, without the range of opinion.

        For what the maker sets (a flange, a distance): once it is decided it is exact.
        """
        row = self.practice(name)
        if row.origin is None or row.low == row.high:
            return row
        return leaf(row.value, row.dimension, row.name or name, row.origin, label=row.label)

    def size(self, q: Quantity) -> Quantity:
        """To the nearest step a maker can cut: how every piece's size is rounded, once."""
        return rounded(q, self.step_mm)

    def size_up(self, q: Quantity) -> Quantity:
        """Up to the next step a maker can cut."""
        return rounded_up(q, self.step_mm)

    def blank(self, q: Quantity, allowance: Quantity) -> Quantity:
        """The size to cut ``q`` at before its gate: high end of the band plus ``allowance``."""
        return blank(q, allowance, self.step_mm)

    def measured(self, estimate: Quantity, gate_id: str, key: str, label: str) -> Quantity:
        """``estimate`` until ``key`` stands under ``measured:``, then that reading."""
        return gate(estimate, self.readings.get(key), gate_id, key, label)

    def relief_on_board(self) -> bool:
        """Whether something raised is planned on a board: a layer that says ``made_on``."""
        layers = (part.options for part in self.embellishment)
        return any(
            getattr(options, "made_on", None) is not None
            and getattr(options, "on", None) not in ("spine", "paste-downs")
            for options in layers
        )

    def part(self, chosen: Part[Any] | None, kind: str, default: str, path: Path) -> Part[Any]:
        """``chosen``, or the plugin ``default`` of ``kind`` with its default options."""
        return self.choose_part(kind, default, path) if chosen is None else chosen
