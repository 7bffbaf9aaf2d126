"""Where a number comes from, in words: the spec line, the table, the quantity upstream."""

from __future__ import annotations

from foredge.contract import Build
from foredge.display import show
from foredge.problem import Path
from foredge.quantity import Quantity


def whence(build: Build, node: Quantity) -> str:
    """``case.square, line 31``; a table's citation; a computed quantity's name."""
    if node.op == "gate" and not node.data.read:
        return f"{node.name or node.data.key}; {node.data.gate}: not yet measured"
    if node.op != "leaf" or node.origin is None:
        return node.name or ""
    origin = node.origin
    if origin.path is not None:
        return _joined(_place(build, origin.path), _written(node), origin.citation)
    kind = {"default": "default", "constant": "fixed by the rule"}.get(origin.kind, "")
    source = f"{node.name}" if origin.kind == "table" else kind
    return _joined(source, origin.citation)


def dotted(path: Path) -> str:
    """A path of the spec as the maker would say it: ``case.boards.layers[0]``."""
    text = ""
    for step in path:
        text += f"[{step}]" if isinstance(step, int) else f".{step}"
    return text.removeprefix(".")


def _place(build: Build, path: Path) -> str:
    span = build.where(path)
    line = f"line {span.line}"
    if span.file and span.file != build.file:
        line = f"{build.shown(span.file)} {line}"
    return f"{dotted(path)}, {line}"


def _written(node: Quantity) -> str:
    """What the spec says, where that is not what is shown anyway."""
    text = node.origin.text if node.origin is not None else ""
    return f'"{text}"' if text and text != show(node) else ""


def _joined(*parts: str) -> str:
    return "; ".join(part for part in parts if part)
