"""The compiled book: one immutable object that every emitter reads and none changes."""

from __future__ import annotations

import posixpath
from collections.abc import Mapping
from dataclasses import dataclass, field

from foredge.contract.book import Book
from foredge.contract.plan import Plan
from foredge.contract.plugin import Stage
from foredge.contract.work import Operation, StageResult
from foredge.problem import Accepted, Diagnostic, Path, Span
from foredge.quantity import Band, Quantity
from foredge.spec.yaml_reader import Positions
from foredge.tables import Tables


@dataclass(frozen=True, slots=True)
class Build:
    """Everything known about one spec (and variant).

    ``name`` is the output folder's name, ``file`` the spec as the user named it.
    ``stages`` are in the order they ran, ``whole`` is all their results merged,
    ``order`` every operation in the order of work. ``bands`` are by quantity name.
    ``plan`` is what the compiler plans over all stages.
    """

    name: str
    file: str
    book: Book
    stages: tuple[tuple[Stage, StageResult], ...]
    whole: StageResult
    order: tuple[Operation, ...]
    bands: Mapping[str, Band]
    positions: Positions
    tables: Tables
    plan: Plan = field(default_factory=Plan)
    diagnostics: tuple[Diagnostic, ...] = ()
    accepted: tuple[Accepted, ...] = ()

    def band(self, quantity: Quantity) -> Band:
        """The 95 % range of a quantity of this build; a named one is looked up."""
        known = self.bands.get(quantity.name or "")
        return known if known is not None else Band(quantity.value, quantity.value)

    def where(self, path: Path) -> Span:
        """The place in a file that said the value at ``path``."""
        return self.positions.of(path)

    def shown(self, file: str) -> str:
        """A file's name as the sheet shows it: from the spec's own folder, so that the same
        spec gives the same sheet wherever it is compiled from."""
        start = posixpath.dirname(self.file.replace("\\", "/"))
        return posixpath.relpath(file.replace("\\", "/"), start or ".")

    def quantity(self, name: str) -> Quantity:
        """The quantity called ``name``; raises KeyError when there is none."""
        return self.whole.quantity(name)
