"""Linseed oil in the clay, and the rags that go with it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Path, Problem, Severity, reliefs_of, skin_of
from foredge_rules.telling import told

OIL = "linseed_oil.mass"


@dataclass(frozen=True, slots=True)
class LinseedRags:
    """It dries by taking up oxygen, and that makes heat."""

    kind: str = "rule"
    name: str = "linseed-rags"
    title: str = "Linseed oil in the clay"
    severity: Severity = Severity.WARNING
    consequence: str = "Rags and paper wet with it heat up in a heap and catch fire hours later"
    remedy: str = (
        "Take mineral oil; or lay every rag flat outdoors until it is stiff, or soak it in water"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each batch with linseed oil in it, by how much."""
        for quantity in build.whole.quantities:
            if (quantity.name or "").endswith(OIL):
                yield told(
                    self,
                    _place(build),
                    f"the clay is mixed with {quantity.value:.3g} g of linseed oil",
                )


def _place(build: Build) -> Path:
    for relief in reliefs_of(build.book):
        skin = skin_of(build.book, relief)
        if getattr(skin.options, "oil", "") == "linseed":
            return (*skin.path, "oil")
    return ("embellishment",)


PLUGIN = LinseedRags()
