"""Sentences with quantities in them, kept apart until an emitter renders them."""

from __future__ import annotations

import string
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from foredge.quantity import Quantity

_FORMATTER = string.Formatter()


@dataclass(frozen=True, slots=True)
class Text:
    """A sentence such as ``Fold {sheets} sheets`` and what stands in its braces."""

    template: str
    values: Mapping[str, Quantity | str] = field(default_factory=lambda: MappingProxyType({}))

    def segments(self) -> Iterator[str | Quantity]:
        """Plain words and quantities in turn, ready to render."""
        for words, name, _, _ in _FORMATTER.parse(self.template):
            if words:
                yield words
            if name is not None:
                yield self.values[name]

    def quantities(self) -> Iterator[Quantity]:
        """The quantities it mentions."""
        for segment in self.segments():
            if isinstance(segment, Quantity):
                yield segment


def say(template: str, /, **values: Quantity | str) -> Text:
    """A :class:`Text`; every ``{name}`` in ``template`` must be among ``values``, and no more.

    Raises ValueError otherwise, so that a plugin's slip shows when it is first run.
    """
    wanted = {name for _, name, _, _ in _FORMATTER.parse(template) if name is not None}
    if wanted != set(values):
        raise ValueError(f"{template!r}: it names {sorted(wanted)} but is given {sorted(values)}")
    return Text(template, MappingProxyType(dict(values)))
