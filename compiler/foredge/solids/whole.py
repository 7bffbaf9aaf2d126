"""All parts of a panel put together: core, insets, clay."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from manifold3d import CrossSection, Manifold, OpType

from foredge.contract.solids import Placed, Ring, Slab, Tube
from foredge.solids.bodies import body, place, union
from foredge.solids.plain import Plain, Relief

BUDGETS = ((128, 60_000), (64, 300_000))
"""Segments, and the triangles (before the union) up to which a relief may have so many: about
a second of work each."""

LEAST = 32


@dataclass(frozen=True, slots=True)
class Clay:
    """What the clay is made into: ``skin`` dry thickness in mm; ``shrinkage`` and ``rim`` as
    shares, for rigid insets."""

    skin: float
    shrinkage: float = 0.0
    rim: float = 0.5


@dataclass(frozen=True, slots=True)
class Whole:
    """Bodies of one relief. ``outer`` is everything but the insets, solid; ``sockets`` is the
    room clay and core leave for the insets."""

    core: Manifold
    rigid: Manifold
    outer: Manifold
    sockets: Manifold


def segments(relief: Relief) -> int:
    """The finer of the two numbers of segments the relief is computed at: 128, 64 or 32.

    The many small parts of a large relief need fewer, and the time stays bounded. With 128 or
    64 the figures keep to 0.01 %, with 32 (above some 140 domes or 1200 corners) to 0.05 %.
    """
    return next((n for n, most in BUDGETS if _triangles(relief, n) <= most), LEAST)


def _triangles(relief: Relief, n: int) -> int:
    """About as many as the pieces have together; a plate is counted for its many hulls too."""
    found = 0
    for shape in relief:
        for piece in shape.pieces:
            match piece.solid:
                case Tube(points=points):
                    found += len(points) * n * n // 2
                case Ring():
                    found += 2 * n * n
                case Slab(outline=outline):
                    found += 8 * len(outline) * n
                case _:
                    found += n * n // 2
    return found


def core_of(relief: Relief, n: int) -> Manifold:
    """The light cores, with room for the insets."""
    core = union([place(piece, 0.0, n) for piece in _pieces(relief, "core")])
    return core - sockets_of(relief, Clay(0.0), n) if _has(relief, "rigid") else core


def sockets_of(relief: Relief, clay: Clay, n: int) -> Manifold:
    """The insets, larger by what the clay shrinks."""
    larger = 1 / (1 - clay.shrinkage)
    rooms = []
    for piece in _pieces(relief, "rigid"):
        made = place(piece, 0.0, n).translate((-piece.x, -piece.y, -piece.lift))
        rooms.append(made.scale((larger,) * 3).translate((piece.x, piece.y, piece.lift)))
    return union(rooms)


def whole(relief: Relief, clay: Clay, n: int) -> Whole:
    """Everything, at ``n`` segments."""
    grown = [place(piece, clay.skin, n) for piece in _pieces(relief, "core")]
    solid = [place(piece, 0.0, n) for piece in _pieces(relief, "clay")]
    rims = [_rim(piece, clay, n) for piece in _pieces(relief, "rigid")]
    rigid = union([place(piece, 0.0, n) for piece in _pieces(relief, "rigid")])
    outer = union([*grown, *solid, *rims])
    return Whole(core_of(relief, n), rigid, outer, sockets_of(relief, clay, n))


def footprint(relief: Relief, clay: Clay, n: int) -> CrossSection:
    """The finished relief seen from above: the outlines of all pieces together."""
    shadows = [shadow for shape in relief for shadow in _shadows(shape, clay, n)]
    return CrossSection.batch_boolean(shadows, OpType.Add) if shadows else CrossSection()


def _shadows(shape: Plain, clay: Clay, n: int) -> Iterator[CrossSection]:
    for piece in shape.pieces:
        if shape.made == "rigid":
            yield _rim(piece, clay, n).project()
        yield place(piece, clay.skin if shape.made == "core" else 0.0, n).project()


def _rim(piece: Placed[float], clay: Clay, n: int) -> Manifold:
    """The clay that rings an inset, as high as ``clay.rim`` of it."""
    high = float(body(piece.solid, 0.0, n).bounding_box()[5])
    top = piece.lift + clay.rim * high
    return place(piece, clay.skin, n).trim_by_plane((0.0, 0.0, -1.0), -top)


def _pieces(relief: Relief, made: str) -> Iterator[Placed[float]]:
    for shape in relief:
        if shape.made == made:
            yield from shape.pieces


def _has(relief: Relief, made: str) -> bool:
    return any(shape.made == made for shape in relief)
