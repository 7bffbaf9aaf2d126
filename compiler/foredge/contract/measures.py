"""The types a plugin's options are made of.

Each annotated type carries a ``x-foredge-...`` keyword into the plugin's JSON Schema; the
compiler checks the text against it and hands the plugin a :class:`Quantity` whose leaf
remembers the place in the spec.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Generic, TypeVar

from msgspec import Meta

from foredge.problem import Path
from foredge.quantity import Quantity


def _measure(dimension: str, *, zero: bool = False) -> Meta:
    keywords = {"type": "string", "x-foredge-measure": dimension, "x-foredge-zero": zero}
    return Meta(extra_json_schema=keywords)


Length = Annotated[Quantity, _measure("length")]
LengthOrZero = Annotated[Quantity, _measure("length", zero=True)]
Mass = Annotated[Quantity, _measure("mass")]
Duration = Annotated[Quantity, _measure("time")]
DurationOrZero = Annotated[Quantity, _measure("time", zero=True)]
Volume = Annotated[Quantity, _measure("volume")]
Grammage = Annotated[Quantity, _measure("grammage")]
Density = Annotated[Quantity, _measure("density")]
Angle = Annotated[Quantity, _measure("angle", zero=True)]
Factor = Annotated[Quantity, _measure("ratio")]
"""So many times as much, above zero, written ``150 %``."""

Temperature = Annotated[Quantity, _measure("temperature", zero=True)]
Ratio = Annotated[Quantity, _measure("ratio", zero=True)]
"""A share of one, written ``15 %``."""

Amount = Annotated[Quantity, _measure("amount")]
"""So much of a material: ``250 ml``, ``500 g``, ``10 m``."""

_MOST = 100_000  # no bench needs more, and a slip of the hand should not run for hours


def _count(least: int) -> Meta:
    keywords = {"type": "integer", "minimum": least, "maximum": _MOST}
    return Meta(extra_json_schema={**keywords, "x-foredge-measure": "count"})


Count = Annotated[Quantity, _count(1)]
"""A whole number of one or more."""

_SOLD = [
    {"type": "string", "x-foredge-measure": "amount", "x-foredge-zero": False},
    {"type": "integer", "minimum": 1, "maximum": _MOST, "x-foredge-measure": "count"},
]
AmountOrCount = Annotated[Quantity, Meta(extra_json_schema={"anyOf": _SOLD})]
"""So much of a material, or so many of a thing: ``250 ml``, ``12``."""

CountOrZero = Annotated[Quantity, _count(0)]
"""A whole number, or none."""

ThreadSize = Annotated[
    Quantity, Meta(extra_json_schema={"type": "string", "x-foredge-measure": "thread-size"})
]
"""``25/3`` (lea and ply) or ``200 tex``; a linear density."""


def stock_name(*kinds: str) -> Meta:
    """Keyword for a text that must name a stock item of one of ``kinds``."""
    return Meta(extra_json_schema={"type": "string", "x-foredge-stock": list(kinds)})


def table_row(table: str) -> Meta:
    """Keyword for a text that must name a row of a reference table."""
    return Meta(extra_json_schema={"type": "string", "x-foredge-row": table})


class SpecFile:
    """A file that the spec names: ``path`` as it is written there, ``data`` what is in it.

    No dataclass, so that msgspec takes it for a type of our own and not for a mapping.
    """

    __slots__ = ("data", "path")

    def __init__(self, path: str, data: bytes) -> None:
        self.path = path
        self.data = data

    def __repr__(self) -> str:
        return f"<file {self.path!r}, {len(self.data)} bytes>"


def spec_file(what: str, most: int) -> Meta:
    """Keyword for the path of a file of at most ``most`` bytes; ``what`` names it in messages.

    The path is relative to the spec file that says it, and stays inside a spec's folder.
    """
    keywords = {"type": "string", "minLength": 1, "x-foredge-file": {"what": what, "most": most}}
    return Meta(extra_json_schema=keywords)


FontFile = Annotated[SpecFile, spec_file("font", 4_000_000)]
"""A font file of the maker's own: its bytes, read by the compiler and not by the plugin."""


def slot(kind: str) -> Meta:
    """Keyword for a mapping that chooses a plugin of ``kind`` by its ``use``."""
    return Meta(extra_json_schema={"x-foredge-slot": kind})


P = TypeVar("P")


@dataclass(frozen=True, slots=True)
class Part(Generic[P]):
    """A plugin chosen by ``use`` in the spec (or by default), with its options."""

    plugin: P
    options: Any
    path: Path
