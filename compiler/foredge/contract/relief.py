"""What the core finds out about a relief: figures as quantities, outlines for drawings.

The solid library is loaded when one of these is first called, and by nothing before.
"""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract.relief_parts import Panel
from foredge.contract.solid_report import Contour, Overhang, Rings, Section, SolidReport
from foredge.contract.solids import ReliefShape
from foredge.drawing.model import Point
from foredge.quantity import Quantity


def measure_solids(
    shapes: Sequence[ReliefShape],
    skin: Quantity,
    *,
    prefix: str,
    shrinkage: Quantity | None = None,
    rim: Quantity | None = None,
) -> SolidReport:
    """The figures of all ``shapes`` of one panel under a ``skin`` (dry thickness, mm).

    Args:
        prefix: what the figures' names start with, such as ``sculpt.front``.
        shrinkage: the clay's linear shrinkage (a share): a rigid inset's socket is larger by
            1 / (1 - shrinkage). Without: none.
        rim: the share of a rigid inset's height the clay rings; without, one half (common
            practice).

    Only ``skin`` brings a band; everything else the shapes rest on is recorded as what decided
    the form. Raises :class:`SolidError` for a tree that no body can be made of.
    """
    from foredge.solids import report

    return report.measure(tuple(shapes), skin, prefix, shrinkage, rim)


def level_cuts(
    shapes: Sequence[ReliefShape], skin: Quantity, heights_mm: Sequence[float]
) -> tuple[Contour, ...]:
    """The finished relief cut level at each height."""
    from foredge.solids import outlines

    return outlines.level_cuts(tuple(shapes), skin, tuple(heights_mm))


def upright_cut(shapes: Sequence[ReliefShape], skin: Quantity, start: Point, end: Point) -> Section:
    """The finished relief cut upright from ``start`` to ``end`` (mm on the panel)."""
    from foredge.solids import outlines

    return outlines.upright_cut(tuple(shapes), skin, start, end)


def outline_of(shape: ReliefShape, skin: Quantity) -> Rings:
    """One shape with its skin, seen from above."""
    from foredge.solids import outlines

    return outlines.outline_of(shape, skin)


def overhang_of(shape: ReliefShape, skin: Quantity, panel: Panel) -> Overhang:
    """How far one shape with its skin reaches beyond its panel."""
    from foredge.solids import outlines

    return outlines.overhang_of(shape, skin, panel)


def top_of(shape: ReliefShape, skin: Quantity) -> float:
    """The greatest height (mm above the board) of one shape with its skin."""
    from foredge.solids import outlines

    return outlines.top_of(shape, skin)
