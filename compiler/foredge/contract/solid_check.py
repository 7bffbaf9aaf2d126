"""What a solid needs to be a body, and how far it reaches: pure arithmetic, no meshes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from typing import Any

from foredge.contract.polygon import faults_of_polygon
from foredge.contract.solids import (
    Cap,
    Frustum,
    Mound,
    Placed,
    Ridge,
    Ring,
    Slab,
    Solid,
    Tube,
)
from foredge.quantity import Quantity

LARGEST_MM = 2_000.0
"""Nothing on a book is larger."""

Disc = tuple[float, float, float]
"""x, y and radius in mm."""


def in_floats(tree: Any) -> Any:
    """A tree of solids with the values of its quantities (mm, degrees) in their place."""
    if isinstance(tree, Quantity):
        return float(tree.value)
    if isinstance(tree, tuple):
        return tuple(in_floats(branch) for branch in tree)
    if is_dataclass(tree) and not isinstance(tree, type):
        return type(tree)(*(in_floats(getattr(tree, field.name)) for field in fields(tree)))
    return tree


def faults_of_solid(solid: Solid[float]) -> list[str]:
    """Why no body can be made of ``solid``; nothing where one can."""
    faults = [
        f"one of its sizes comes to {value:g} mm; the largest that can be is {LARGEST_MM:g} mm"
        for value in _numbers(solid)
        if not math.isfinite(value) or abs(value) > LARGEST_MM
    ]
    return faults or list(_faults(solid))


def lost_under_skin(piece: Placed[Quantity], skin: Quantity) -> str:
    """What of a core's form a skin this thick would bury, in words; empty where nothing.

    A full ring's hole closes when the skin is as thick as the hole is wide from its middle.
    """
    solid = in_floats(piece.solid)
    if not isinstance(solid, Ring) or solid.sweep < 360:
        return ""
    hole = 2 * solid.radius - solid.width
    if 2 * skin.value < hole:
        return ""
    return f"a skin of {skin.value:g} mm closes the ring: its bare hole is {hole:g} mm across"


def _faults(solid: Solid[float]) -> Iterator[str]:
    match solid:
        case Cap():
            yield from _positive(base_radius=solid.base_radius, height=solid.height)
        case Mound():
            yield from _positive(
                radius_x=solid.radius_x, radius_y=solid.radius_y, height=solid.height
            )
        case Frustum(bottom_radius=bottom, top_radius=top):
            yield from _positive(height=solid.height)
            if min(bottom, top) < 0 or max(bottom, top) == 0:
                yield "its radii must not be negative, and not both 0"
        case Ring():
            yield from _ring(solid)
        case Tube():
            yield from _tube(solid)
        case Slab():
            yield from _positive(height=solid.height)
            yield from faults_of_polygon(solid.outline)
            if not 0 <= solid.bevel <= solid.height:
                yield f"its bevel of {solid.bevel:g} mm is deeper than it is thick"
        case Ridge():
            yield from _positive(length=solid.length, width=solid.width, height=solid.height)


def _ring(solid: Ring[float]) -> Iterator[str]:
    yield from _positive(radius=solid.radius, width=solid.width, height=solid.height)
    if solid.width > 2 * solid.radius:
        yield (
            f"its band of {solid.width:g} mm is too wide for a circle of "
            f"{2 * solid.radius:g} mm to the band's middle: it would lie in itself"
        )
    if not 0 < solid.sweep <= 360:
        yield f"it goes {solid.sweep:g} degrees round; it must be above 0 and at most 360"
    if not 0 <= solid.sunk < solid.height:
        yield "nothing of it stands above the board"


def _tube(solid: Tube[float]) -> Iterator[str]:
    if not solid.points or len(solid.points) != len(solid.radii):
        yield "it needs points, and as many radii"
    if any(radius <= 0 for radius in solid.radii):
        yield "its radii must be above 0"
    elif all(z + radius <= 0 for (_, _, z), radius in zip(solid.points, solid.radii, strict=False)):
        yield "nothing of it stands above the board"


def _positive(**sizes: float) -> Iterator[str]:
    for name, value in sizes.items():
        if not value > 0:
            yield f"its {name.replace('_', ' ')} must be above 0"


def _numbers(tree: Any) -> Iterator[float]:
    if isinstance(tree, float | int):
        yield float(tree)
    elif isinstance(tree, tuple):
        for branch in tree:
            yield from _numbers(branch)
    else:
        for field in fields(tree):
            yield from _numbers(getattr(tree, field.name))


def reach(pieces: Sequence[Placed[Quantity]]) -> Disc:
    """A disc that holds the plan of all ``pieces`` (without any skin).

    Its middle is that of the box about them.
    """
    discs = [disc for piece in pieces for disc in _discs_of(in_floats(piece))]
    left, right = min(x - r for x, _, r in discs), max(x + r for x, _, r in discs)
    head, tail = min(y - r for _, y, r in discs), max(y + r for _, y, r in discs)
    x, y = (left + right) / 2, (head + tail) / 2
    return x, y, max(math.hypot(px - x, py - y) + r for px, py, r in discs)


def _discs_of(piece: Placed[float]) -> Iterator[Disc]:
    turn = math.radians(piece.turn)
    flip = -1.0 if piece.mirrored else 1.0
    for x, y, radius in _discs(piece.solid):
        along, across = flip * x, y
        yield (
            piece.x + along * math.cos(turn) - across * math.sin(turn),
            piece.y + along * math.sin(turn) + across * math.cos(turn),
            radius,
        )


def _discs(solid: Solid[float]) -> list[Disc]:
    """Discs about the solid's own z whose hull holds its plan."""
    match solid:
        case Cap(base_radius=base, height=height):
            ball = (base**2 + height**2) / (2 * height)
            return [(0.0, 0.0, ball if height > base else base)]
        case Mound():
            return [(0.0, 0.0, max(solid.radius_x, solid.radius_y))]
        case Frustum():
            return [(0.0, 0.0, max(solid.bottom_radius, solid.top_radius))]
        case Ring():
            return _round(solid)
        case Tube():
            return [
                (x, y, radius) for (x, y, _), radius in zip(solid.points, solid.radii, strict=True)
            ]
        case Slab():
            return [(x, y, 0.0) for x, y in solid.outline]
        case Ridge(length=length, width=width):
            ends, sides = (-length / 2, length / 2), (-width / 2, width / 2)
            return [(x, y, 0.0) for x in ends for y in sides]


def _round(solid: Ring[float]) -> list[Disc]:
    if solid.sweep >= 360:
        return [(0.0, 0.0, solid.radius + solid.width / 2)]
    steps = [math.radians(solid.start + solid.sweep * step / 24) for step in range(25)]
    # Between two of 24 steps an arc bulges by at most 1 - cos(7.5 degrees) of its radius.
    spare = solid.radius * (1 - math.cos(math.radians(solid.sweep / 48)))
    band = solid.width / 2 + spare
    return [(solid.radius * math.cos(t), solid.radius * math.sin(t), band) for t in steps]
