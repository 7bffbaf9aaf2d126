"""The bench work of a home-made clay: soak, beat, squeeze, mix."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Operation,
    Quantity,
    Setting,
    SkinJob,
    SkinResult,
    StageResult,
    Text,
    Use,
    cautions,
    cited,
    say,
)
from foredge_skins.batch import Batch, Ingredient


@dataclass(frozen=True, slots=True)
class Additive:
    """Something stirred in last: the words for it, and what to beware of."""

    words: tuple[Text, ...] = ()
    cautions: tuple[str, ...] = ()


def mixed(
    job: SkinJob,
    made: Batch,
    lay: tuple[Text, ...],
    *,
    extra: StageResult | None = None,
    additive: Additive | None = None,
) -> SkinResult:
    """All operations until the clay is ready. ``extra`` is what the skin itself adds."""
    work = StageResult(quantities=made.quantities()) + (extra or StageResult())
    before: tuple[str, ...] = ()
    if made.pulp is not None:
        pulp = _pulp(job, made.pulp, made.measures.spoken(made.pulp.volume))
        work, before = work + pulp, (pulp.operations[-1].id,)
    filler = _filler(job, made)
    mix = _mix(job, made, before, additive or Additive(), filler)
    return SkinResult(work + StageResult(operations=(mix,)), mix.id, lay, _setting(made, filler))


@dataclass(frozen=True, slots=True)
class _Filler:
    """A filler that sets: its powder and its water, apart."""

    powder: Quantity
    water: Quantity


def _filler(job: SkinJob, made: Batch) -> _Filler | None:
    stirred = made.setting
    if stirred is None:
        return None
    powder = stirred.mass * job.book.table("ingredients", stirred.row, "solids")
    return _Filler(powder, stirred.mass - powder)


def _setting(made: Batch, filler: _Filler | None) -> Setting | None:
    if filler is None:
        return None
    return Setting(filler.powder / made.makes, filler.water / made.makes)


def _pulp(job: SkinJob, pulp: Ingredient, spoken: str) -> StageResult:
    book = job.book
    dry = (pulp.mass * book.table("ingredients", "pulp", "solids")).named(
        f"{job.prefix}.paper",
        label="dry paper for the pulp",
        rule="squeezed pulp by the share of it that is paper",
        source=cited(book.table("ingredients", "pulp", "solids")),
    )
    water = (
        dry * book.default("pulp-soak-water") / book.table("ingredients", "water", "density")
    ).named(
        f"{job.prefix}.soak_water",
        label="water to soak the paper in",
        rule="by the mass of the dry paper",
        source=cited(book.practice("pulp-soak-water")),
    )
    soak = Operation(
        f"sculpt.soak-paper{job.suffix}",
        "Soak paper for the pulp",
        (
            say("Tear {dry} of soft, unprinted paper into bits the size of a thumbnail.", dry=dry),
            say(
                "The text block leaves {left} of off-cuts: use those first; egg boxes and "
                "unprinted newspaper do as well.",
                left=job.offcuts,
            ),
            say("Pour {water} of boiling water over it and leave it to soak.", water=water),
        ),
        book.practice("hand-set-up"),
        after=job.begin,
        wait=book.default("pulp-soak"),
        waiting="soaks over night",
        cautions=("boiling-water", "food-tools"),
        uses=(
            Use(
                "Dry paper for pulp",
                dry,
                note="off-cuts of the text block first",
                from_off_cuts=True,
            ),
        ),
        tools=("old pot or bucket",),
        batch=True,
    )
    beat = Operation(
        f"sculpt.beat-pulp{job.suffix}",
        "Beat and squeeze the pulp",
        (
            say("Beat it to a soft pulp, a little at a time with plenty of water."),
            say("Squeeze it in a cloth until it stops dripping, then pull the lumps apart."),
            say("That is {mass} of pulp, {spoken} of it loosely filled.",
                mass=pulp.mass, spoken=spoken),
            say("Trust the scales: a cup of pulp holds more or less by how hard it was squeezed."),
        ),
        book.practice("hand-pulp"),
        after=(soak.id, *job.due),
        cautions=("hot-pulp", "food-tools"),
        tools=("blender or stick mixer kept for craft", "straining cloth", "scales"),
    )  # fmt: skip
    return StageResult(quantities=(dry, water), operations=(soak, beat))


def _mix(
    job: SkinJob,
    made: Batch,
    after: tuple[str, ...],
    additive: Additive,
    filler: _Filler | None,
) -> Operation:
    book, noun = job.book, job.figures.noun
    bought = [one for one in made.ingredients if one.row != "pulp"]
    return Operation(
        f"sculpt.mix-clay{job.suffix}",
        f"Mix the {noun}",
        (
            *_trial(made),
            *(_measured(made, one) for one in made.ingredients if one is not made.setting),
            *_kept_dry(filler),
            say("Beat all of it smooth, the dry things last, until it holds a soft peak."),
            *additive.words,
            *_range(made),
            say("The batch makes {makes} or so; the relief takes {need}.",
                makes=made.makes, need=job.wet),
            _keep(job, noun),
        ),
        book.practice("hand-mix-clay"),
        after=after or job.due,
        cautions=tuple(dict.fromkeys((*_cautions(job, bought), *additive.cautions))),
        uses=tuple(_use(made, one, filler) for one in bought),
        tools=("bowl and spoon kept for craft", "cups and spoons", "scales"),
        batch=True,
    )  # fmt: skip


def _kept_dry(filler: _Filler | None) -> tuple[Text, ...]:
    """What is not in the bowl yet."""
    if filler is None:
        return ()
    return (
        say("Keep {powder} of setting filler dry: it is stirred in layer by layer, not now.",
            powder=filler.powder),
    )  # fmt: skip


def _use(made: Batch, one: Ingredient, filler: _Filler | None) -> Use:
    if one is made.setting and filler is not None:
        return Use(one.title, filler.powder, note="powder; a share for each layer")
    return Use(one.title, one.mass, note=made.measures.spoken(one.volume))


def _trial(made: Batch) -> tuple[Text, ...]:
    if made.first(("joint-filler", "joint-filler-powder")) is None or made.glue is None:
        return ()
    return (
        say("First stir a dab of the filler into a dab of the glue. It must stay smooth."),
        say("Where it turns to rubber the filler holds boron: take another filler."),
    )


def _measured(made: Batch, one: Ingredient) -> Text:
    return say(
        f"{one.title}: {{spoken}} ({{mass}}).",
        spoken=made.measures.spoken(one.volume),
        mass=one.mass,
    )


def _range(made: Batch) -> tuple[Text, ...]:
    stiff, glue = made.thickener, made.glue
    wet = say("Too wet: squeeze the pulp once more.")
    if stiff is not None and stiff.most is not None:
        wet = say(
            f"Too wet: {stiff.title.lower()} by the spoon, up to {{most}} of it in all.",
            most=stiff.most,
        )
    elif stiff is not None:
        wet = say(f"Too wet: a little more {stiff.title.lower()}, a spoon at a time.")
    dry = f"{glue.title[:1].lower()}{glue.title[1:]}" if glue is not None else "water"
    return (wet, say(f"Too dry, so that it cracks when it is bent: a spoon of {dry}."))


def _keep(job: SkinJob, noun: str) -> Text:
    keeps: Quantity = job.book.table("clays", job.figures.row, "keeps")
    return say(
        f"Keep the {noun} covered, and what is left closed and cold: it lasts {{keeps}}.",
        keeps=keeps,
    )


def _cautions(job: SkinJob, bought: list[Ingredient]) -> tuple[str, ...]:
    """Those of the recipe and of what goes into it, but for what belongs to the pulp."""
    told = ("boiling-water", "hot-pulp")
    rows = (cautions(job.book, "ingredients", one.row) for one in bought)
    found = (*job.figures.cautions, *(name for row in rows for name in row), "food-tools")
    return tuple(name for name in dict.fromkeys(found) if name not in told)
