"""What is known of a relief once it is measured: figures, outlines, cuts. Data only."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from foredge.drawing.model import Point
from foredge.quantity import Quantity

Rings = tuple[tuple[Point, ...], ...]
"""Closed rings in mm; filled by the even-odd rule."""


class SolidError(ValueError):
    """A tree of solids that no body can be made of: a plugin's slip, as a sentence."""


@dataclass(frozen=True, slots=True)
class Centre:
    """A centre of mass on the panel, ``z`` above the board's face. All 0 where there is none
    of it."""

    x: Quantity
    y: Quantity
    z: Quantity


@dataclass(frozen=True, slots=True)
class SolidReport:
    """A relief in figures, dry and finished; names start with the prefix asked for.

    ``solids`` is how many there are; behind it stands what decided their form. Volumes
    (mm3): ``core_volume`` of all light cores together, ``skin_volume`` of all clay
    (skin, solid clay, rims), ``rigid_volume`` of the insets. Areas (mm2): ``core_area`` to
    be taped (without the base), ``core_base`` where cores stand on the board, ``surface`` of
    the clay to be painted, ``base_area`` where the relief stands on the board and
    ``footprint_area`` its outline seen from above. ``height`` (mm) is of the finished
    relief, ``core_height`` of the bare core. ``footprint`` is that outline.
    """

    solids: Quantity
    core_volume: Quantity
    core_area: Quantity
    core_base: Quantity
    core_height: Quantity
    core_centre: Centre
    rigid_volume: Quantity
    rigid_centre: Centre
    skin_volume: Quantity
    skin_centre: Centre
    surface: Quantity
    base_area: Quantity
    footprint_area: Quantity
    height: Quantity
    footprint: Rings

    def quantities(self) -> tuple[Quantity, ...]:
        """All its figures, for a stage's result."""
        centres = (self.core_centre, self.rigid_centre, self.skin_centre)
        return (
            self.solids,
            self.core_volume,
            self.core_area,
            self.core_base,
            self.core_height,
            self.rigid_volume,
            self.skin_volume,
            self.surface,
            self.base_area,
            self.footprint_area,
            self.height,
            *(value for centre in centres for value in (centre.x, centre.y, centre.z)),
        )


@dataclass(frozen=True, slots=True)
class Overhang:
    """How far (mm) one shape with its skin reaches over each edge of its panel; 0 inside it.

    Over ``spine_mm`` lies the joint. On the spine itself that is the left edge, and
    ``fore_edge_mm`` the right one.
    """

    spine_mm: float
    fore_edge_mm: float
    head_mm: float
    tail_mm: float

    @property
    def most_mm(self) -> float:
        """The largest of the four."""
        return max(self.spine_mm, self.fore_edge_mm, self.head_mm, self.tail_mm)


@dataclass(frozen=True, slots=True)
class Contour:
    """The relief cut level at ``height_mm`` above the board."""

    height_mm: float
    rings: Rings


Body = Literal["core", "clay", "rigid"]


@dataclass(frozen=True, slots=True)
class Section:
    """The relief cut upright along a line: x is the way along it, y the height (up), in mm.

    One entry a body: the cut through the core, the clay, the rigid insets.
    """

    length_mm: float
    bodies: tuple[tuple[Body, Rings], ...]
