"""YAML into plain data and a side table of positions, in one pass.

Scalars follow the core schema of YAML 1.2.2 (10.3), less numbers with a leading zero: ``no``,
``12:30``, ``010`` and dates stay text. Whatever cannot be read becomes a
:class:`~foredge.problem.Diagnostic`; nothing here raises on any file.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

import yaml

from foredge.problem import Diagnostic, Path, Severity, Span
from foredge.spec.yaml_build import Builder, TooMuch, too_many
from foredge.spec.yaml_scalars import add_resolvers
from foredge.spec.yaml_words import explain_syntax

MAX_BYTES = 256_000
MAX_NODES = 20_000
MAX_DEPTH = 40

_BREAKS = re.compile("\r\n|[\n\r\x85\u2028\u2029]")  # as PyYAML counts lines


@dataclass(frozen=True, slots=True)
class Positions:
    """Where each path of the data stands in its file.

    ``values`` holds the place of each value, ``keys`` that of the key it stands under (for
    an item of a list: of the item). A path may be known here though the data no longer
    holds it, such as a key that ``null`` unset.
    """

    values: dict[Path, Span]
    keys: dict[Path, Span]

    def of(self, path: Path, on_key: bool = False) -> Span:
        """The span of ``path``, or of its deepest known part.

        A part that only leads to ``path`` is shown at its key: the value of a block mapping
        begins on its first entry, which has nothing to do with what is missing.
        """
        for length in range(len(path), -1, -1):
            known = path[:length]
            span = self.values.get(known)
            if span is not None:
                return self.keys.get(known, span) if on_key or length < len(path) else span
        return Span("", 1, 1)


@dataclass(frozen=True, slots=True)
class Document:
    """What one file says. ``data`` is None when the file could not be read at all.

    ``variants`` names the variants of a loaded spec (see :mod:`foredge.spec.inherit`).
    """

    data: Any
    positions: Positions
    problems: tuple[Diagnostic, ...] = ()
    variants: tuple[str, ...] = ()


def unread(span: Span, text: str, rule: str, **more: str) -> Document:
    """A document that holds nothing but the reason why it could not be read."""
    problem = Diagnostic(span, Severity.ERROR, text, rule, **more)
    return Document(None, Positions({(): Span(span.file, 1, 1)}, {}), (problem,))


def read_file(path: str | FilePath, shown_as: str) -> Document:
    """Read the file at ``path``; messages call it ``shown_as``."""
    start = Span(shown_as, 1, 1)
    try:
        place = FilePath(path)
        if place.is_dir():
            return unread(start, f"'{shown_as}' is a folder, not a file", "path-is-a-folder")
        if not place.exists():
            return unread(start, f"there is no file '{shown_as}'", "file-not-found")
        if not place.is_file():
            return unread(start, f"'{shown_as}' is not a plain file", "file-unreadable")
        with place.open("rb") as stream:
            raw = stream.read(MAX_BYTES + 1)
        size = place.stat().st_size
    except (OSError, ValueError) as failure:
        reason = getattr(failure, "strerror", None) or str(failure)
        return unread(start, f"'{shown_as}' cannot be read: {reason}", "file-unreadable")
    if len(raw) > MAX_BYTES:
        return _too_large(shown_as, max(size, len(raw)))
    try:
        return read_yaml(raw.decode("utf-8"), shown_as)
    except UnicodeDecodeError as failure:
        before = raw[: failure.start].decode("utf-8")
        line, column = _line_and_column(before)
        return unread(
            Span(shown_as, line, column),
            f"the file is not UTF-8: byte {failure.start} (0x{raw[failure.start]:02x}) on line "
            f"{line} begins no character; save the file as UTF-8",
            "not-utf-8",
        )


def read_yaml(text: str, file: str) -> Document:
    """Read ``text``; messages call it ``file``.

    Every problem that leaves the rest of the text readable is reported, not only the first.
    """
    size = len(text.encode("utf-8", "surrogatepass"))
    if size > MAX_BYTES:
        return _too_large(file, size)
    try:
        loader = Loader(text.removeprefix("\ufeff"))
    except yaml.reader.ReaderError as failure:
        line, column = _line_and_column(text.removeprefix("\ufeff")[: failure.position])
        return unread(
            Span(file, line, column),
            f"the character U+{failure.character:04X} cannot stand in a YAML file; take it out",
            "forbidden-character",
        )
    return _compose(loader, file)


def _compose(loader: Loader, file: str) -> Document:
    start = Span(file, 1, 1)
    try:
        root = loader.get_single_node()
        if root is None:
            return unread(start, "the file is empty", "empty-file")
        builder = Builder(file, loader.aliases, MAX_NODES, MAX_DEPTH)
        data = builder.build(root)
    except TooMuch as failure:
        return unread(_span(file, failure.mark), failure.text, failure.rule)
    except yaml.MarkedYAMLError as failure:
        mark, text, rule = explain_syntax(failure, loader.lines)
        return unread(_span(file, mark) if mark else start, text, rule)
    except RecursionError:
        return unread(start, f"the file is nested more than {MAX_DEPTH} deep", "too-deep")
    except (yaml.YAMLError, ValueError, OverflowError) as failure:
        # An escape such as "\U00110000" makes PyYAML raise ValueError.
        text = f"this cannot be read as YAML ({failure})"
        return unread(_span(file, loader.get_mark()), text, "yaml-syntax")
    finally:
        loader.dispose()
    return Document(data, Positions(builder.values, builder.keys), builder.problems)


class Loader(yaml.SafeLoader):
    """PyYAML's pure-Python loader with the scalars of YAML 1.2 and a limit to nesting."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012 - PyYAML's own class table

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.lines = _BREAKS.split(text)
        self.aliases: dict[tuple[int, int], yaml.Mark] = {}
        self._depth, self._left = 0, MAX_NODES

    def compose_node(self, parent: yaml.Node | None, index: Any) -> yaml.Node | None:
        event: Any = self.peek_event()  # type: ignore[no-untyped-call]
        mark: Any = event.start_mark
        if isinstance(event, yaml.AliasEvent) and index is not None:
            place = index if isinstance(index, int) else id(index)
            self.aliases[id(parent), place] = mark
        if isinstance(event, yaml.CollectionStartEvent) and self._depth >= MAX_DEPTH:
            text = f"this is nested more than {MAX_DEPTH} deep"
            raise TooMuch(mark, text, "too-deep")
        self._left -= 1
        if self._left < 0:  # stopped here, so that a huge file costs no more than a full one
            raise too_many(mark, MAX_NODES)
        self._depth += 1
        node = super().compose_node(parent, index)
        self._depth -= 1
        return node


add_resolvers(Loader)


def _span(file: str, mark: yaml.Mark) -> Span:
    return Span(file, mark.line + 1, mark.column + 1)


def _line_and_column(before: str) -> tuple[int, int]:
    """Line and column, from 1, of the character that follows ``before``."""
    lines = _BREAKS.split(before)
    return len(lines), len(lines[-1]) + 1


def _too_large(file: str, size: int) -> Document:
    text = f"the file has {size:,} bytes; at most {MAX_BYTES:,} are read"
    return unread(Span(file, 1, 1), text, "file-too-large")
