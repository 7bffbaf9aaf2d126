"""Figures of a relief as plain floats, freed of the meshes' chords, and remembered.

A body with curved faces is drawn with chords, so its volume and area come out too small by
c / n^2 and less. Two numbers of segments, n and 2 n, give c; what is left goes with n^4
(L. F. Richardson, "The approximate arithmetical solution by finite differences", Phil. Trans.
R. Soc. A 210, 1911; page from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeVar

import numpy as np
from manifold3d import Manifold
from numpy.typing import NDArray

from foredge.solids.plain import Relief
from foredge.solids.whole import Clay, core_of, footprint, segments, whole

Numbers = NDArray[np.float64]
T = TypeVar("T", Numbers, float)
FLAT_MM = 1e-7
"""Nearer than this to z = 0, a corner lies on the board."""


@dataclass(frozen=True, slots=True)
class Mass:
    """Volume (mm3), area without base (mm2), base (mm2), first moments (mm4), top (mm)."""

    volume: float
    area: float
    base: float
    moment: tuple[float, float, float]
    top: float

    def centre(self, axis: int) -> float:
        """The centre of mass along ``axis``; 0 where there is no volume."""
        return self.moment[axis] / self.volume if self.volume > 0 else 0.0


SOLID = [0, 3, 4, 5]
"""Where volume and first moments stand among the numbers."""


@lru_cache(maxsize=64)
def core_figures(relief: Relief) -> Mass:
    """The light cores."""
    return _mass(_tended(segments(relief), lambda n: _core(relief, n)))


@lru_cache(maxsize=64)
def rigid_figures(relief: Relief) -> Mass:
    """The insets."""
    clay = Clay(0.0)
    return _mass(_tended(segments(relief), lambda n: _numbers(whole(relief, clay, n).rigid)))


@lru_cache(maxsize=64)
def clay_figures(relief: Relief, clay: Clay) -> Mass:
    """The clay: its mass, its painted surface as area, the relief's whole base, its top."""
    return _mass(_tended(segments(relief), lambda n: _clay(relief, clay, n)))


def clay_figures_near(relief: Relief, clay: Clay, skin: float) -> Mass:
    """The same under another ``skin`` (mm), as a band asks for it.

    What the other skin changes is computed with coarse meshes only: a hundredth of it is of no
    account beside the band, and the time is.
    """
    n = segments(relief)
    fine = _tended(n, lambda level: _clay(relief, clay, level))
    other = _clay(relief, replace(clay, skin=skin), n // 2)
    return _mass(fine + other - _clay(relief, clay, n // 2))


def footprint_area(relief: Relief, clay: Clay) -> float:
    """The area (mm2) of the finished relief's outline, seen from above."""
    return _tended(segments(relief), lambda n: _shadow(relief, clay, n))


def footprint_area_near(relief: Relief, clay: Clay, skin: float) -> float:
    """The same under another ``skin``, as :func:`clay_figures_near` has it."""
    coarse = segments(relief) // 2
    change = _shadow(relief, replace(clay, skin=skin), coarse) - _shadow(relief, clay, coarse)
    return footprint_area(relief, clay) + change


@lru_cache(maxsize=256)
def _shadow(relief: Relief, clay: Clay, n: int) -> float:
    return float(footprint(relief, clay, n).area())


def _tended(n: int, at: Callable[[int], T]) -> T:
    """What ``at`` (a number of segments -> figures) tends to."""
    return (4 * at(n) - at(n // 2)) / 3


def _mass(numbers: Numbers) -> Mass:
    volume, area, base, x, y, z, top = numbers.tolist()
    return Mass(volume, area, base, (x, y, z), top)


@lru_cache(maxsize=128)
def _core(relief: Relief, n: int) -> Numbers:
    return _numbers(core_of(relief, n))


@lru_cache(maxsize=256)
def _clay(relief: Relief, clay: Clay, n: int) -> Numbers:
    if any(shape.made == "rigid" for shape in relief):
        return _round_insets(relief, clay, n)
    # A grown part holds its core, so the clay is what is left without cutting the meshes.
    figures = _numbers(whole(relief, clay, n).outer)
    figures[SOLID] -= _core(relief, n)[SOLID]
    return figures


def _numbers(made: Manifold) -> Numbers:
    """Volume, area without base, base, the three first moments and the top of a mesh.

    By the divergence theorem: each triangle makes a tetrahedron with the origin.
    """
    if made.is_empty():
        return np.zeros(7)
    mesh = made.to_mesh64()
    corners = np.asarray(mesh.vert_properties)[:, :3]
    triangles = corners[np.asarray(mesh.tri_verts).astype(np.int64)]
    first, second, third = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    across = np.cross(second - first, third - first)
    areas = np.sqrt((across * across).sum(axis=1)) / 2
    on_board = (np.abs(triangles[:, :, 2]) < FLAT_MM).all(axis=1)
    sixths = (first * np.cross(second, third)).sum(axis=1)
    moments = (sixths[:, None] * (first + second + third)).sum(axis=0) / 24
    base = areas[on_board].sum()
    top = corners[:, 2].max()
    return np.array([sixths.sum() / 6, areas.sum() - base, base, *moments, top])


def _round_insets(relief: Relief, clay: Clay, n: int) -> Numbers:
    """The clay where there are insets: what is left of it beside their sockets.

    Its painted surface is the part of the outer surface that lies outside the sockets, which
    is half of (outer + sockets) + (outer - sockets) - sockets, each as a surface.
    """
    made = whole(relief, clay, n)
    beside = made.outer - made.sockets
    with_sockets = _numbers(made.outer + made.sockets)
    figures = _numbers(beside - made.core)
    figures[1] = (with_sockets[1] + _numbers(beside)[1] - _numbers(made.sockets)[1]) / 2
    finished = _numbers(made.outer + made.rigid)
    figures[2], figures[6] = finished[2], finished[6]
    return figures
