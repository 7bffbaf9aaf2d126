"""Which item of the shelf a step means when it calls for a material by its name.

A step calls for ``Acrylic paint, umber``; the shelf has ``{kind: supply, material: acrylic
paint, colour: umber}``, or an item named ``white-glue``, or one whose material is a row of the
reference tables (``pva``). Small letters, hyphens and remarks in brackets do not count.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, lru_cache

from foredge.contract import Build, Flat, LedgerLine, StockItem, Thread, faces
from foredge.display import show_size
from foredge.tables import Row, Tables

NAMING = ("adhesives", "paints", "ingredients", "clays", "leaf", "armature", "cloth", "paper")
"""The tables whose titles steps call materials by."""


@dataclass(frozen=True, slots=True)
class Called:
    """What a step calls a material: every name of it, and its colour."""

    names: frozenset[str]
    whole: str
    colour: str


@lru_cache(maxsize=4096)
def fold(name: str) -> str:
    """``name`` as it is compared."""
    bare = re.sub(r"\([^)]*\)", " ", name.casefold())
    return " ".join(re.sub(r"[-_]", " ", bare).split())


@lru_cache(maxsize=4096)
def called(tables: Tables, material: str) -> Called:
    """The names that ``material`` goes by: the rows of the tables with its title."""
    titles = _titles(tables)
    parts = material.split(", ")
    for end in range(len(parts), 0, -1):
        rows = titles.get(fold(", ".join(parts[:end])))
        if rows:
            names = {fold(name) for row in rows for name in (row.title, row.name)}
            return Called(frozenset(names), fold(material), fold(", ".join(parts[end:])))
    head, _, colour = material.rpartition(", ")  # in no table: the colour is what follows last
    names = {fold(material), fold(head)} if head else {fold(material)}
    return Called(frozenset(names), fold(material), fold(colour) if head else "")


def rows_called(tables: Tables, material: str) -> tuple[Row, ...]:
    """Rows of the tables whose title or name ``material`` is, its colour left out."""
    names = called(tables, material).names
    titles = _titles(tables)
    rows = [row for name in sorted(names) for row in titles.get(name, ())]
    return tuple({(row.table, row.name): row for row in rows}.values())


@cache
def _titles(tables: Tables) -> Mapping[str, tuple[Row, ...]]:
    """Rows by their folded title and by their folded name."""
    found: dict[str, tuple[Row, ...]] = {}
    for table in NAMING:
        for row in tables.rows(table):
            for name in dict.fromkeys((fold(row.title), fold(row.name))):
                found[name] = (*found.get(name, ()), row)
    return found


def stock_for(build: Build, material: str) -> str | None:
    """The shelf's item that is ``material``; None where there is none."""
    if not _by_name(build):
        return None
    wanted = called(build.tables, material)
    scores = {
        name: score
        for name, item in _by_name(build).items()
        if (score := _score(build.tables, wanted, name, item))
    }
    return max(scores, key=lambda name: scores[name]) if scores else None


def _by_name(build: Build) -> dict[str, StockItem]:
    """Items a step may mean by a name alone; thread is always named by its item."""
    return {name: item for name, item in build.book.stock.items() if not isinstance(item, Thread)}


def _score(tables: Tables, wanted: Called, name: str, item: StockItem) -> int:
    """How well ``item`` is what is wanted; 0 where it is not."""
    label = getattr(item, "material", None) or name
    known = called(tables, label)
    if known.whole == wanted.whole:
        return 3
    if wanted.names.isdisjoint(known.names):
        return 0
    # The colour of a sheet or cloth is its look, not what it is.
    said = "" if isinstance(item, Flat) else getattr(item, "colour", None) or ""
    colour = fold(said) or known.colour
    if colour and wanted.colour:
        return 2 if colour == wanted.colour else 0
    return 1


def sized(build: Build, line: LedgerLine) -> str:
    """The material of ``line``, and the size of its sheets where the item has several."""
    item = build.book.stock.get(line.stock or "")
    if not isinstance(item, Flat) or not item.more:
        return line.material
    face = faces(item)[line.size]
    return f"{line.material}, {show_size(face.width, face.height, build.book.display)}"


def likely(build: Build, material: str) -> str | None:
    """The name of an item that looks like a misspelt ``material``."""
    labels = {
        fold(getattr(item, "material", None) or name): name
        for name, item in _by_name(build).items()
        if not isinstance(item, Flat)
    }
    near = get_close_matches(called(build.tables, material).whole, labels, n=1, cutoff=0.8)
    return labels[near[0]] if near else None
