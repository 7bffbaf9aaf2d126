"""From PyYAML's nodes to plain data, with a place for every path and no surprise inside."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import yaml

from foredge.problem import Diagnostic, Path, Severity, Span
from foredge.spec.yaml_scalars import CANNOT, TAG, BadScalar, scalar, tag_name

AliasMarks = Mapping[tuple[int, int], yaml.Mark]
"""Where an alias stands: (id of its parent node, its index or the id of its key node)."""

_Pair = tuple[yaml.Node, yaml.Node, yaml.Node]  # the mapping that says it, key, value


class TooMuch(Exception):
    """The file is beyond a limit, so nothing of it is built."""

    def __init__(self, mark: yaml.Mark, text: str, rule: str) -> None:
        super().__init__(text)
        self.mark, self.text, self.rule = mark, text, rule


def too_many(mark: yaml.Mark, limit: int) -> TooMuch:
    """The error of a file, or of its aliases, with more than ``limit`` values."""
    text = f"with its aliases written out the file holds more than {limit:,} values"
    return TooMuch(mark, text, "too-many-values")


class Builder:
    """Builds the data of one document; ``values``, ``keys`` and ``problems`` grow with it."""

    def __init__(self, file: str, aliases: AliasMarks, max_nodes: int, max_depth: int) -> None:
        self.values: dict[Path, Span] = {}
        self.keys: dict[Path, Span] = {}
        self._file = file
        self._aliases = aliases
        self._max_nodes, self._max_depth = max_nodes, max_depth
        self._left = max_nodes
        self._active: set[int] = set()
        self._via: yaml.Mark | None = None  # the outermost alias being written out
        self._flat: dict[int, dict[str, _Pair]] = {}
        self._problems: dict[Diagnostic, None] = {}

    @property
    def problems(self) -> tuple[Diagnostic, ...]:
        """What is wrong, in the order of the file."""
        return tuple(sorted(self._problems, key=lambda one: (one.span.line, one.span.column)))

    def build(self, root: yaml.Node) -> Any:
        """The data under ``root``. Raises TooMuch past a limit."""
        return self._build(root, (), root.start_mark)

    def _build(self, node: yaml.Node, path: Path, use: yaml.Mark) -> Any:
        """Data of ``node``, which is used at ``use`` (elsewhere than it stands, if an alias)."""
        self._spend(1, use)
        self.values[path] = self._span(node.start_mark)
        if isinstance(node, yaml.ScalarNode):
            return self._scalar(node)
        if id(node) in self._active:
            self._tell(use, "this alias stands inside the very thing it names", "alias-in-itself")
            return None
        if len(path) >= self._max_depth:
            text = f"this is nested more than {self._max_depth} deep"
            raise TooMuch(self._via or use, text, "too-deep")
        via = self._via
        if via is None and use is not node.start_mark:
            self._via = use
        self._active.add(id(node))
        data = self._mapping(node, path) if _is_mapping(node) else self._sequence(node, path)
        self._active.discard(id(node))
        self._via = via
        return data

    def _sequence(self, node: yaml.Node, path: Path) -> list[Any]:
        self._check_tag(node, "seq")
        items = []
        for index, item in enumerate(node.value):
            use = self._aliases.get((id(node), index), item.start_mark)
            place = (*path, index)
            self.keys[place] = self._span(use)
            items.append(self._build(item, place, use))
        return items

    def _mapping(self, node: yaml.Node, path: Path) -> dict[str, Any]:
        data = {}
        for key, (parent, key_node, value) in self._flatten(node).items():
            self._spend(1, key_node.start_mark)
            use = self._aliases.get((id(parent), id(key_node)), value.start_mark)
            place = (*path, key)
            self.keys[place] = self._span(key_node.start_mark)
            data[key] = self._build(value, place, use)
        return data

    def _flatten(self, node: yaml.Node) -> dict[str, _Pair]:
        """The entries of a mapping, merge keys followed; what it says itself comes last."""
        known = self._flat.get(id(node))
        if known is not None:
            return known
        self._check_tag(node, "map")
        own: dict[str, _Pair] = {}
        merged: dict[str, _Pair] = {}
        first: dict[str, yaml.Mark] = {}
        self._flat[id(node)] = own  # what a mapping that merges itself sees
        for key_node, value in node.value:
            key = self._key(key_node)
            if key is None:
                continue
            merges = key_node.tag == TAG + "merge"
            told = first.setdefault("<<" if merges else "=" + key, key_node.start_mark)
            if told is not key_node.start_mark:
                self._tell_twice(key, told, key_node.start_mark)
            elif merges:
                merged = self._merge(node, key_node, value)
            else:
                own[key] = (node, key_node, value)
        flat = merged | own
        self._flat[id(node)] = flat
        return flat

    def _merge(self, node: yaml.Node, key: yaml.Node, value: yaml.Node) -> dict[str, _Pair]:
        """Entries that ``<<: value`` brings: of one mapping, or of a list, the first winning."""
        use = self._aliases.get((id(node), id(key)), value.start_mark)
        sources = [(value, use)]
        if isinstance(value, yaml.SequenceNode):
            sources = [
                (item, self._aliases.get((id(value), index), item.start_mark))
                for index, item in enumerate(value.value)
            ]
        merged: dict[str, _Pair] = {}
        self._active.add(id(node))
        for source, place in sources:
            if not _is_mapping(source):
                self._tell(place, "'<<' takes a mapping, or a list of mappings", "merge-of-text")
            elif id(source) in self._active:
                text = "this alias stands inside the very thing it names"
                self._tell(place, text, "alias-in-itself")
            else:
                entries = self._flatten(source)
                self._spend(len(entries), place)
                merged = entries | merged
        self._active.discard(id(node))
        return merged

    def _key(self, node: yaml.Node) -> str | None:
        if isinstance(node, yaml.ScalarNode) and node.tag == TAG + "merge":
            return "<<"
        if isinstance(node, yaml.ScalarNode) and node.tag == TAG + "str":
            key = self._scalar(node)
            return key if isinstance(key, str) else None
        if isinstance(node, yaml.ScalarNode) and node.tag.startswith(TAG) and node.value:
            text = f'the key {node.value} is not text; write it in quotes: "{node.value}"'
        elif isinstance(node, yaml.ScalarNode) and not node.value:
            text = "a key is missing before this ':'"
        else:
            text = "a key must be plain text"
        self._tell(node.start_mark, text, "key-not-text")
        return None

    def _scalar(self, node: yaml.ScalarNode) -> Any:
        result = scalar(node)
        if isinstance(result, BadScalar):
            self._tell(node.start_mark, result.text, result.rule)
            return result.instead
        return result

    def _check_tag(self, node: yaml.Node, expected: str) -> None:
        if node.tag != TAG + expected:
            text = f"the tag {tag_name(node)} is not known; {CANNOT}"
            self._tell(node.start_mark, text, "unknown-tag")

    def _spend(self, nodes: int, mark: yaml.Mark) -> None:
        self._left -= nodes
        if self._left < 0:
            raise too_many(self._via or mark, self._max_nodes)

    def _tell_twice(self, key: str, first: yaml.Mark, again: yaml.Mark) -> None:
        lines = f"on line {first.line + 1} and again on line {again.line + 1}"
        if first.line == again.line:
            lines = f"twice on line {first.line + 1}"
        self._tell(again, f"the key '{key}' stands {lines}; keep one", "duplicate-key")

    def _tell(self, mark: yaml.Mark, text: str, rule: str) -> None:
        self._problems[Diagnostic(self._span(mark), Severity.ERROR, text, rule)] = None

    def _span(self, mark: yaml.Mark) -> Span:
        return Span(self._file, mark.line + 1, mark.column + 1)


def _is_mapping(node: yaml.Node) -> bool:
    return isinstance(node, yaml.MappingNode)
