"""From the sewn block to gate G2: square, glue, press, line, trim."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Book,
    Operation,
    Quantity,
    Text,
    Use,
    Wetting,
    dry_in_room,
    glue,
    number,
    say,
    wet,
)
from foredge_stages.text_block.linings import Linings
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.sizes import Sizes
from foredge_stages.text_block.terms import op

SQUARE = op("square-block")
GLUE = op("glue-spine")
LINE = op("line-spine")
SIZE = op("size-linings")
TRIM = op("trim")


@dataclass(frozen=True, slots=True)
class Sewn:
    """``spine`` is the thickness as sewn, which rests on no gate."""

    book: Book
    options: TextBlockOptions
    size: Sizes
    linings: Linings
    spine: Quantity


def operations(made: Sewn, attached: str) -> tuple[Operation, ...]:
    """Everything after sewing and end-papers, up to the trimmed block."""
    steps = [_square(made, attached), _glue(made)]
    if made.linings.pieces:
        steps += [_line(made), _size_linings(made)]
    if made.size.trims.any:
        steps.append(_trim(made, steps[-1].id))
    return tuple(steps)


def _square(made: Sewn, attached: str) -> Operation:
    return Operation(
        id=SQUARE,
        title="Square the block",
        steps=(
            say("Knock the spine, then the head, on the bench until both are flat."),
            say("Look along the spine and from above: no lean, no step."),
            say("Put it between two boards, the spine level with their edges; press lightly."),
        ),
        hands_on=made.book.practice("hand-press"),
        after=(attached,),
        resources=("hands", "press"),
        cautions=("press-pinch",),
        tools=("two boards", "press or weights", "square"),
    )


def _area(made: Sewn, coats: int) -> Quantity:
    return made.spine * made.size.fold_height * number(coats)


def _glued(made: Sewn, coats: int) -> Use:
    return glue(made.book, made.options.adhesive, _area(made, coats), "on the spine")


def _wet(made: Sewn, coats: int, row: str) -> Wetting:
    dry = made.book.table("drying", row, "cure")
    area = _area(made, coats)
    return wet(made.book, made.options.adhesive, area, "block-spine", "outside", dry)


def _glue(made: Sewn) -> Operation:
    return Operation(
        id=GLUE,
        title="Glue the spine and press",
        steps=(
            say("Check once more that the block is square: glue keeps what it finds."),
            say("Work one thin coat between the gatherings with a stiff brush; wipe off the rest.")
            if made.linings.super is not None
            else say("Rub one thin coat into strip and stitches, none on the flanges."),
            say("Tighten the press and leave it until the glue is dry to the touch."),
        ),
        hands_on=made.book.practice("hand-glue-face") + made.book.practice("hand-press"),
        after=(SQUARE,),
        wait=dry_in_room(made.book, made.book.table("drying", "pva-joint", "next"), shut=True),
        waiting="the spine sets in the press",
        resources=("hands", "press"),
        cautions=("pva", "press-pinch"),
        uses=(_glued(made, 1),),
        wettings=(_wet(made, 1, "pva-joint"),),
        tools=("stiff brush", "waste paper"),
    )


def _line(made: Sewn) -> Operation:
    linings, trim = made.linings, made.size.trims
    cloth, paper = linings.super, linings.lining
    from_head = made.book.size(trim.head + linings.super_short)
    steps: list[Text] = []
    if cloth is not None:
        steps += [
            say("Cut the super {width} by {height}: wider than it will be.",
                width=cloth.width, height=cloth.height),
            say("Glue the spine thinly; lay the super on, {down} below the head of the folded "
                "leaf.", down=from_head),
            say("The same of it hangs over on both sides. Rub it into the glue."),
        ]  # fmt: skip
    if paper is not None:
        steps += [
            say("Cut {count} of lining paper, {width} by {height}, grain along the spine.",
                count=paper.count, width=paper.width, height=paper.height),
            say("Glue it and lay it over the spine, {down} below the head of the folded leaf.",
                down=made.book.size(trim.head + linings.lining_short)),
            say("Rub down from the middle to the ends with the bone folder."),
        ]  # fmt: skip
    coats = len(linings.pieces)
    return Operation(
        id=LINE,
        title="Line the spine",
        steps=(*steps, say("Back into the press, the spine free; leave it over night.")),
        hands_on=made.book.practice("hand-spine"),
        after=(GLUE,),
        wait=dry_in_room(made.book, made.book.table("drying", "spine-glue", "next"), shut=True),
        waiting="what lines the spine dries on it",
        resources=("hands", "press"),
        cautions=("blade", "pva", "press-pinch"),
        pieces=tuple(piece.name for piece in linings.pieces),
        uses=(_glued(made, coats),),
        wettings=(_wet(made, coats, "spine-glue"),),
        tools=("brush", "bone folder", "scissors"),
        rescue="glue a strip of thin cloth into each joint, inside, over paste-down and end leaf",
    )


def _size_linings(made: Sewn) -> Operation:
    steps: list[Text] = []
    if made.linings.super is not None:
        steps.append(
            say("Cut the super on both sides to {flange} from the shoulder.",
                flange=made.linings.flange)
        )  # fmt: skip
    if made.linings.lining is not None:
        steps.append(say("Cut or sand the lining paper flush with both shoulders."))
    return Operation(
        id=SIZE,
        title="Trim super and lining to size"
        if made.linings.super is not None
        else "Trim the lining to size",
        steps=tuple(steps),
        hands_on=made.book.practice("hand-measure"),
        after=(LINE,),
        cautions=("blade",),
        tools=("scissors", "knife", "rule"),
    )


def _trim(made: Sewn, after: str) -> Operation:
    trim, leaf = made.size.trims, made.options.leaf
    steps = [
        say("Fold the flanges of the spine cloth flat, out of the knife's way."),
        say("Clamp the block between boards right beside the line; pad the spine."),
    ]
    if trim.fore_edge.value > 0:
        steps.append(say("Fore-edge first: {width} from the spine.", width=leaf.width))
    if trim.head.value > 0:
        steps.append(say("Head: {head} off, square to the spine.", head=trim.head))
    if trim.tail.value > 0:
        steps.append(
            say("Tail: {height} below the new head; about {tail} comes off.",
                height=leaf.height, tail=trim.tail)
        )  # fmt: skip
    steps.append(
        say("With a plough, or a sharp chisel along a steel rule: many light strokes, never one "
            "deep one.")
    )  # fmt: skip
    edges = sum(1 for edge in (trim.fore_edge, trim.head, trim.tail) if edge.value > 0)
    return Operation(
        id=TRIM,
        title="Trim the edges",
        steps=tuple(steps),
        hands_on=made.book.practice("hand-trim") * number(edges),
        after=(after,),
        resources=("hands", "press"),
        cautions=("blade", "press-pinch"),
        tools=("plough, guillotine or sharp chisel", "steel rule", "two boards", "clamps"),
    )
