"""``paper-clay``: pulp, glue, filler and flour, mixed at home; the recipe is a row of ``clays``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    Book,
    Duration,
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
from foredge_skins.batch import READY_MIXED, SETTING, batch
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
        Literal["plain", "with-boron", "setting-powder"],
        Meta(
            description="What the label of the joint filler says: plain is ready mixed, with-boron "
            "names boron, borax or boric acid, setting-powder is stirred with water and sets."
        ),
    ] = "plain"
    sets: (
        Annotated[
            Duration, Meta(description="How long a setting filler can be worked, by its bag.")
        ]
        | None
    ) = None
    oil: Annotated[
        Literal["mineral", "linseed"],
        Meta(description="Which oil, where the recipe has any; rags with linseed oil catch fire."),
    ] = "mineral"
    preservative: Annotated[
        Literal["none", "clove-oil", "bleach", "vinegar", "borax", "salt"],
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
        """By the recipe; its filler may set."""
        said: PaperClayOptions = part.options
        figures = skin_figures(book, part, said.recipe, "paper clay")
        filled = READY_MIXED in book.words("clays", said.recipe, "parts").split(", ")
        if said.filler != "setting-powder" or not filled:
            return figures
        usual = book.default("setting-filler-open")
        return replace(figures, sets=said.sets if said.sets is not None else usual)

    def mix(self, job: SkinJob) -> SkinResult:
        """Soak, beat, squeeze, mix."""
        said: PaperClayOptions = job.part.options
        idle = _idle(job.part, sets=job.figures.sets is not None)
        extra = StageResult(problems=(*_additives(job.part), *idle))
        added = _ADDED.get(said.preservative, Additive())
        instead = {READY_MIXED: SETTING} if job.figures.sets is not None else {}
        if said.oil == "linseed":
            instead["mineral-oil"] = "linseed-oil"
        made = batch(job, said.batch_yield, instead)
        return mixed(job, made, LAY, extra=extra, additive=added)


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
    "salt": Additive(
        (
            say("Dissolve a spoon of salt to each cup of clay in the water of the glue."),
            say("Keep the dry relief out of damp rooms: salt goes on drawing water."),
        )
    ),
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


def _idle(part: Part[Any], *, sets: bool) -> Iterator[Problem]:
    """Options that change nothing, because this clay has no filler that sets."""
    said: PaperClayOptions = part.options
    if sets:
        return
    if said.filler == "setting-powder":
        yield warning(
            (*part.path, "filler"),
            f"the recipe '{said.recipe}' has no joint filler in it, so none can set",
            "option-idle",
            remedy="Leave filler out, or take a recipe with joint filler, such as spreadable",
        )
    if said.sets is not None:
        yield warning(
            (*part.path, "sets"),
            "nothing in this clay sets: it only dries",
            "option-idle",
            remedy="Leave sets out, or write filler: setting-powder",
        )


PLUGIN = PaperClay()
