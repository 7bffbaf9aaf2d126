"""A relief that hangs over an edge of its board."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, overhang_of, panel_of, reliefs_of, shapes_of
from foredge_rules.telling import told

SMALL_MM = 0.05
"""Less than this no hand can tell."""


@dataclass(frozen=True, slots=True)
class ReliefOffPanel:
    """Head, tail and fore-edge."""

    kind: str = "rule"
    name: str = "relief-off-panel"
    title: str = "Relief off the panel"
    severity: Severity = Severity.ERROR
    consequence: str = "What stands over the edge has nothing under it and is knocked off"
    remedy: str = "Move the part inwards, make it smaller, or make the skin thinner"
    source: str = "geometry"

    def test(self, build: Build) -> Iterable[Problem]:
        """How far each part with its skin reaches over head, tail and fore-edge."""
        for relief in reliefs_of(build.book):
            on = relief.options.on
            panel, skin = panel_of(build.quantity, on), build.quantity(f"sculpt.skin.{on}")
            for one in shapes_of(build.book, relief, panel)[0]:
                over = overhang_of(one.shape, skin, panel)
                edges = {"head": over.head_mm, "tail": over.tail_mm}
                if on != "spine":
                    edges["fore-edge"] = over.fore_edge_mm
                far = [
                    f"{mm:.1f} mm over the {edge}" for edge, mm in edges.items() if mm > SMALL_MM
                ]
                if far:
                    yield told(self, one.part.path, f"'{one.name}' reaches {' and '.join(far)}")


PLUGIN = ReliefOffPanel()
