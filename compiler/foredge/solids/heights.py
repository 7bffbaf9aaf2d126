"""A relief as a grid of heights, as it is seen from above."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from manifold3d import Manifold
from numpy.typing import NDArray

from foredge.contract.solid_report import Rings
from foredge.contract.solids import ReliefShape
from foredge.quantity import Quantity
from foredge.solids.outlines import drawn, rings_of
from foredge.solids.plain import plain

Numbers = NDArray[np.float64]
MOST_CELLS = 110_000
_AT_ONCE = 1_500_000
"""Pairs of a triangle and a point under it that are looked at together: some 100 MB."""


@dataclass(frozen=True, slots=True)
class Heights:
    """``z`` (mm, 0 beside the relief) at ``left + column * step``, ``top + row * step``;
    ``outline`` is its edge from above."""

    left: float
    top: float
    step: float
    z: Numbers
    outline: Rings


def heights_of(shapes: tuple[ReliefShape, ...], skin: Quantity, finest: float) -> Heights:
    """The finished relief on a grid, and as much of the ground round it as it is high.

    ``finest`` is the least step in mm; a large relief gets a coarser one.
    """
    made = drawn(plain(shapes), skin.value)
    body: Manifold = made.outer if made.rigid.is_empty() else made.outer + made.rigid
    x0, y0, _, x1, y1, high = (float(edge) for edge in body.bounding_box())
    margin = 1.5 * high + 2 * finest
    left, top, wide, tall = x0 - margin, y0 - margin, x1 - x0 + 2 * margin, y1 - y0 + 2 * margin
    step = max(finest, math.sqrt(wide * tall / MOST_CELLS))
    shape = math.ceil(tall / step) + 1, math.ceil(wide / step) + 1
    mesh = body.to_mesh()
    corners = np.asarray(mesh.vert_properties, dtype=np.float64)[:, :3]
    corners = (corners - np.array([left, top, 0.0])) / np.array([step, step, 1.0])
    z = _from_above(corners[np.asarray(mesh.tri_verts).astype(np.int64)], shape)
    return Heights(left, top, step, z, rings_of(body.project()))


def _from_above(triangles: Numbers, shape: tuple[int, int]) -> Numbers:
    """The highest triangle over every point of the grid; corners are in cells."""
    flat = np.zeros(shape[0] * shape[1])
    first, second, third = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    area = (second[:, 0] - first[:, 0]) * (third[:, 1] - first[:, 1]) - (
        second[:, 1] - first[:, 1]
    ) * (third[:, 0] - first[:, 0])
    faces_up = area > 1e-9
    triangles, area = triangles[faces_up], area[faces_up]
    low = np.ceil(triangles[:, :, :2].min(axis=1)).astype(np.int64)
    count = np.floor(triangles[:, :, :2].max(axis=1)).astype(np.int64) - low + 1
    points = np.clip(count, 0, None).prod(axis=1)
    ends = np.cumsum(points)
    start = 0
    while start < len(points):
        base = ends[start - 1] if start else 0
        end = max(start + 1, int(np.searchsorted(ends, base + _AT_ONCE, side="right")))
        one = slice(start, end)
        _lay(flat, shape[1], triangles[one], area[one], low[one], count[one], points[one])
        start = end
    return flat.reshape(shape)


def _lay(
    flat: Numbers, columns: int, triangles: Numbers, area: Numbers, low: NDArray[np.int64],
    count: NDArray[np.int64], points: NDArray[np.int64],
) -> None:  # fmt: skip
    """These triangles over what lies in ``flat`` already."""
    which = np.repeat(np.arange(len(points)), points)
    place = np.arange(len(which)) - np.repeat(np.cumsum(points) - points, points)
    across = np.maximum(count[which, 0], 1)
    x = low[which, 0] + place % across
    y = low[which, 1] + place // across
    one, two, three = (triangles[which, corner] for corner in range(3))
    whole = area[which]
    first = ((two[:, 0] - x) * (three[:, 1] - y) - (two[:, 1] - y) * (three[:, 0] - x)) / whole
    second = ((three[:, 0] - x) * (one[:, 1] - y) - (three[:, 1] - y) * (one[:, 0] - x)) / whole
    third = 1 - first - second
    inside = (first >= -1e-9) & (second >= -1e-9) & (third >= -1e-9)
    z = first * one[:, 2] + second * two[:, 2] + third * three[:, 2]
    np.maximum.at(flat, (y * columns + x)[inside], z[inside])
