"""The edges of the leaves: leaf beside leaf, with what was done to them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal

from foredge.contract import EdgeLook, Inside, Item, Line, Shape, Stuff
from foredge.picture.colours import FLAT, Colour, colour_of, lit, mix, written
from foredge.picture.face import Faces
from foredge.picture.place import Box, Ring

_LEAVES = 34
"""Lines that stand for the leaves, at most."""


def stuff(faces: Faces, what: str, row: str) -> Stuff:
    """What the block, its end-paper or its cloth joint is made of; ``row`` where nobody says."""
    for one in faces.build.whole.looks:
        if isinstance(one, Inside) and one.what == what:
            return one.stuff
    return Stuff(row=row)


def edge_look(faces: Faces, edge: str) -> EdgeLook | None:
    """The last treatment of an edge of the block."""
    found = [
        one for one in faces.build.whole.looks if isinstance(one, EdgeLook) and edge in one.edges
    ]
    return found[-1] if found else None


def page_edges(
    faces: Faces, edge: str, box: Box, along: Literal["width", "height"]
) -> Iterator[Item]:
    """Leaf beside leaf in ``box``, lines along its ``along``, with the treatment of that edge."""
    paper, treated = colour_of(stuff(faces, "block", "book")), edge_look(faces, edge)
    colour, metal = paper, False
    if treated is not None and treated.how in ("even", "metal", "burnt"):
        strength = {"even": 0.9, "metal": 1.0, "burnt": 0.88}[treated.how]
        colour, metal = mix(paper, colour_of(treated.stuff), strength), treated.how == "metal"
    yield Shape((box.ring,), colour=written(lit(colour, FLAT)))
    upright = along == "height"
    room = box.right - box.left if upright else box.foot - box.top
    leaves = max(2, min(_LEAVES, int(room / 0.35)))
    for place in range(leaves):
        at = (place + 0.5) / leaves
        tone = FLAT + 0.2 * math.cos(math.tau * 1.5 * at) if metal else FLAT * 0.97
        tone -= 0.14 * (((place * 7) % 5) / 4)
        drawn = written(lit(colour, tone, metal=metal))
        yield Line(_across(box, at, upright), "fill", colour=drawn, width=0.5 * room / leaves)
    if treated is not None and treated.how == "specks":
        yield from _drops(box, colour_of(treated.stuff))
    yield Line(box.ring, "fill", True, written(lit(colour, 0.35)), 0.2)


def _across(box: Box, share: float, upright: bool) -> Ring:
    if upright:
        x = box.left + share * (box.right - box.left)
        return (x, box.top), (x, box.foot)
    y = box.top + share * (box.foot - box.top)
    return (box.left, y), (box.right, y)


def _drops(box: Box, colour: Colour) -> Iterator[Item]:
    """Fine drops, the same ones every time."""
    width, height = box.right - box.left, box.foot - box.top
    count = min(700, int(width * height * 0.45))
    rings = []
    for place in range(1, count + 1):
        x = box.left + width * ((place * 0.7548776662466927) % 1)
        y = box.top + height * ((place * 0.5698402909980532) % 1)
        half = 0.12 + 0.22 * ((place * 0.618) % 1) ** 3
        rings.append(((x, y - half), (x + half, y), (x, y + half), (x - half, y)))
    if rings:
        yield Shape(tuple(rings), colour=written(colour))
