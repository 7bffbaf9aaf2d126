"""A relief so near an edge that hands and hinge wear it off."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told

SMALL_MM = 0.05
"""Less than this no hand can tell."""


@dataclass(frozen=True, slots=True)
class ReliefNearEdge:
    """Keep-out distances of practice; a relief over the edge is another rule."""

    kind: str = "rule"
    name: str = "relief-near-edge"
    title: str = "Relief near the edge of its board"
    severity: Severity = Severity.NOTE
    consequence: str = "It is knocked off in use; beside the joint it keeps the cover from opening"
    remedy: str = "Leave 6 mm free at the joint and 4 mm at the other edges"
    source: str = "from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """What is left free on a board, against what is usual."""
        named = {one.name: one for one in build.whole.quantities}
        for relief in reliefs_of(build.book):
            on = relief.options.on
            near = []
            for edge in ("joint", "fore_edge", "head", "tail"):
                free = named.get(f"sculpt.free.{on}.{edge}")
                row = "relief-edge-spine" if edge == "joint" else "relief-edge"
                usual = build.book.practice(row).value
                if free is not None and on != "spine" and 0 <= free.value < usual - SMALL_MM:
                    near.append(f"{free.value:.1f} mm from the {edge.replace('_', '-')}")
            if near:
                yield told(self, relief.path, f"the relief ends {', '.join(near)}")


PLUGIN = ReliefNearEdge()
