"""Cautions as the sheets tell them: at the step, and once in a digest."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from foredge.contract import Build
from foredge.emit.escape import escape
from foredge.tables import Row

SIGNALS = ("danger", "warning", "caution", "notice")
"""Signal words, gravest first (ANSI Z535.4-2007, 4.14: notice is for damage, not injury)."""


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution. ``hazard`` is what can happen, ``precaution`` what to do about it."""

    id: str
    signal: str
    title: str
    hazard: str
    precaution: str
    signs: str
    statements: str
    source: str

    @property
    def gravity(self) -> int:
        """0 for the gravest signal word."""
        return SIGNALS.index(self.signal.lower())


def caution(build: Build, name: str) -> Caution:
    """The caution ``name`` of the reference tables; TableError when there is none."""
    row = build.tables.row("cautions", name)
    signs, statements = (_codes(row, key) for key in ("signs", "statements"))
    return Caution(
        id=name,
        signal=row.text("signal").upper(),
        title=escape(row.title),
        hazard=escape(row.text("text")),
        precaution=escape(row.text("precaution")),
        signs=signs,
        statements=statements,
        source=escape(row.citation),
    )


def _codes(row: Row, key: str) -> str:
    """Codes seen in a source, then those that are not held against the standard yet."""
    seen, unseen = row.texts(key), row.texts(f"{key}_from_memory")
    if not unseen:
        return ", ".join(seen)
    marked = f"{', '.join(unseen)} (from memory)"
    return f"{', '.join(seen)}; {marked}" if seen else marked


@dataclass(frozen=True, slots=True)
class DigestEntry:
    """A caution, and the numbers of the steps it belongs to."""

    caution: Caution
    steps: tuple[str, ...]


def digest(build: Build, steps: Sequence[tuple[str, Sequence[str]]]) -> tuple[DigestEntry, ...]:
    """Every caution of ``steps`` (number, caution ids) once, gravest first."""
    where: dict[str, list[str]] = {}
    for number, names in steps:
        for name in dict.fromkeys(names):
            where.setdefault(name, []).append(number)
    return ordered(build, where)


def ordered(build: Build, where: Mapping[str, Sequence[str]]) -> tuple[DigestEntry, ...]:
    """Entries by gravity, then by the step they are first met at."""
    entries = [DigestEntry(caution(build, name), tuple(steps)) for name, steps in where.items()]
    return tuple(sorted(entries, key=lambda entry: entry.caution.gravity))
