"""Schema-clean data into the typed objects that stages and parts receive.

The walk follows the same schemas that the data was checked against: each measure becomes
a leaf that knows its place in the spec, each slot a plugin with its own options. What is
left is plain, and msgspec makes the structs of it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

import msgspec

from foredge.contract import (
    LINEAR_DENSITY,
    RATIO,
    Origin,
    Part,
    Path,
    Problem,
    Quantity,
    SpecFile,
    StockItem,
    error,
    leaf,
)
from foredge.contract.bench import Bench
from foredge.contract.money import Price, Purse
from foredge.registry import Registry
from foredge.spec.files import Files, no_files
from foredge.spec.measure import MeasureError
from foredge.spec.price import parse_price
from foredge.spec.schema_generate import (
    ANY_STOCK,
    Schema,
    envelope_schema,
    plugin_schema,
    stock_schema,
)
from foredge.spec.schema_keywords import branch_for, read_measure
from foredge.spec.units import DIMENSIONS

T = TypeVar("T")


class Refused(Exception):
    """What the schema allowed cannot be taken: a plugin's own class refuses it, or a file is
    not there."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.text)
        self.problem = problem


@dataclass(frozen=True, slots=True)
class Converter:
    """Turns data into objects, with the plugins of ``registry``; ``origin`` marks the leaves."""

    registry: Registry
    origin: str = "spec"
    files: Files = no_files

    def options(self, data: Any, plugin: Any, path: Path) -> Any:
        """The options object of ``plugin`` out of the mapping at ``path``.

        Raises :class:`Refused` where the class has checks of its own and they fail.
        """
        typed = self.walk(data, plugin_schema(plugin), path)
        try:
            return msgspec.convert(typed, plugin.options)
        except msgspec.ValidationError as failure:
            text = f"'{plugin.name}' does not take these options: {failure}"
            raise Refused(error(path, text, "options-refused")) from failure
        except Exception as failure:
            text = f"the options of '{plugin.name}' failed: {type(failure).__name__}: {failure}"
            remedy = "This is a fault in the plugin; report it to whoever made it"
            raise Refused(error(path, text, "plugin-failed", remedy=remedy)) from failure

    def part(self, kind: str, data: Any, path: Path) -> Part[Any]:
        """The plugin that ``use`` of the mapping at ``path`` chooses, with its options."""
        found = self.registry.find(kind, data["use"])
        if found is None:
            raise KeyError(f"no {kind} is called {data['use']!r}")
        return Part(found.plugin, self.options(data, found.plugin, path), path)

    def stock_item(self, data: Any, path: Path) -> StockItem:
        """One item of the shelf."""
        item: StockItem = msgspec.convert(self.walk(data, stock_schema(), path), ANY_STOCK)
        return item

    def bench(self, data: Any) -> Bench:
        """The spec's ``bench``."""
        schema = envelope_schema()["properties"]["bench"]
        return msgspec.convert(self.walk(data, schema, ("bench",)), Bench)

    def purse(self, data: Any) -> Purse:
        """The spec's ``money``."""
        schema = envelope_schema()["properties"]["money"]
        return msgspec.convert(self.walk(data, schema, ("money",)), Purse)

    def walk(self, data: Any, schema: Schema, path: Path) -> Any:
        """``data`` with quantities for its measures and parts for its slots."""
        if "x-foredge-measure" in schema:
            return quantity(data, schema, path, self.origin)
        if "x-foredge-price" in schema:
            return price(data, path)
        if "x-foredge-file" in schema:
            return self._file(data, schema, path)
        if "x-foredge-slot" in schema:
            return self.part(schema["x-foredge-slot"], data, path)
        if "anyOf" in schema:
            return self.walk(data, branch_for(data, schema["anyOf"])[0], path)
        if isinstance(data, dict):
            return self._entries(data, schema, path)
        if isinstance(data, list):
            return self._items(data, schema, path)
        if schema.get("type") == "integer":
            return int(data)
        return data

    def _file(self, data: str, schema: Schema, path: Path) -> SpecFile:
        """The file that the text names; raises :class:`Refused` where it cannot be had."""
        found = self.files(data, schema["x-foredge-file"], path)
        if isinstance(found, Problem):
            raise Refused(found)
        return found

    def _entries(self, data: dict[str, Any], schema: Schema, path: Path) -> dict[str, Any]:
        properties = schema.get("properties", {})
        others = schema.get("additionalProperties")
        others = others if isinstance(others, dict) else {}
        return {
            key: self.walk(value, properties.get(key, others), (*path, key))
            for key, value in data.items()
        }

    def _items(self, data: list[Any], schema: Schema, path: Path) -> list[Any]:
        first = schema.get("prefixItems", [])
        rest = schema.get("items")
        rest = rest if isinstance(rest, dict) else {}
        return [
            self.walk(value, first[place] if place < len(first) else rest, (*path, place))
            for place, value in enumerate(data)
        ]


def convert(data: Any, cls: type[T], path: Path, registry: Registry, schema: Schema) -> T:
    """The ``cls`` that ``data`` at ``path`` stands for; ``schema`` is what it was checked with."""
    return msgspec.convert(Converter(registry).walk(data, schema, path), cls)


def quantity(data: Any, schema: Schema, path: Path, origin: str = "spec") -> Quantity:
    """The leaf of one measure or count, named by its dotted path.

    Raises ValueError for what the schema would have refused.
    """
    name = ".".join(str(step) for step in path)
    label = next((step for step in reversed(path) if isinstance(step, str)), "").replace("_", " ")
    said = Origin(origin, path=path, text=str(data))
    dimension = schema["x-foredge-measure"]
    if dimension == "count":
        return leaf(float(data), RATIO, name, said, label=label, integer=True)
    reading = read_measure(data, schema)
    if isinstance(reading, MeasureError):
        raise ValueError(f"{name}: {reading.text}")
    powers = LINEAR_DENSITY if dimension == "thread-size" else DIMENSIONS[reading.dimension]
    return leaf(float(reading.value), powers, name, said, label=label)


def price(data: Any, path: Path) -> Price:
    """The price that ``data`` at ``path`` says; raises ValueError for what was to be refused."""
    reading = parse_price(str(data))
    if isinstance(reading, MeasureError):
        raise ValueError(f"{'.'.join(map(str, path))}: {reading.text}")
    return Price(reading.amount, reading.currency, path, str(data))


Parts = Callable[[str, str, Path], Part[Any]]


def default_part(registry: Registry) -> Parts:
    """How the default plugin of a slot is chosen: by kind and name, for the place of a path."""

    def choose(kind: str, name: str, path: Path) -> Part[Any]:
        found = registry.find(kind, name)
        if found is None:
            there = ", ".join(registry.names(kind)) or "none"
            raise LookupError(
                f"no {kind} is called '{name}', to be the default; there are: {there}"
            )
        needed = plugin_schema(found.plugin).get("required", [])
        missing = [key for key in needed if key != "use"]
        if missing:
            raise LookupError(
                f"the {kind} '{name}' of {found.owner} cannot be a default: "
                f"it must be told {', '.join(missing)}"
            )
        return Part(found.plugin, found.plugin.options(), path)

    return choose
