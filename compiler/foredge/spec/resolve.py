"""A schema-clean spec becomes a Book: stock typed, parts chosen, tables within reach."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime
from types import MappingProxyType
from typing import Any

from foredge.contract import Book, Lookup, Origin, Path, Problem, Quantity, count, error, leaf
from foredge.registry import Registry
from foredge.spec.convert import Converter, Refused, default_part, quantity
from foredge.spec.files import Files, no_files
from foredge.spec.money import money_problems
from foredge.spec.schema_generate import envelope_schema, plugin_schema
from foredge.tables import Tables, Value

METRIC_STEP = 0.5
IMPERIAL_STEP = 25.4 / 32


def resolve(
    data: Any, registry: Registry, tables: Tables, files: Files = no_files
) -> tuple[Book | None, list[Problem]]:
    """The book that ``data`` describes; ``data`` must have passed ``schema.check``.

    ``files`` reads what the spec names (a font). There is no book where a file cannot be
    had, or a plugin's own options class refuses what its schema allowed.
    """
    problems = [*_one_copy(data), *_bad_times(data), *_done_twice(data)]
    try:
        book = _book(data, registry, tables, files)
        return book, [*problems, *money_problems(book)]
    except Refused as refused:
        return None, [*problems, refused.problem]


def _book(data: Any, registry: Registry, tables: Tables, files: Files) -> Book:
    converter = Converter(registry, files=files)
    display = data.get("display", "metric")
    return Book(
        title=data["title"],
        copies=_copies(data),
        display=display,
        step_mm=IMPERIAL_STEP if display == "imperial" else METRIC_STEP,
        stock=MappingProxyType(
            {
                name: converter.stock_item(item, ("stock", name))
                for name, item in data.get("stock", {}).items()
            }
        ),
        sections=MappingProxyType(dict(_sections(data, registry, converter))),
        readings=MappingProxyType(dict(_readings(data.get("measured", {})))),
        lookup=_lookup(tables),
        words=_words(tables),
        choose_part=default_part(registry),
        embellishment=_parts(data, "embellishment", "embellishment", converter),
        finishing=_parts(data, "finishing", "finish", converter),
        closure=(
            converter.part("closure", data["closure"], ("closure",)) if "closure" in data else None
        ),
        bench=converter.bench(data.get("bench", {})),
        done=MappingProxyType(_done(data.get("done", []))),
        money=converter.purse(data.get("money", {})),
        print_on=data.get("print", "letter" if display == "imperial" else "a4"),
    )


def _copies(data: Any) -> Quantity:
    if "copies" in data:
        return quantity(data["copies"], envelope_schema()["properties"]["copies"], ("copies",))
    return count(1, "copies", Origin("default"))


def _sections(data: Any, registry: Registry, converter: Converter) -> Iterator[tuple[str, Any]]:
    """Each stage's options; the defaults where its section is absent."""
    for stage in registry.stages():
        said = data.get(stage.section)
        if isinstance(said, dict) and not _slotted(stage.section):
            yield stage.section, converter.options(said, stage, (stage.section,))
        elif not plugin_schema(stage).get("required"):
            yield stage.section, stage.options()


def _slotted(section: str) -> bool:
    """Whether a top-level key holds a part rather than a stage's options."""
    return "x-foredge-slot" in envelope_schema()["properties"].get(section, {})


def _parts(data: Any, key: str, kind: str, converter: Converter) -> tuple[Any, ...]:
    return tuple(
        converter.part(kind, item, (key, place)) for place, item in enumerate(data.get(key, []))
    )


def _readings(measured: dict[str, Any]) -> Iterator[tuple[str, Quantity]]:
    """Readings by key: ``board``, ``block.height``."""
    schema = envelope_schema()["properties"]["measured"]
    yield from _flat(measured, schema, ())


def _flat(said: Any, schema: dict[str, Any], key: Path) -> Iterator[tuple[str, Quantity]]:
    if "x-foredge-measure" in schema:
        yield ".".join(map(str, key)), quantity(said, schema, ("measured", *key), "reading")
        return
    for name, value in said.items():
        yield from _flat(value, schema["properties"][name], (*key, name))


def _done(entries: list[Any]) -> dict[str, str]:
    """When each finished operation was finished; empty where the spec does not say."""
    return {
        (entry if isinstance(entry, str) else entry["operation"]): (
            "" if isinstance(entry, str) else entry.get("at", "")
        )
        for entry in entries
    }


def _one_copy(data: Any) -> list[Problem]:
    """What speaks of one physical copy cannot stand beside several."""
    if data.get("copies", 1) <= 1:
        return []
    return [
        error(
            (key,),
            f"'{key}' speaks of one book, and copies is {data['copies']}",
            "one-copy-only",
            remedy="Write a small spec for each copy, with extends, and put it there",
            on_key=True,
        )
        for key in ("measured", "done")
        if key in data
    ]


def _bad_times(data: Any) -> list[Problem]:
    """Times that have the form of one, on a day that no calendar has."""
    return [
        error(
            ("done", place, "at"),
            f"there is no {entry['at']}: no calendar has that day",
            "wrong-form",
        )
        for place, entry in enumerate(data.get("done", []))
        if isinstance(entry, dict) and "at" in entry and not _is_time(entry["at"])
    ]


def _done_twice(data: Any) -> list[Problem]:
    """One operation under ``done`` a second time: which of the two would count?"""
    names = [
        entry if isinstance(entry, str) else entry["operation"] for entry in data.get("done", [])
    ]
    return [
        error(
            ("done", place),
            f"'{name}' is named under done already",
            "done-twice",
            remedy="Keep one of the two",
        )
        for place, name in enumerate(names)
        if name in names[:place]
    ]


def _is_time(text: str) -> bool:
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


def _lookup(tables: Tables) -> Lookup:
    """Figures of the tables as leaves: the same leaf each time, so that bands correlate."""
    known: dict[tuple[str, str, str], Quantity] = {}

    def look(table: str, row: str, figure: str) -> Quantity:
        key = (table, row, figure)
        if key not in known:
            found = tables.row(table, row)
            title = found.title
            label = title if figure == "amount" else f"{figure.replace('_', ' ')} of {title}"
            known[key] = _table_leaf(found.get(figure), ".".join(key), label)
        return known[key]

    return look


def _table_leaf(value: Value, name: str, label: str) -> Quantity:
    low = value.number if value.low is None else value.low
    high = value.number if value.high is None else value.high
    origin = Origin("table", text=value.text, citation=value.citation)
    return leaf(value.number, value.powers, name, origin, low=low, high=high, label=label)


def _words(tables: Tables) -> Callable[[str, str, str], str]:
    def words(table: str, row: str, figure: str) -> str:
        return tables.row(table, row).text(figure)

    return words
