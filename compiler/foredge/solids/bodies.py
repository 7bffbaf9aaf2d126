"""One solid as a mesh of the solid library, grown by a skin, in its own frame.

Meshes are remembered, so equal parts share one. ``n`` is the number of segments of a full
turn.
"""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise

import manifold3d
import numpy as np
from manifold3d import CrossSection, Manifold

from foredge.contract.polygon import inset, signed_area
from foredge.contract.solid_check import faults_of_solid
from foredge.contract.solid_report import SolidError
from foredge.contract.solids import Cap, Frustum, Mound, Placed, Ridge, Ring, Slab, Solid, Tube
from foredge.drawing.model import Point
from foredge.solids import profiles
from foredge.solids.edges import Point3, fin_points, plate_hulls

FILLET = 2
"""The rounded edges of a plate's skin are small: they have half of the segments."""

LINK = 2
"""A tube is slender and has many links: they have half of the segments."""


@lru_cache(maxsize=256)
def body(solid: Solid[float], skin: float, n: int) -> Manifold:
    """``solid`` grown by ``skin`` mm and cut at its own z = 0.

    Raises :class:`SolidError` where no body can be made of it.
    """
    for fault in faults_of_solid(solid):
        raise SolidError(f"{type(solid).__name__}: {fault}")
    match solid:
        case Cap():
            made = _revolve(profiles.cap(solid.base_radius, solid.height, skin, n), n)
        case Mound():
            made = _revolve(profiles.hemisphere(n), n).scale(
                (solid.radius_x + skin, solid.radius_y + skin, solid.height + skin)
            )
        case Frustum():
            profile = profiles.frustum(solid.bottom_radius, solid.top_radius, solid.height, skin, n)
            made = _revolve(profile, n)
        case Ring():
            made = _ring(solid, skin, n)
        case Tube():
            made = _tube(solid, skin, n // LINK)
        case Slab():
            made = _slab(solid, skin, n // FILLET)
        case Ridge():
            made = _ridge(solid, skin, n)
    if made.status() != manifold3d.Error.NoError or made.is_empty():
        raise SolidError(f"nothing of it stands above the board: {solid}")
    return made


def place(piece: Placed[float], skin: float, n: int) -> Manifold:
    """A piece where it stands on its panel."""
    made = body(piece.solid, skin, n)
    if piece.mirrored:
        made = made.mirror((1.0, 0.0, 0.0))
    if piece.turn:
        made = made.rotate((0.0, 0.0, piece.turn))
    return made.translate((piece.x, piece.y, piece.lift))


def union(bodies: list[Manifold]) -> Manifold:
    """All of them as one; empty where there is none."""
    return Manifold.batch_boolean(bodies, manifold3d.OpType.Add) if bodies else Manifold()


def above_board(made: Manifold) -> Manifold:
    """What stands at z = 0 and higher."""
    return made.trim_by_plane((0.0, 0.0, 1.0), 0.0)


def _revolve(profile: list[Point], n: int, degrees: float = 360.0) -> Manifold:
    section = CrossSection([profile])
    return Manifold.revolve(section, profiles.steps(n, degrees), degrees)


def _hull(points: list[Point3]) -> Manifold:
    return Manifold.hull_points(np.asarray(points))


def _ring(solid: Ring[float], skin: float, n: int) -> Manifold:
    profile = profiles.ring(solid.radius, solid.width, solid.height, solid.sunk, skin, n)
    made = _revolve(profile, n, solid.sweep)
    if skin and solid.sweep < 360:
        made = union([made, *_ring_ends(solid, skin, n)])
    return made.rotate((0.0, 0.0, solid.start))


def _ring_ends(solid: Ring[float], skin: float, n: int) -> list[Manifold]:
    """What the skin adds at both ends of an arc: the oval, rounded over its flat end."""
    count = profiles.steps(n, 90.0)
    points: list[Point3] = []
    for step in range(count + 1):
        lean = math.radians(90.0 * step / count)
        thin = skin * math.cos(lean)
        axes = (solid.width / 2 + thin, solid.height / 2 + thin)
        middle = (solid.radius, solid.height / 2 - solid.sunk)
        points += [
            (x, -skin * math.sin(lean), z)
            for x, z in profiles.oval(middle, axes, 0.0, 360.0, n)[:-1]
        ]
    first = above_board(_hull(points))
    return [first, first.mirror((0.0, 1.0, 0.0)).rotate((0.0, 0.0, solid.sweep))]


def _tube(solid: Tube[float], skin: float, n: int) -> Manifold:
    radii = [radius + skin for radius in solid.radii]
    ends = list(zip(solid.points, radii, strict=True))
    if len(ends) == 1:
        ends *= 2
    links = [_link(start, end, first, last, n) for (start, first), (end, last) in pairwise(ends)]
    return above_board(union(links))


def _link(start: Point3, end: Point3, first: float, last: float, n: int) -> Manifold:
    """Two balls and the cone between them, wherever they are."""
    length = math.dist(start, end)
    made = _revolve(profiles.capsule(first, last, length, n), n)
    if length:
        dx, dy, dz = (b - a for a, b in zip(start, end, strict=True))
        lean = math.degrees(math.atan2(math.hypot(dx, dy), dz))
        made = made.rotate((0.0, lean, 0.0)).rotate((0.0, 0.0, math.degrees(math.atan2(dy, dx))))
    return made.translate(start)


def _slab(solid: Slab[float], skin: float, n: int) -> Manifold:
    outline = list(solid.outline)
    if signed_area(outline) < 0:
        outline.reverse()
    drawn_in = inset(outline, solid.bevel) if solid.bevel else outline
    if drawn_in is None:
        raise SolidError(f"a bevel of {solid.bevel:g} mm is too wide for its outline")
    bevel_at = solid.height - solid.bevel
    parts = [CrossSection([drawn_in]).extrude(solid.height + skin)]
    if solid.bevel and bevel_at:
        parts.append(CrossSection([outline]).extrude(bevel_at))
    if skin or solid.bevel:
        hulls = plate_hulls(outline, drawn_in, bevel_at, solid.height, skin, n)
        parts += [_hull(points) for points in hulls]
    return union(parts)


def _ridge(solid: Ridge[float], skin: float, n: int) -> Manifold:
    sphere = Manifold.sphere(1.0, n).to_mesh64().vert_properties
    ball = [(float(x), float(y), float(z)) for x, y, z in sphere]
    points = fin_points(solid.length, solid.width, solid.height, skin, ball)
    return above_board(_hull(points))
