"""A relief that reaches into the joint."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, overhang_of, panel_of, reliefs_of, shapes_of
from foredge_rules.telling import told

SMALL_MM = 0.05
"""Less than this no hand can tell."""


@dataclass(frozen=True, slots=True)
class ReliefOverJoint:
    """The joint bends at every opening; nothing rigid can lie on it."""

    kind: str = "rule"
    name: str = "relief-over-joint"
    title: str = "Relief across the joint"
    severity: Severity = Severity.ERROR
    consequence: str = "The book cannot open, or the relief breaks off where the cover folds"
    remedy: str = "Move the part away from the spine, make it smaller, or make the skin thinner"
    source: str = "geometry"

    def test(self, build: Build) -> Iterable[Problem]:
        """How far each part with its skin reaches over the spine edge of its panel."""
        for relief in reliefs_of(build.book):
            on = relief.options.on
            panel, skin = panel_of(build.quantity, on), build.quantity(f"sculpt.skin.{on}")
            for one in shapes_of(build.book, relief, panel)[0]:
                over = overhang_of(one.shape, skin, panel)
                reach = over.spine_mm
                if on == "spine":
                    reach = max(over.spine_mm, over.fore_edge_mm)
                if reach > SMALL_MM:
                    yield told(
                        self, one.part.path, f"'{one.name}' reaches {reach:.1f} mm into the joint"
                    )


PLUGIN = ReliefOverJoint()
