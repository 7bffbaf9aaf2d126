"""The reference tables of ``shared/``: default figures of the trade, each with where it is from.

One YAML file is one table. A table is read when it is first asked for, a figure is parsed
when it is first used, so ``foredge check`` pays only for what the spec names::

    tables = load_tables()
    tables.row("paper", "office").get("bulk")     # a Value: 1300 mm3/g, with its band
    tables.constant("joint-base")                 # a Value out of practice.yaml
    tables.find("cloth", "canvass")               # Near(("canvas",))

A figure that rests on a weak source or on a mark is a default: it may never cause an error.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Any

import yaml

from foredge.data import schema_text, table_text
from foredge.dimension import LENGTH, RATIO, Dimension
from foredge.spec.measure import Measure, parse_measure
from foredge.spec.units import DIMENSIONS, UNITS

TABLES = (
    "adhesives",
    "armature",
    "basis",
    "board",
    "cautions",
    "clays",
    "cloth",
    "colours",
    "drying",
    "ingredients",
    "kitchen",
    "leaf",
    "paints",
    "paper",
    "practice",
    "sizes",
    "thread",
)
"""Every table there is; ``shared/sources.yaml`` holds the sources they cite."""

MARKS = ("common practice", "from memory")
"""What stands in for a source that was not seen."""

_ENDS = ("low", "high", "least", "most")
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_MEASURE = re.compile(r"[0-9][0-9 ./]*?\s+([a-zA-Z][a-zA-Z0-9/ -]*)")
# Two units the spec never needs, with their factor to mm3/g and to mm (mm3 on mm2).
_OWN_UNITS = {
    "cm3/g": ("bulk", Dimension(3, -1, 0), 1000.0),
    "ml/m2": ("coverage", LENGTH, 0.001),
}


class TableError(Exception):
    """A reference table is broken, or a row or figure that must be there is not."""


@dataclass(frozen=True, slots=True)
class Value:
    """One figure. ``number``, ``low`` and ``high`` are canonical: mm, g, s, degC, degrees.

    What is not known exactly has ``low`` and ``high``, its 95 % range. What the maker chooses
    is exact and may have ``least`` and ``most``, the range advised. Otherwise ``None``.
    ``bulk`` is in mm3/g, ``coverage`` in mm (mm3 on mm2). A plain number is a ``ratio``
    with an empty ``unit``. ``powers`` are those of length, mass and time. ``strong`` is true
    for a standard, a law, a library, a handbook.
    """

    text: str
    number: float
    low: float | None
    high: float | None
    least: float | None
    most: float | None
    dimension: str
    powers: Dimension
    unit: str
    citation: str
    strong: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One row. Its figures come from :meth:`get`, its words from the other readers."""

    table: str
    name: str
    title: str
    citation: str
    strong: bool
    fields: Mapping[str, Any]

    def get(self, key: str) -> Value:
        """The figure ``key``; raises :class:`TableError` when the row has none."""
        value = self.maybe(key)
        if value is None:
            raise TableError(f"{self.table}.yaml: row '{self.name}' has no figure '{key}'")
        return value

    def maybe(self, key: str) -> Value | None:
        """The figure ``key``, or ``None`` when the row does not have it.

        ``folios.least`` is an end of the range of the figure ``folios``, as a figure;
        ``parts.flour`` is the figure ``flour`` of the group ``parts``.
        """
        figure, *steps = key.split(".")
        raw = self.fields.get(figure)
        for step in steps:
            raw = _inside(raw, step)
        if raw is None:
            return None
        try:
            return _value(self, raw)
        except ValueError as reason:
            raise TableError(f"{self.table}.yaml: {self.name}.{key}: {reason}") from None

    def values(self) -> Iterator[tuple[str, Value]]:
        """Every figure of the row, in the order of the file."""
        for key, raw in self.fields.items():
            if _is_figure(raw):
                yield key, self.get(key)

    def group(self, key: str) -> dict[str, Value]:
        """The named figures under ``key``, such as the parts of a recipe; empty without."""
        return {name: _value(self, raw) for name, raw in self.fields.get(key, {}).items()}

    def text(self, key: str, default: str = "") -> str:
        """The words under ``key``; of a list its items, of a group the names in it, by commas."""
        said = self.fields.get(key, default)
        return ", ".join(map(str, said)) if isinstance(said, list | dict) else str(said)

    def texts(self, key: str) -> tuple[str, ...]:
        """The list of words under ``key``; empty when the row has none."""
        return tuple(str(item) for item in self.fields.get(key, ()))

    def flag(self, key: str) -> bool:
        """The yes or no under ``key``; no when the row does not say."""
        return bool(self.fields.get(key, False))


@dataclass(frozen=True, slots=True)
class Near:
    """No such row; the names that look like it, best first."""

    names: tuple[str, ...]


class Tables:
    """All reference tables, read on demand. Never changes; share one."""

    __slots__ = ()

    def rows(self, table: str) -> tuple[Row, ...]:
        """Every row of ``table``, in the order of the file."""
        return tuple(_table(table).values())

    def names(self, table: str) -> tuple[str, ...]:
        """The row names of ``table``, in the order of the file."""
        return tuple(_table(table))

    def row(self, table: str, name: str) -> Row:
        """The row ``name``; raises :class:`TableError` when there is none."""
        found = self.find(table, name)
        if isinstance(found, Near):
            raise TableError(f"{table}.yaml has no row '{name}'; near: {', '.join(found.names)}")
        return found

    def find(self, table: str, name: str) -> Row | Near:
        """The row ``name``, or the names near it for a "did you mean"."""
        rows = _table(table)
        if name in rows:
            return rows[name]
        return Near(tuple(get_close_matches(name.lower().replace("_", "-"), rows, n=3)))

    def constant(self, name: str) -> Value:
        """The single figure ``name`` of practice.yaml."""
        return self.row("practice", name).get("amount")

    def cite(self, references: str) -> str:
        """The full citation of ``"vaughn, p. 118; adam, p. 93"``, keys of sources.yaml."""
        return _citation(references)[0]


