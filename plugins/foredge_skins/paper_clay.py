"""``paper-clay``: pulp, glue, filler and flour, mixed at home; the recipe is a row of ``clays``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    Book,
    Part,
    Problem,
    SkinFigures,
    SkinJob,
    SkinOptions,
    SkinResult,
    StageResult,
    Text,
    Volume,
    say,
    skin_figures,
    warning,
)
from foredge_skins.batch import batch
from foredge_skins.mixing import Additive, mixed

Recipe = Literal["spreadable", "firm", "smooth", "wood-glue", "pulp-rice"]


class PaperClayOptions(SkinOptions, frozen=True, kw_only=True, tag="paper-clay"):
    """Home-made clay."""

    recipe: Annotated[Recipe, Meta(description="Row of the table clays it is mixed by.")] = (
        "spreadable"
    )
    batch_yield: (
        Annotated[Volume, Meta(description="What the recipe's own batch makes, as you found it.")]
        | None
    ) = None
    filler: Annotated[
        Literal["plain", "with-boron"],
        Meta(description="What the label of the joint filler says of boron, borax or boric acid."),
    ] = "plain"
    preservative: Annotated[
        Literal["none", "clove-oil", "bleach", "vinegar", "borax"],
        Meta(description="What is added against mould."),
    ] = "none"


@dataclass(frozen=True, slots=True)
class PaperClay:
    """The usual skin: spreads like thick icing, dries hard and light."""

    kind: str = "skin"
    name: str = "paper-clay"
    title: str = "Home-made paper clay"
    options: type[PaperClayOptions] = PaperClayOptions

    def figures(self, book: Book, part: Part[Any]) -> SkinFigures:
        """By the recipe."""
        return skin_figures(book, part, part.options.recipe, "paper clay")

    def mix(self, job: SkinJob) -> SkinResult:
        """Soak, beat, squeeze, mix."""
        said: PaperClayOptions = job.part.options
        extra = StageResult(problems=tuple(_additives(job.part)))
        added = _ADDED.get(said.preservative, Additive())
        return mixed(job, batch(job, said.batch_yield), LAY, extra=extra, additive=added)


LAY: tuple[Text, ...] = (
    say("Wet the ground with a brush, rub a thin smear of clay into it, then build up on that."),
    say("Spread it with a wet knife. Test the thickness with a pin that has a mark on it."),
)


_ADDED = {
    "clove-oil": Additive((say("Stir in one or two drops of clove oil, no more: it stains."),)),
    "bleach": Additive(
        (
            say("Stir in a few drops of bleach, away from anything sour, with a window open."),
            say("It slows mould in the bowl only; drying fast is what keeps it away for good."),
        ),
        ("bleach-acid",),
    ),
    "vinegar": Additive((say("Stir in a spoon of vinegar."),), ("bleach-acid",)),
    "borax": Additive((say("Stir in a pinch of borax; read its label first."),), ("boron",)),
}
"""What each preservative adds to the work."""


def _additives(part: Part[Any]) -> list[Problem]:
    """What a preservative does beside its work."""
    said: PaperClayOptions = part.options
    path = (*part.path, "preservative")
    if said.preservative == "vinegar" and said.recipe != "pulp-rice":
        return [
            warning(
                path,
                "vinegar meets the chalk in the joint filler",
                "acid-in-filler",
                consequence="It foams, loses its strength, and stays sour beside paper and metal",
                remedy="Leave it out: drying fast is what keeps mould away",
                source="from memory",
            )
        ]
    return []


PLUGIN = PaperClay()
