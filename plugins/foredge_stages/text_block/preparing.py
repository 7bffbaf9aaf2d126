"""From the shelf to punched gatherings: the operations before sewing."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Book, Operation, Quantity, SewingResult, Text, number, say
from foredge_stages.text_block.counts import Counts
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.paper import Yield
from foredge_stages.text_block.sizes import Sizes
from foredge_stages.text_block.terms import counted, name, op

GRAIN = op("check-grain")
CUT = op("cut-folios")
FOLD = op("fold-folios")
COLLATE = op("collate-gatherings")
PRESS = op("press-gatherings")
PUNCH = op("punch")

FOLIO = name("folio")


@dataclass(frozen=True, slots=True)
class Prepared:
    """What these operations speak of."""

    book: Book
    options: TextBlockOptions
    size: Sizes
    layout: Yield
    counts: Counts
    folios: Quantity
    sheets: Quantity
    pieces: Quantity


def operations(made: Prepared, sewing: SewingResult, sewn_ends: Quantity) -> tuple[Operation, ...]:
    """Check, cut, fold, collate, press, punch."""
    return (
        _check_grain(made),
        _cut(made),
        _fold(made),
        _collate(made),
        _press(made),
        _punch(made, sewing, sewn_ends),
    )


def _check_grain(made: Prepared) -> Operation:
    steps = [
        say("Bend one sheet over, without creasing it, along one side and then along the other."),
        say("It gives more easily where the bend runs along the grain."),
    ]
    if made.layout.grain_known:
        steps.append(
            say(
                f"The grain must run along the sheet's {made.layout.sheet.grain}; where it does "
                "not, stop and change the spec."
            )
        )
    else:
        steps += [
            say("Not sure? Damp a small square: it rolls up, and the roll's axis is the grain."),
            say("Write width or height under grain in the spec before you cut the rest."),
        ]
    return Operation(
        id=GRAIN,
        title="Check the grain",
        steps=tuple(steps),
        hands_on=made.book.practice("hand-measure"),
        tools=("one spare sheet", "pencil"),
        batch=True,
    )


def _cut(made: Prepared) -> Operation:
    book, size, torn = made.book, made.size, made.options.edges_torn
    verb = "Tear" if torn else "Cut"
    steps = [
        _into_pieces(made, verb),
        say("The fold, and the grain, run along the {height} side.", height=size.piece_height)
        if made.layout.along or not made.layout.grain_known
        else say("The fold runs along the {height} side, across the grain.",
                 height=size.piece_height),
    ]  # fmt: skip
    crease = made.layout.placement.crease
    if crease is not None:
        steps.append(
            say("Measure from the old crease, {at} from the edge: it becomes a fold.", at=crease)
        )
    if torn:
        steps.append(say("Fold hard along a steel rule, then tear towards you, slowly."))
    steps.append(say("Keep the strips that are left; pencil the grain on each."))
    each = book.practice("hand-tear") if torn else book.practice("hand-cut")
    return Operation(
        id=CUT,
        title=f"{verb} the folios",
        steps=tuple(steps),
        hands_on=book.practice("hand-set-up") + each * _cuts(made),
        after=(GRAIN,),
        cautions=() if torn else ("blade",),
        pieces=(FOLIO,),
        splits=True,
        tools=("steel rule",) if torn else ("knife", "steel rule", "cutting mat", "square"),
    )


def _into_pieces(made: Prepared, verb: str) -> Text:
    sizes = {"pieces": made.pieces, "width": made.size.piece_width,
             "height": made.size.piece_height}  # fmt: skip
    into = f" into {{pieces}} {counted(made.pieces, 'piece')} of {{width}} by {{height}}."
    if made.layout.sheet.more:
        return say(f"{verb} the sheets, as the cutting plan shows," + into, **sizes)
    sheets = counted(made.sheets, "sheet")
    return say(f"{verb} {{sheets}} {sheets}" + into, sheets=made.sheets, **sizes)


def _cuts(made: Prepared) -> Quantity:
    """Cuts through the sheets: one for every column and row, each sheet alone."""
    place = made.layout.placement
    return made.sheets * (place.columns + place.rows)


def _fold(made: Prepared) -> Operation:
    times = made.options.folded
    steps = []
    if times == 1:
        many = counted(made.pieces, "folio")
        steps.append(say(f"Fold {{pieces}} {many} in half, each alone.", pieces=made.pieces))
    else:
        steps += [
            say(f"Fold {{pieces}} pieces {times} times, the last fold along the spine.",
                pieces=made.pieces),
            say("Slit the closed folds at the head with a knife, stopping at the spine."),
        ]  # fmt: skip
    steps.append(say("Edges exactly together, then one firm stroke of the bone folder."))
    return Operation(
        id=FOLD,
        title="Fold the folios",
        steps=tuple(steps),
        hands_on=made.book.practice("hand-fold") * made.pieces * number(times),
        after=(CUT,),
        cautions=("hand-strain",),
        tools=("bone folder",),
        splits=True,
    )


def _collate(made: Prepared) -> Operation:
    counts = made.counts
    steps: list[Text] = [
        say("Each folio is a gathering of its own; {gatherings} in all.",
            gatherings=counts.gatherings)
        if made.folios.value == 1
        else say("Put {folios} folios into each other for a gathering; make {gatherings}.",
                 folios=made.folios, gatherings=counts.gatherings),
    ]  # fmt: skip
    if counts.shorter:
        listed = ", ".join(str(place) for place in sorted(set(counts.shorter)))
        steps.append(
            say(f"One folio fewer in gathering {listed}.")
            if len(set(counts.shorter)) == 1
            else say(f"One folio fewer in gatherings {listed}.")
        )
    steps += [
        say("Knock each gathering up at the head; the folds must sit tight in each other."),
        say("Pencil its number and an arrow to the head inside the fold."),
    ]
    return Operation(
        id=COLLATE,
        title="Make up the gatherings",
        steps=tuple(steps),
        hands_on=made.book.practice("hand-gather") * counts.gatherings,
        after=(FOLD,),
        tools=("pencil",),
        splits=True,
    )


def _press(made: Prepared) -> Operation:
    return Operation(
        id=PRESS,
        title="Press the gatherings",
        steps=(
            say("Stack the gatherings, folds left and right in turn, between two boards."),
            say("Press firmly, or put a heavy weight on; leave it over night."),
            say("They are done when they stay flat out of the press."),
        ),
        hands_on=made.book.practice("hand-press"),
        after=(COLLATE,),
        wait=made.book.table("drying", "press-gatherings", "next"),
        waiting="the folds flatten in the press",
        resources=("hands", "press"),
        cautions=("press-pinch", "lifting-weights"),
        tools=("press or weights", "two boards"),
        rescue="press the sewn block harder, a night long, before its spine is glued",
    )


def _punch(made: Prepared, sewing: SewingResult, sewn_ends: Quantity) -> Operation:
    gatherings = made.counts.gatherings + sewn_ends
    marks = [
        say(f"Station {place}: {{at}} from the head.", at=station)
        for place, station in enumerate(sewing.stations, start=1)
    ]
    return Operation(
        id=PUNCH,
        title="Punch the gatherings",
        steps=(
            say("Cut the punching template of this sheet out of card, as high as the folded "
                "leaf: {height}.", height=made.size.fold_height),
            *marks,
            say("Lay it in the fold of each gathering, head to head; knock both flush."),
            say("Punch through the fold from inside, into a book or a cradle, not into your "
                "hand."),
            say("Do all {gatherings}; keep their order.", gatherings=gatherings),
        ),
        hands_on=made.book.practice("hand-set-up") / 2
        + made.book.practice("hand-punch") * gatherings,
        after=(PRESS,),
        cautions=("awl-needle",),
        tools=("thin awl", "punching cradle or thick book", "card for the template"),
        splits=True,
    )  # fmt: skip
