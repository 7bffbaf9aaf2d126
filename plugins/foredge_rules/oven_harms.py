"""Things that do not bear the oven a relief is dried in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Build,
    Cloth,
    Part,
    Problem,
    Severity,
    cloth_figures,
    panel_of,
    reliefs_of,
    shapes_of,
)
from foredge_rules.telling import told

BEARS_HEAT = "foil-tape"
"""The tape that bears it."""


@dataclass(frozen=True, slots=True)
class OvenHarms:
    """Only a bare form of foil and foil tape goes in."""

    kind: str = "rule"
    name: str = "oven-harms"
    title: str = "What does not bear the oven"
    severity: Severity = Severity.WARNING
    consequence: str = "Tape curls, glue runs, magnets lose their pull, covers warp and blister"
    remedy: str = (
        "Dry it in air with a fan; or make it on a bare board, with foil tape, white glue under "
        "the core and a closure without magnets"
    )
    source: str = (
        "Ultimate Paper Mache, 'Fast paper mache' and 'How to keep mold from ruining your paper "
        "mache'; Ocean Box Designs, 'Magnets safety'; H&C Hotmelt, on hot-melt sticks"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief that is dried in an oven, with all that is harmed there."""
        heat = build.book.default("oven-bare").value
        for relief in reliefs_of(build.book):
            if relief.options.drying != "oven":
                continue
            harmed = list(_harmed(build, relief, heat))
            if harmed:
                yield told(
                    self,
                    (*relief.path, "drying"),
                    f"the oven has {heat:.0f} degC: {'; '.join(harmed)}",
                )


def _harmed(build: Build, relief: Part[Any], heat: float) -> Iterator[str]:
    book, said = build.book, relief.options
    shaped = shapes_of(book, relief, panel_of(build.quantity, said.on))[0]
    foil = any(one.shape.made == "core" for one in shaped) and said.core.card is None
    if foil and said.core.tape != BEARS_HEAT:
        yield "masking tape curls"
    softens = book.table("adhesives", "hot-glue", "softens_at").value
    if foil and said.core.tack == "hot-glue" and softens < heat:
        yield f"the hot glue under the core softens from {softens:.0f} degC"
    weak = book.practice("magnet-heat").value
    if book.closure is not None and book.closure.plugin.name == "magnets" and weak < heat:
        yield f"magnets weaken from {weak:.0f} degC"
    if said.made_on != "bare-board":
        yield from _of_the_cover(build, said.made_on)


def _of_the_cover(build: Build, made_on: str) -> Iterator[str]:
    """A covered case or a finished book, and its plastic."""
    what = "finished book" if made_on == "finished-book" else "covered case"
    yield f"a {what} warps"
    covering = build.book.sections["case"].covering.options
    for key in ("material", "sides"):
        stock = getattr(covering, key, None)
        if not isinstance(build.book.stock.get(stock or ""), Cloth):
            continue
        row = cloth_figures(build.book, stock, "cotton").row
        if build.book.words("cloth", row, "kind") == "imitation":
            yield f"the plastic of '{stock}' blisters"


PLUGIN = OvenHarms()
