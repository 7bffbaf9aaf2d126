"""A filler that sets: it is wetted for one layer at a time, and used at once."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Quantity, SkinResult, Text, cited, say
from foredge_stages.sculpt.reading import Relief
from foredge_stages.sculpt.weights import Weights


@dataclass(frozen=True, slots=True)
class Stirred:
    """``steps`` open each layer, ``time`` is what they take; ``quantities`` is what they tell."""

    steps: tuple[Text, ...] = ()
    time: Quantity | None = None
    quantities: tuple[Quantity, ...] = ()


def stirred(relief: Relief, weights: Weights, mixed: SkinResult) -> Stirred:
    """Powder and water for one layer; nothing where the filler does not set."""
    figures, setting = relief.figures, mixed.setting
    if figures.sets is None or setting is None:
        return Stirred()
    clay = weights.put_on / figures.layers * (1 + figures.waste)
    powder = (clay * setting.powder).named(
        f"sculpt.layer.{relief.on}.powder",
        label=f"setting filler for one layer, dry, {relief.on}",
        rule="this layer's share of the batch",
        source=cited(figures.waste, "the maker's choice"),
    )
    water = (clay * setting.water).named(
        f"sculpt.layer.{relief.on}.powder_water",
        label=f"water for that filler, {relief.on}",
        rule="what it is stirred with: about half as much as powder, by volume",
        source=cited(figures.waste, "the maker's choice"),
    )
    steps = (
        say("Stir {powder} of the setting filler into {water} of water: 2 parts to 1 by volume.",
            powder=powder, water=water),
        say("Beat it into this layer's share of the mix; use it at once, it sets in {sets}.",
            sets=figures.sets),
        say("Wash bowl and knife before it sets; clay that has begun to set is thrown out."),
    )  # fmt: skip
    return Stirred(steps, relief.book.practice("hand-glue-face"), (powder, water))
