"""The skin, layer by layer: laid on, smoothed, cracks filled, dried through, measured."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract import (
    Operation,
    Quantity,
    SkinResult,
    SoonAfter,
    StageResult,
    TableError,
    Text,
    Use,
    Wetting,
    dry_in_oven,
    dry_in_room,
    drying_of,
    given,
    maximum,
    number,
    say,
)
from foredge_stages.sculpt.armature import Armature, mark_steps
from foredge_stages.sculpt.core import PER_AREA
from foredge_stages.sculpt.reading import Relief
from foredge_stages.sculpt.setting import stirred
from foredge_stages.sculpt.weights import Weights

MOST_LAYERS = 8


def lay_skin(
    relief: Relief, weights: Weights, armature: Armature, mixed: SkinResult
) -> StageResult:
    """Every layer, and the filling of cracks. Its last operation is the last wet one."""
    figures, ready = relief.figures, mixed.ready
    filler = stirred(relief, weights, mixed)
    count = int(min(max(figures.layers.value, 1.0), MOST_LAYERS))
    layer = (figures.thickness / figures.layers).named(
        f"sculpt.layer.{relief.on}",
        label=f"one layer of the skin, dry, {relief.on}",
        rule="the skin in as many layers as its thickest one asks for",
        source=figures.source,
    )
    fresh = (layer / figures.kept).named(
        f"sculpt.layer.{relief.on}.fresh",
        label=f"one layer as it is laid on, {relief.on}",
        rule="on a rigid core it cannot draw in sideways: all it loses is thickness",
        source=figures.source,
    )
    dries = _dries(relief, layer).named(
        f"sculpt.layer.{relief.on}.dries",
        label=f"drying of one layer, {relief.on}",
        rule=_drying_rule(relief),
        source=figures.source,
    )
    operations: list[Operation] = []
    after = tuple(dict.fromkeys((*armature.last, ready)))
    for place in range(1, count + 1):
        words = (*filler.steps, *_words(relief, mixed.lay, (fresh, layer), place, count))
        one = _layer(relief, weights, place, words, (after, dries), ready)
        operations.append(_longer(one, filler.time))
        after = (operations[-1].id,)
    if relief.options.fill_cracks and figures.modelled:
        operations.append(_fill_cracks(relief, after, ready))
    return StageResult(
        quantities=(relief.skin, layer, fresh, dries, *filler.quantities),
        operations=tuple(operations),
    )


def _longer(operation: Operation, time: Quantity | None) -> Operation:
    return operation if time is None else replace(operation, hands_on=operation.hands_on + time)


def _dries(relief: Relief, layer: Quantity) -> Quantity:
    deepest = relief.deepest
    thickest = layer if deepest is None else maximum(layer, deepest)
    return drying_of(
        relief.book,
        relief.figures,
        thickest,
        one_sided=bool(relief.shut),
        oven=relief.oven,
    )


def _drying_rule(relief: Relief) -> str:
    place = "the oven" if relief.oven else "the room"
    rule = f"by its thickness and {place}; solid clay is as thick as it is"
    return f"{rule}; {relief.shut} under it takes no water" if relief.shut else rule


def _words(
    relief: Relief,
    lay: tuple[Text, ...],
    thick: tuple[Quantity, Quantity],
    place: int,
    count: int,
) -> tuple[Text, ...]:
    noun = relief.figures.noun
    first, last = place == 1, place == count
    said: list[Text] = []
    if first and not relief.made("core"):
        said += mark_steps(relief)
    said += lay if first else (say("Scratch and damp the dry layer first, or the next one peels."),)
    if relief.figures.modelled and (relief.made("core") or relief.made("rigid")):
        said.append(_thickness(relief, noun, thick))
    if first:
        said += _solid(relief)
    if relief.figures.modelled:
        said.append(say("Thin the edge out to nothing on the ground, inside the outline."))
    return (*said, *(_last(relief) if last else (_rough(),)), *_oven_steps(relief))


def _thickness(relief: Relief, noun: str, thick: tuple[Quantity, Quantity]) -> Text:
    fresh, dry = thick
    over = "over the core" if relief.made("core") else "round the insets"
    return say(f"Lay the {noun} {{fresh}} thick {over}: it dries to {{dry}}.", fresh=fresh, dry=dry)


def _rough() -> Text:
    return say("Leave it rough for the next layer.")


def _solid(relief: Relief) -> tuple[Text, ...]:
    names = ", ".join(one.name for one in relief.made("clay"))
    if not names:
        return ()
    return (
        say("Model in clay right through, on a ground rubbed with clay: {names}.", names=names),
    )


def _last(relief: Relief) -> list[Text]:
    said = []
    names = ", ".join(one.name for one in relief.made("rigid"))
    if names:
        said.append(
            say("Press {names} in through film, work the socket {wider} wider, take it out.",
                names=names, wider=relief.socket)
        )  # fmt: skip
    for one in relief.options.inclusions:
        said.append(say("Press in {what}, half of each piece under the surface.", what=one.what))
    if relief.options.smoothing == "water" and relief.figures.modelled:
        said.append(say("Smooth it with a wet finger or brush now; sanding it dry makes dust."))
    if relief.options.texture:
        said.append(say("Then work in the texture: {texture}.", texture=relief.options.texture))
    return said


def _layer(
    relief: Relief,
    weights: Weights,
    place: int,
    words: tuple[Text, ...],
    when: tuple[tuple[str, ...], Quantity],
    ready: str,
) -> Operation:
    book, layers = relief.book, relief.figures.layers
    after, dries = when
    many = layers.value > 1
    which = f", layer {place} of {int(layers.value)}" if many else ""
    return Operation(
        relief.op("skin", place),
        f"Lay the skin on the {relief.where}{which}",
        words,
        given(book.practice("hand-clay") * relief.report.surface / PER_AREA, layers),
        after=after,
        wait=dries,
        waiting=_waiting(relief),
        cautions=_cautions(relief),
        wettings=_wettings(relief, weights, dries),
        tools=(
            *("palette knife", "bowl of water", "soft brush", "pin with a mark"),
            *_oven_tools(relief),
        ),
        soon_after=_while_fresh(relief, ready),
    )


def _cautions(relief: Relief) -> tuple[str, ...]:
    """Those of the clay, and what grew goes with it."""
    grown = any(one.kind in ("seeds", "plant", "food") for one in relief.options.inclusions)
    own = [one for one in relief.figures.cautions if one not in _OF_THE_PULP]
    oven = ("iron-heat",) if relief.oven else ()
    return (*own, *(("food-inclusions",) if grown else ()), *oven)


_OF_THE_PULP = ("boiling-water", "hot-pulp", "boron")


def _waiting(relief: Relief) -> str:
    if relief.oven:
        return "in a slow oven, its door ajar; somebody stays with it"
    if relief.made_on == "covered-case" or relief.on == "spine":
        return "open in moving air, weights on the bare margins"
    if relief.made_on == "finished-book":
        return "open in moving air, the cover level"
    return "in moving air, the board on slats; turn it over every few hours"


def _wettings(relief: Relief, weights: Weights, dries: Quantity) -> tuple[Wetting, ...]:
    if relief.on == "spine":
        return ()
    layers = relief.figures.layers
    water = weights.water / layers
    pull = relief.book.practice("pull-clay") / layers
    area = relief.report.base_area
    name, one_way = f"board-{relief.on}", bool(relief.shut)
    return (Wetting(name, "outside", water, dries, "relief skin", area, pull, one_way),)


def _oven_tools(relief: Relief) -> tuple[str, ...]:
    return ("oven thermometer", "oven gloves") if relief.oven else ()


def _oven_steps(relief: Relief) -> tuple[Text, ...]:
    if not relief.oven:
        return ()
    heat = relief.book.default("oven-bare")
    return (
        say("Dry it in the oven at {heat}, no hotter: paper browns, and tape lets go.", heat=heat),
        say("Leave the door ajar so that the steam gets out, and stay in the room."),
    )


def _while_fresh(relief: Relief, ready: str) -> tuple[SoonAfter, ...]:
    """How long what is left of the batch can be used."""
    try:
        keeps = relief.book.table("clays", relief.figures.row, "keeps")
    except TableError:
        return ()
    return (SoonAfter(ready, keeps, f"the {relief.figures.noun} keeps no longer"),)


def _fill_cracks(relief: Relief, after: tuple[str, ...], ready: str) -> Operation:
    book = relief.book
    return Operation(
        relief.op("fill-cracks"),
        f"Fill the cracks on the {relief.where}",
        (
            say("Cracks are usual: on a core the skin cannot shrink sideways without them."),
            say("Damp each crack, press fresh clay in with the knife, smooth it with water."),
            say("Look at the edge all round: where the clay has drawn off the ground, fill there."),
        ),
        book.practice("hand-set-up"),
        after=after,
        wait=(dry_in_oven if relief.oven else dry_in_room)(
            book, book.table("drying", "crack-fill", "next")
        ),
        waiting=_waiting(relief),
        cautions=(
            *(("dust-talc",) if "dust-talc" in relief.figures.cautions else ()),
            *(("iron-heat",) if relief.oven else ()),
        ),
        tools=("palette knife", "bowl of water", *_oven_tools(relief)),
        soon_after=_while_fresh(relief, ready),
        rescue="fill them with fine filler, and seal and paint those places once more",
    )


def check_dry(relief: Relief, after: tuple[str, ...], before: tuple[str, ...]) -> Operation:
    """The dry test; nothing that shuts water in may begin before it."""
    return Operation(
        relief.op("check-dry"),
        f"Test whether the relief on the {relief.where} is dry",
        (
            say("Its colour must be even all over, the thick places as light as the thin ones."),
            say("Hold it to your lip or cheek: a place that feels cool is still wet inside."),
            say("Press with a thumbnail: nothing may give."),
            say("If one of these fails, wait another day; what is sealed in damp goes mouldy."),
            *_set_in(relief),
        ),
        relief.book.practice("hand-measure"),
        after=after,
        before_any=before,
        cautions=("small-parts",) if relief.made("rigid") else (),
        uses=_set_in_uses(relief),
    )


def _set_in(relief: Relief) -> tuple[Text, ...]:
    names = ", ".join(one.name for one in relief.made("rigid"))
    if not names:
        return ()
    return (
        say("Glue {names} into the socket; no wet clay comes into the gap any more.", names=names),
    )


def _set_in_uses(relief: Relief) -> tuple[Use, ...]:
    return tuple(Use(f"Inset: {one.name}", number(1)) for one in relief.made("rigid"))
