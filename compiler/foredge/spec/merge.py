"""Laying one part of a spec over another, with the place of every value kept."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from foredge.problem import Path, Span
from foredge.spec.yaml_reader import Positions


@dataclass(slots=True)
class Layer:
    """Data at ``path`` of the document that ``positions`` belongs to."""

    data: Any
    positions: Positions
    path: Path = ()

    def at(self, key: str | int) -> Layer:
        """The part under ``key``."""
        return Layer(self.data[key], self.positions, (*self.path, key))


@dataclass(slots=True)
class Merger:
    """Merges layers and collects the positions of the result.

    Mappings merge deeply; lists and scalars of the upper layer replace; so does a mapping
    whose ``use`` differs; ``key: null`` unsets. With ``keep_null`` a null stays, because
    the result is itself to be laid over something.
    """

    keep_null: bool = False
    values: dict[Path, Span] = field(default_factory=dict)
    keys: dict[Path, Span] = field(default_factory=dict)

    @property
    def positions(self) -> Positions:
        """Where each value of the result was said."""
        return Positions(self.values, self.keys)

    def merge(self, lower: Layer, upper: Layer, to: Path = ()) -> Any:
        """``upper`` laid over ``lower``, as the data at ``to`` of the result."""
        if not _deep(lower.data, upper.data):
            return self.copy(upper, to)
        self._place(upper, to)
        merged: dict[str, Any] = {}
        for key in [*lower.data, *(key for key in upper.data if key not in lower.data)]:
            place = (*to, key)
            if key not in upper.data:
                value = self.copy(lower.at(key), place)
            elif key not in lower.data:
                value = self.copy(upper.at(key), place)
            else:
                value = self.merge(lower.at(key), upper.at(key), place)
            if value is not None or self.keep_null:
                merged[key] = value
        return merged

    def copy(self, layer: Layer, to: Path = ()) -> Any:
        """The data of one layer, as the data at ``to`` of the result."""
        self._place(layer, to)
        if isinstance(layer.data, dict):
            items = {key: self.copy(layer.at(key), (*to, key)) for key in layer.data}
            return {k: v for k, v in items.items() if v is not None or self.keep_null}
        if isinstance(layer.data, list):
            return [self.copy(layer.at(i), (*to, i)) for i in range(len(layer.data))]
        return layer.data

    def _place(self, layer: Layer, to: Path) -> None:
        span = layer.positions.values.get(layer.path)
        if span is not None:
            self.values[to] = span
        key = layer.positions.keys.get(layer.path)
        if key is not None and to:
            self.keys[to] = key


def _deep(lower: Any, upper: Any) -> bool:
    """Whether ``upper`` merges into ``lower`` rather than replacing it."""
    if not isinstance(lower, dict) or not isinstance(upper, dict):
        return False
    use = upper.get("use")
    return use is None or lower.get("use") in (None, use)
