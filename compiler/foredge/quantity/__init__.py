"""The recorded computation: every number knows how it was made and what it rests on.

``node`` holds the immutable :class:`Quantity`, ``program`` replays a recorded computation
for bands, ``explain`` prints it as a tree.
"""

from foredge.quantity.node import (
    DimensionError,
    Gated,
    Origin,
    Quantity,
    ceil,
    choose,
    count,
    estimate,
    floor,
    gate,
    given,
    leaf,
    maximum,
    minimum,
    number,
    opaque,
    root,
    rounded,
    rounded_up,
    total,
)
from foredge.quantity.program import Band, Program, band, bands, blank, pack, unpack

__all__ = [
    "Band",
    "DimensionError",
    "Gated",
    "Origin",
    "Program",
    "Quantity",
    "band",
    "bands",
    "blank",
    "ceil",
    "choose",
    "count",
    "estimate",
    "floor",
    "gate",
    "given",
    "leaf",
    "maximum",
    "minimum",
    "number",
    "opaque",
    "pack",
    "root",
    "rounded",
    "rounded_up",
    "total",
    "unpack",
]
