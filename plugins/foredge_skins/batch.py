"""A batch of home-made clay: the recipe at the size that is needed, in spoons and in grams."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from foredge.contract import (
    VOLUME,
    Book,
    Origin,
    Quantity,
    SkinJob,
    TableError,
    cited,
    given,
    leaf,
    number,
)
from foredge_skins.kitchen import Kitchen, KitchenPart, fraction, kitchen

PULP = "pulp"
READY_MIXED = "joint-filler"
SETTING = "joint-filler-powder"
_GLUES = ("white-glue", "wood-glue", "rice-glue")
_THICKENERS = ("flour", "corn-starch")


@dataclass(frozen=True, slots=True)
class Ingredient:
    """One line of the recipe; ``volume`` fills whole measures, ``most`` is the working range's
    upper end, where the recipe has one."""

    row: str
    title: str
    volume: Quantity
    mass: Quantity
    most: Quantity | None


@dataclass(frozen=True, slots=True)
class Batch:
    """``part`` is the volume of one part, ``makes`` what the whole batch yields."""

    ingredients: tuple[Ingredient, ...]
    part: Quantity
    needed: Quantity
    makes: Quantity
    measures: Kitchen

    def first(self, rows: tuple[str, ...]) -> Ingredient | None:
        """The first ingredient among ``rows``."""
        return next((one for row in rows for one in self.ingredients if one.row == row), None)

    @property
    def glue(self) -> Ingredient | None:
        """What binds it."""
        return self.first(_GLUES)

    @property
    def setting(self) -> Ingredient | None:
        """The filler that sets, as it is when it is stirred."""
        return self.first((SETTING,))

    @property
    def thickener(self) -> Ingredient | None:
        """What makes it stiffer."""
        return self.first(_THICKENERS)

    @property
    def pulp(self) -> Ingredient | None:
        """The paper in it."""
        return self.first((PULP,))

    def quantities(self) -> tuple[Quantity, ...]:
        """Needed, mixed, and every ingredient by volume and by mass."""
        lines = [q for one in self.ingredients for q in (one.volume, one.mass)]
        return (self.needed, self.part, self.makes, *lines)


def batch(
    job: SkinJob,
    batch_yield: Quantity | None = None,
    instead: Mapping[str, str] | None = None,
) -> Batch:
    """The recipe ``job.figures.row`` at the size that ``job`` asks for.

    ``instead`` puts one ingredient in the room of another: linseed oil in that of mineral oil.
    """
    book, row = job.book, job.figures.row
    measures = kitchen(book)
    made = batch_yield if batch_yield is not None else book.table("clays", row, "yield")
    source = cited(book.table("clays", row, "yield"), "the maker's choice")
    needed = (job.wet * (1 + job.figures.waste)).named(
        f"{job.prefix}.needed",
        label=f"{job.figures.noun} to mix at the least",
        rule="the wet clay that dries to the skin asked for, and what stays in the bowl",
        source=cited(job.figures.waste, "the maker's choice"),
    )
    part = _part(job, needed / made, measures)
    makes = (part / book.table("clays", row, "batch_part") * made).named(
        f"{job.prefix}.makes",
        label=f"{job.figures.noun} the batch makes",
        rule="the yield of the recipe's own batch in proportion: volumes do not add up",
        source=source,
    )
    names = book.words("clays", row, "parts").split(", ")
    others = instead or {}
    lines = tuple(_ingredient(job, part, name, others.get(name, name)) for name in names)
    return Batch(lines, part, needed, makes, measures)


def _part(job: SkinJob, share: Quantity, measures: Kitchen) -> Quantity:
    """One part of the recipe for ``share`` of its own batch, up to what spoons can measure."""
    book, row = job.book, job.figures.row
    names = book.words("clays", row, "parts").split(", ")
    parts = [book.table("clays", row, f"parts.{name}") for name in names]
    wanted = (share * book.table("clays", row, "batch_part")).named(
        f"{job.prefix}.part.least",
        label="one part that would just do",
        rule="the recipe's own part in proportion to what it makes",
        source=cited(book.table("clays", row, "yield"), "common practice"),
    )
    excess = book.practice("batch-excess")
    fits = KitchenPart(
        tuple(fraction(part.value) for part in parts),
        measures.counts,
        measures.spoon.value,
        excess.value,
    )
    # What the maker mixes is decided here, and has no band of its own.
    origin = Origin("constant", text="what cups and spoons measure")
    decided = leaf(fits(wanted.value), VOLUME, f"{job.prefix}.part.decided", origin)
    return given(decided, wanted, excess, measures.spoon, *parts).named(
        f"{job.prefix}.part",
        label="one part of the recipe",
        rule="the least that will do and lets every ingredient fill whole cups and spoons, in the "
        "exact ratio of the recipe; a little more where that saves spoons",
        source=cited(book.table("clays", row, "yield"), "common practice"),
    )


def _ingredient(job: SkinJob, part: Quantity, name: str, stuff: str) -> Ingredient:
    """The line of ``name`` in the recipe, filled with ``stuff``."""
    book, row = job.book, job.figures.row
    title = book.words("ingredients", stuff, "title")
    share = book.table("clays", row, f"parts.{name}")
    exact = fraction(share.value)
    volume = given(part * number(exact.numerator) / number(exact.denominator), share).named(
        f"{job.prefix}.{stuff.replace('-', '_')}",
        label=f"{title}, by volume",
        rule="its parts of the recipe",
        source=cited(share),
    )
    density = book.table("ingredients", stuff, "density")
    mass = (volume * density).named(
        f"{job.prefix}.{stuff.replace('-', '_')}.mass",
        label=f"{title}, by mass",
        rule="volume by density, as it lies in a cup",
        source=cited(density),
    )
    return Ingredient(stuff, title, volume, mass, _most(book, row, name, part))


def _most(book: Book, row: str, name: str, part: Quantity) -> Quantity | None:
    """The upper end of an ingredient's range in this batch, where the recipe gives one."""
    usual = book.table("clays", row, f"parts.{name}")
    try:
        most = book.table("clays", row, f"parts.{name}.most")
    except TableError:
        return None
    return part * most if most.value > usual.value else None
