"""What ways of casing-in share: trimming the paste-downs, their water, and the press."""

from __future__ import annotations

from foredge.contract.card import cited
from foredge.contract.drying import dry_in_room
from foredge.contract.glue import wet
from foredge.contract.jobs import CasingInJob
from foredge.contract.text import Text, say
from foredge.contract.work import Operation, SoonAfter, StageResult, Wetting
from foredge.problem import Problem, note
from foredge.quantity import Quantity, choose

MADE_BEFORE = frozenset({"bare-board", "covered-case"})
"""``made_on`` of a relief that is already there when the book goes into the press."""


def paste_down_trim(job: CasingInJob) -> tuple[Quantity, Quantity, tuple[Text, ...]]:
    """Width and height of a paste-down before it is wetted, and the steps that trim it.

    Wet paper grows across its grain, that is in the width; hardly along it.
    """
    book = job.book
    stretch = book.default("wet-expansion")
    width = book.size(job.paste_down_width / (1 + stretch)).named(
        "case.paste_down.width",
        label="width of a paste-down, dry",
        rule="it grows by this much across the grain when it is wet",
        source=cited(stretch),
    )
    height = book.size(job.paste_down_height).named(
        "case.paste_down.height",
        label="height of a paste-down",
        rule="as it leaves the block; paper hardly grows along its grain",
        source="Skin Deep vol. 10 (J. Hewit & Sons), on paper grain",
    )
    trim = say("Trim the fore-edge of each paste-down to {width} from the fold.", width=width)
    return width, height, (trim,)


def joined_wettings(job: CasingInJob, adhesive: str, area: Quantity) -> tuple[Wetting, ...]:
    """The water that ``area`` of each paste-down brings to the insides of the boards."""
    dry = job.book.table("drying", "casing-in", "cure")
    return tuple(
        wet(job.book, adhesive, area, board, "inside", dry, layer="paste-down")
        for board in ("board-front", "board-back")
    )


def press_book(job: CasingInJob, after: str) -> StageResult:
    """The last operation of the case, ``case.press``: weight until dry, then rest closed."""
    book = job.book
    relief = [part for part in book.embellishment if _made_before(part.options)]
    large = book.practice("press-large-above")
    weight = choose(
        job.board_height,
        large,
        book.default("press-weight-large"),
        book.default("press-weight-small"),
    )
    how: tuple[Text, ...]
    if relief:
        how = (
            say("Put no weight on the relief: press with a board cut out round it, over foam."),
            say("If it cannot be spared, tie the book shut between soft boards instead."),
        )
    else:
        how = (say("Press between two boards up to the joints, {weight} on top.", weight=weight),)
    operation = Operation(
        "case.press",
        "Press the book",
        (
            say("Set a rod or a folded card into each joint."),
            *how,
            say("Change the damp blotters after an hour; leave film between paste-down and block."),
            say(
                "Out of the press, two or three days closed under a light weight whenever it rests."
            ),
        ),
        book.practice("hand-set-up"),
        after=(after,),
        wait=dry_in_room(book, book.table("drying", "casing-in", "next"), shut=True),
        waiting="in the press or under weight, closed",
        resources=("hands", "press"),
        cautions=("press-pinch", "lifting-weights"),
        tools=("press or weights", "blotters", "two rods or folded card"),
        soon_after=(
            SoonAfter(after, book.practice("press-soon"), "the boards warp while they lie free"),
        ),
    )
    return StageResult(
        operations=(operation,), problems=tuple(_spare(part.path) for part in relief[:1])
    )


def _made_before(options: object) -> bool:
    return getattr(options, "made_on", None) in MADE_BEFORE


def _spare(path: tuple[str | int, ...]) -> Problem:
    return note(
        path,
        "the relief is on the cover when the book is cased in, so no weight may lie on it",
        "press-relief",
        consequence="A press crushes it, and its high points mark the board",
        remedy="Press with a board cut out round it, or make the relief on the finished book",
        source="common practice",
    )
