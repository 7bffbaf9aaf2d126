"""The figures of a relief as recorded quantities.

Each is an ``opaque`` step over the relief's solids, the clay's over the skin's thickness too, so
a band of the skin reaches them by replay. The solids stand as one quantity, their number; what
decided their form (sizes and places of the parts, the panel, what the clay shrinks by) is
recorded there as ``given``, once.
"""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract.solid_report import Centre, SolidReport
from foredge.contract.solids import ReliefShape
from foredge.dimension import AREA, LENGTH, VOLUME, Dimension
from foredge.quantity import Quantity, given, number, opaque
from foredge.solids.figures import (
    Mass,
    clay_figures,
    clay_figures_near,
    core_figures,
    footprint_area,
    footprint_area_near,
    rigid_figures,
)
from foredge.solids.limits import refuse
from foredge.solids.outlines import rings_of
from foredge.solids.plain import Relief, controls, plain
from foredge.solids.whole import Clay, footprint, segments

RIM = 0.5
"""Share of an inset's height the clay rings. Common practice."""

_HANDBOOK = "I. N. Bronshtein and K. A. Semendyayev, Handbook of Mathematics, page from memory"
_AXES = {"x": 0, "y": 1, "z": 2}
_WORDS = {
    "area": "surface",
    "top": "height",
    "x": "middle's x",
    "y": "middle's y",
    "z": "middle's z",
}


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of a relief as a function of its solids and its skin: ``what`` of ``body``.

    Its name is what a formula calls it.
    """

    relief: Relief
    clay: Clay
    body: str
    what: str

    @property
    def __name__(self) -> str:
        return f"{_WORDS.get(self.what, self.what)} of the modelled {self.body}"

    def __call__(self, solids: float, skin: float = 0.0) -> float:
        if self.what == "footprint":
            if skin == self.clay.skin:
                return footprint_area(self.relief, self.clay)
            return footprint_area_near(self.relief, self.clay, skin)
        mass = self._mass(skin)
        if self.what in _AXES:
            return mass.centre(_AXES[self.what])
        return float(getattr(mass, self.what))

    def _mass(self, skin: float) -> Mass:
        if self.body == "core":
            return core_figures(self.relief)
        if self.body == "insets":
            return rigid_figures(self.relief)
        if skin == self.clay.skin:
            return clay_figures(self.relief, self.clay)
        return clay_figures_near(self.relief, self.clay, skin)


@dataclass(frozen=True, slots=True)
class _Maker:
    """Names and records the figures of one relief."""

    relief: Relief
    clay: Clay
    skin: Quantity
    solids: Quantity
    prefix: str

    def figure(
        self, body: str, what: str, dimension: Dimension, name: str, label: str, rule: str
    ) -> Quantity:
        """One of them; only the clay's rest on the skin."""
        inputs = (self.solids, self.skin) if body == "clay" else (self.solids,)
        made = opaque(Figure(self.relief, self.clay, body, what), inputs, dimension)
        return made.named(f"{self.prefix}.{name}", label=label, rule=rule, source=_HANDBOOK)

    def centre(self, body: str, name: str) -> Centre:
        """Three coordinates of a centre of mass."""
        return Centre(
            *(
                self.figure(
                    body,
                    axis,
                    LENGTH,
                    f"{name}.centre.{axis}",
                    f"{axis} of the {body}'s centre",
                    "first moment of the meshed body by its volume",
                )
                for axis in _AXES
            )
        )

    def volume(self, body: str, name: str, rule: str) -> Quantity:
        """A volume in mm3."""
        return self.figure(body, "volume", VOLUME, f"{name}.volume", f"volume of the {body}", rule)

    def area(self, body: str, what: str, name: str, label: str, rule: str) -> Quantity:
        """An area in mm2."""
        return self.figure(body, what, AREA, name, label, rule)

    def report(self) -> SolidReport:
        """All of them."""
        tops = [self._top("core", "core.height", "height of the bare core", "its highest point")]
        tops.append(
            self._top("clay", "height", "height of the relief", "highest point, skin included")
        )
        return SolidReport(
            solids=self.solids,
            core_volume=self.volume("core", "core", "all cores joined, above the board"),
            core_area=self.area(
                "core", "area", "core.area", "core to be taped", "its surface without its base"
            ),
            core_base=self.area(
                "core", "base", "core.base", "base of the core", "where it stands on the board"
            ),
            core_height=tops[0],
            core_centre=self.centre("core", "core"),
            rigid_volume=self.volume("insets", "insets", "all insets joined"),
            rigid_centre=self.centre("insets", "insets"),
            skin_volume=self.volume(
                "clay", "clay", "all parts grown by the skin, less core and insets"
            ),
            skin_centre=self.centre("clay", "clay"),
            surface=self.area(
                "clay", "area", "surface", "surface of the relief", "the clay that shows"
            ),
            base_area=self.area(
                "clay", "base", "base", "base of the relief", "where it stands on the board"
            ),
            footprint_area=self.area(
                "clay", "footprint", "footprint", "footprint", "its outline seen from above"
            ),
            height=tops[1],
            footprint=rings_of(footprint(self.relief, self.clay, segments(self.relief))),
        )

    def _top(self, body: str, name: str, label: str, rule: str) -> Quantity:
        return self.figure(body, "top", LENGTH, name, label, rule)


def measure(
    shapes: tuple[ReliefShape, ...],
    skin: Quantity,
    prefix: str,
    shrinkage: Quantity | None,
    rim: Quantity | None,
) -> SolidReport:
    """See :func:`foredge.contract.measure_solids`."""
    shrunk = number(0) if shrinkage is None else shrinkage
    ringed = number(RIM) if rim is None else rim
    relief = plain(shapes)
    clay = Clay(skin.value, shrunk.value, ringed.value)
    refuse(relief, clay)
    pieces = number(sum(len(shape.pieces) for shape in relief))
    solids = given(pieces, shrunk, ringed, *controls(shapes)).named(
        f"{prefix}.solids",
        label="solids of the relief",
        rule="every part is one solid or more; sizes and places are those of the spec",
        source="common practice",
    )
    return _Maker(relief, clay, skin, solids, prefix).report()
