"""Problems are values: what is wrong, where, and what a maker can do about it.

Stages and plugins report a :class:`Problem` against a path in the spec; only the
compiler turns a path into ``file:line:col`` (a :class:`Diagnostic`).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Any

Path = tuple[str | int, ...]
"""Where a value stands in the merged spec: ``("case", "boards", "layers", 0)``."""


class Severity(Enum):
    """How bad it is. Errors stop the build; the others do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Span:
    """A place in a file. ``line`` and ``column`` count from 1; columns count characters."""

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong with the value at ``path``.

    ``text`` is one sentence with the numbers in it; ``consequence`` says what happens at
    the bench, ``remedy`` what to do. ``rule`` is a kebab-case name. ``on_key`` points at
    the key rather than at the value (an unknown key, a missing one).
    """

    severity: Severity
    path: Path
    text: str
    rule: str
    consequence: str = ""
    remedy: str = ""
    source: str = ""
    on_key: bool = False


@dataclass(frozen=True, slots=True)
class Accepted:
    """A problem the maker accepted, and why. ``span`` is its place, once it is placed."""

    problem: Problem
    because: str
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """A problem at a place in a file, ready to be printed."""

    span: Span
    severity: Severity
    text: str
    rule: str
    consequence: str = ""
    remedy: str = ""
    source: str = ""

    @property
    def message(self) -> str:
        """What is wrong, what comes of it, and what to do, as sentences."""
        words = [self.text, self.consequence, self.remedy]
        return " ".join(_sentence(word) for word in words if word)

    def __str__(self) -> str:
        return f"{self.span}: {self.severity.value}: {self.message} [{self.rule}]"


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else text + "."


def error(path: Path, text: str, rule: str, **more: Any) -> Problem:
    """An error at ``path``; ``more`` is consequence, remedy, source, on_key."""
    return Problem(Severity.ERROR, path, text, rule, **more)


def warning(path: Path, text: str, rule: str, **more: Any) -> Problem:
    """A warning at ``path``; ``more`` is consequence, remedy, source, on_key."""
    return Problem(Severity.WARNING, path, text, rule, **more)


def note(path: Path, text: str, rule: str, **more: Any) -> Problem:
    """A note at ``path``; ``more`` is consequence, remedy, source, on_key."""
    return Problem(Severity.NOTE, path, text, rule, **more)
