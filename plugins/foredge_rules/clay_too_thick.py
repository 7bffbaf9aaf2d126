"""Clay thicker than dries through."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import (
    Build,
    Problem,
    Severity,
    depth_of,
    figures_of,
    panel_of,
    reliefs_of,
    shapes_of,
)
from foredge_rules.telling import told

SLACK = 1.001
"""So that 3 mm in tenths of an inch still counts as 3 mm."""


@dataclass(frozen=True, slots=True)
class ClayTooThick:
    """The outside crusts over while the inside stays wet."""

    kind: str = "rule"
    name: str = "clay-too-thick"
    title: str = "Clay thicker than its layer allows"
    severity: Severity = Severity.WARNING
    consequence: str = "The outside crusts, the inside stays wet: cracks first, mould later"
    remedy: str = (
        "Build it in thinner layers, each dry before the next, or give the part a core of foil"
    )
    source: str = (
        "Ultimate Paper Mache, 'Paper mache clay' and 'How to keep mold from ruining "
        "your paper mache'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each layer, and each part of solid clay, against the thickest layer there may be."""
        for relief in reliefs_of(build.book):
            skin = figures_of(build.book, relief)
            most = skin.layer_most.value
            layer = skin.thickness.value / skin.layers.value
            if layer > most * SLACK:
                path = (*relief.path, "skin", "layers" if skin.layers_chosen else "thickness")
                yield told(
                    self,
                    path,
                    f"one layer of {skin.noun} would be {layer:.3g} mm thick when dry, and "
                    f"{most:.3g} mm is the most that dries through",
                )
            panel = panel_of(build.quantity, relief.options.on)
            for one in shapes_of(build.book, relief, panel)[0]:
                if one.shape.made != "clay":
                    continue
                depth = max(depth_of(piece).value for piece in one.shape.pieces)
                if depth > most * SLACK:
                    yield told(
                        self,
                        one.part.path,
                        f"'{one.name}' is {skin.noun} right through, {depth:.3g} mm deep, and "
                        f"{most:.3g} mm is the most that dries through",
                    )


PLUGIN = ClayTooThick()
