"""A relief with plain floats in the place of quantities: hashable, and what they rested on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from foredge.contract.solid_check import in_floats
from foredge.contract.solids import Made, Placed, ReliefShape
from foredge.quantity import Program, Quantity


@dataclass(frozen=True, slots=True)
class Plain:
    """One shape in floats (mm, degrees)."""

    pieces: tuple[Placed[float], ...]
    made: Made


Relief = tuple[Plain, ...]
"""All shapes of one panel; a key of the memos."""


def plain(shapes: Sequence[ReliefShape]) -> Relief:
    """The values of ``shapes``."""
    return tuple(Plain(in_floats(shape.pieces), shape.made) for shape in shapes)


def controls(shapes: Sequence[ReliefShape]) -> tuple[Quantity, ...]:
    """What decided the form: every number from outside and every gate behind ``shapes``, once."""
    roots = [leaf for shape in shapes for leaf in _quantities(shape.pieces)]
    found: dict[tuple[str, str], Quantity] = {}
    for node in Program(roots).nodes:
        outside = node.op == "leaf" and node.origin is not None and node.origin.kind != "constant"
        if outside or node.op == "gate":
            found.setdefault((node.op, node.name or str(id(node))), node)
    return tuple(found.values())


def _quantities(tree: Any) -> Iterator[Quantity]:
    if isinstance(tree, Quantity):
        yield tree
    elif isinstance(tree, tuple):
        for branch in tree:
            yield from _quantities(branch)
    elif is_dataclass(tree) and not isinstance(tree, type):
        for field in fields(tree):
            yield from _quantities(getattr(tree, field.name))
