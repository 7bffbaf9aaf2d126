"""Outlines of a finished relief for drawings, in mm."""

from __future__ import annotations

import math
from functools import lru_cache

from manifold3d import CrossSection, Manifold

from foredge.contract.relief_parts import Panel
from foredge.contract.solid_report import Contour, Overhang, Rings, Section
from foredge.contract.solids import ReliefShape
from foredge.drawing.model import Point
from foredge.quantity import Quantity
from foredge.solids.limits import refuse
from foredge.solids.plain import Relief, plain
from foredge.solids.whole import Clay, Whole, footprint, segments, whole

SMOOTH_MM = 0.005
"""Outlines are thinned to this: far below a drawn line."""


def level_cuts(
    shapes: tuple[ReliefShape, ...], skin: Quantity, heights_mm: tuple[float, ...]
) -> tuple[Contour, ...]:
    """See :func:`foredge.contract.level_cuts`."""
    made = drawn(plain(shapes), skin.value)
    finished = made.outer + made.rigid
    return tuple(Contour(height, rings_of(finished.slice(height))) for height in heights_mm)


def upright_cut(
    shapes: tuple[ReliefShape, ...], skin: Quantity, start: Point, end: Point
) -> Section:
    """See :func:`foredge.contract.upright_cut`."""
    made = drawn(plain(shapes), skin.value)
    length = math.dist(start, end)
    clay = made.outer - made.core - made.rigid
    return Section(
        length,
        (
            ("core", _upright(made.core, start, end)),
            ("clay", _upright(clay, start, end)),
            ("rigid", _upright(made.rigid, start, end)),
        ),
    )


def outline_of(shape: ReliefShape, skin: Quantity) -> Rings:
    """See :func:`foredge.contract.outline_of`."""
    return rings_of(_seen(shape, skin))


def overhang_of(shape: ReliefShape, skin: Quantity, panel: Panel) -> Overhang:
    """See :func:`foredge.contract.overhang_of`."""
    left, top, right, bottom = _seen(shape, skin).bounds()
    return Overhang(
        spine_mm=max(0.0, -left),
        fore_edge_mm=max(0.0, right - panel.width.value),
        head_mm=max(0.0, -top),
        tail_mm=max(0.0, bottom - panel.height.value),
    )


def top_of(shape: ReliefShape, skin: Quantity) -> float:
    """See :func:`foredge.contract.top_of`."""
    made = drawn(plain((shape,)), skin.value)
    return float((made.outer + made.rigid).bounding_box()[5])


def rings_of(section: CrossSection) -> Rings:
    """The closed rings of a plane section."""
    polygons = section.simplify(SMOOTH_MM).to_polygons()
    return tuple(tuple((float(x), float(y)) for x, y in ring) for ring in polygons)


@lru_cache(maxsize=4)
def drawn(relief: Relief, skin: float) -> Whole:
    clay = Clay(skin)
    refuse(relief, clay)
    return whole(relief, clay, segments(relief))


def _seen(shape: ReliefShape, skin: Quantity) -> CrossSection:
    relief, clay = plain((shape,)), Clay(skin.value)
    refuse(relief, clay)
    return footprint(relief, clay, segments(relief))


def _upright(made: Manifold, start: Point, end: Point) -> Rings:
    """``made`` cut along the line, seen with the way along it as x and the height as y."""
    if made.is_empty() or start == end:
        return ()
    turn = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
    moved = made.translate((-start[0], -start[1], 0.0)).rotate((0.0, 0.0, -turn))
    # Now the line is the x axis; laid over by a quarter turn, height becomes y.
    laid = moved.rotate((-90.0, 0.0, 0.0))
    length = math.dist(start, end)
    window = CrossSection.square((length, 1e5)).translate((0.0, -1.0))
    return rings_of(laid.slice(0.0) ^ window)