@cache
def load_tables(*, validate: bool = False) -> Tables:
    """The reference tables. ``validate`` first checks every file against the schema.

    Raises :class:`TableError` that names the file and the place.
    """
    if validate:
        for name in TABLES:
            check_table(name, _document(name))
    return Tables()


def check_table(name: str, document: object) -> None:
    """Hold one table's data against ``schemas/tables.schema.json``."""
    import json

    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import best_match

    schema = json.loads(schema_text("tables.schema.json"))
    fault = best_match(Draft202012Validator(schema).iter_errors(document))
    if fault is not None:
        place = ".".join(str(step) for step in fault.absolute_path)
        raise TableError(f"{name}.yaml: {place}: {fault.message}")


@cache
def _document(name: str) -> Any:
    # The C loader is ten times faster; these are our own files, so its terser messages do.
    return yaml.load(table_text(f"{name}.yaml"), Loader=_Loader)


@cache
def _table(name: str) -> dict[str, Row]:
    if name not in TABLES:
        raise TableError(f"no reference table '{name}'; there are: {', '.join(TABLES)}")
    rows: dict[str, Row] = {}
    for raw in _document(name)["rows"]:
        citation, strong = _cite(raw)
        row_name = raw["name"]
        if row_name in rows:
            raise TableError(f"{name}.yaml: two rows are named '{row_name}'")
        fields = MappingProxyType(raw)
        rows[row_name] = Row(name, row_name, raw["title"], citation, strong, fields)
    return rows


def _cite(raw: Mapping[str, Any]) -> tuple[str, bool]:
    """Citation and strength of a row or a figure, from its ``source`` or its ``mark``."""
    return _citation(raw["source"]) if "source" in raw else (raw["mark"], False)


@cache
def _citation(references: str) -> tuple[str, bool]:
    """In full what ``key, place; key, place`` cites; strong when one of the sources is."""
    sources = _document("sources")
    parts, strong = [], False
    for reference in references.split(";"):
        key, _, place = reference.strip().partition(", ")
        title = sources["strong"].get(key) or sources["weak"].get(key)
        if title is None:
            raise TableError(f"sources.yaml has no source '{key}'")
        strong = strong or key in sources["strong"]
        parts.append(f"{title}, {place}" if place else title)
    return "; ".join(parts), strong


def _is_figure(raw: object) -> bool:
    if isinstance(raw, dict):
        return "value" in raw
    if isinstance(raw, str):
        match = _MEASURE.fullmatch(raw)
        return match is not None and (match[1] in UNITS or match[1] in _OWN_UNITS)
    return isinstance(raw, int | float) and not isinstance(raw, bool)


def _inside(raw: Any, step: str) -> Any:
    """A figure of a group, or one end of a figure's range; ``None`` without it."""
    if isinstance(raw, dict) and "value" not in raw:
        return raw.get(step)
    return _end_of(raw, step)


def _end_of(raw: Any, end: str) -> Any:
    """One end of a figure's range as a figure with the same source; ``None`` without it."""
    if not isinstance(raw, dict) or end not in _ENDS or end not in raw:
        return None
    return {key: said for key, said in raw.items() if key not in _ENDS} | {"value": raw[end]}


def _value(row: Row, raw: Any) -> Value:
    spread = raw if isinstance(raw, dict) else {"value": raw}
    own = "source" in spread or "mark" in spread
    citation, strong = _cite(spread) if own else (row.citation, row.strong)
    number, dimension, powers, unit = _number(spread["value"])
    low, high, least, most = (_number(spread[end])[0] if end in spread else None for end in _ENDS)
    text, about = str(spread["value"]), (dimension, powers, unit, citation, strong)
    return Value(text, number, low, high, least, most, *about)


@lru_cache(maxsize=None, typed=True)
def _number(raw: object) -> tuple[float, str, Dimension, str]:
    """Canonical number, dimension, its powers and the unit of one written figure."""
    if isinstance(raw, int | float) and not isinstance(raw, bool):
        return float(raw), "ratio", RATIO, ""
    if isinstance(raw, str) and raw.startswith("-"):  # the low end of an error; no spec has one
        number, dimension, powers, unit = _number(raw[1:])
        return -number, dimension, powers, unit
    match = _MEASURE.fullmatch(raw) if isinstance(raw, str) else None
    if not isinstance(raw, str) or match is None:
        raise ValueError(f"{raw!r} is not a figure")
    unit = match[1]
    if unit in _OWN_UNITS:
        dimension, powers, factor = _OWN_UNITS[unit]
        return float(raw.removesuffix(unit)) * factor, dimension, powers, unit
    if unit not in UNITS:
        raise ValueError(f"{raw!r} has no known unit")
    dimension = UNITS[unit].dimension
    measure = parse_measure(raw, dimension)
    if not isinstance(measure, Measure):
        raise ValueError(f"{raw!r} is no {dimension}")
    return float(measure.value), dimension, DIMENSIONS[dimension], unit
