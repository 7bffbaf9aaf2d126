"""Once the clay is on: room in the covering, the pressing board, the book tied shut."""

from __future__ import annotations

from foredge.contract import (
    Drawing,
    Operation,
    Piece,
    Quantity,
    StageResult,
    dry_in_room,
    note,
    number,
    say,
)
from foredge_stages.sculpt.cutout import cut_out
from foredge_stages.sculpt.reading import Relief

COVERS = ("case.cover-spine", "case.cover")
"""What covers the boards: a relief on a bare board is dry before."""


def tie_shut(relief: Relief, after: tuple[str, ...]) -> StageResult:
    """A finished book dries to the touch open, and the rest of the way tied shut."""
    if relief.made_on != "finished-book":
        return StageResult()
    book = relief.book
    operation = Operation(
        relief.op("tie-shut"),
        "Tie the book shut",
        (
            say("Dry to the touch, close the book: film stays between cover and block."),
            say("Lay soft boards on both covers, cut out or padded round the relief."),
            say("Tie it round twice with tape, firm but not tight, and stand it in moving air."),
            say("The cover must not be free while the last water leaves: it would bow outwards."),
        ),
        book.practice("hand-measure"),
        after=after,
        wait=dry_in_room(book, book.table("drying", "tied-shut", "cure")),
        waiting="tied shut, in moving air",
        tools=("two soft boards", "cotton tape"),
    )
    return StageResult(operations=(operation,))


def fit_covering(relief: Relief, dry: str, height: Quantity) -> StageResult:
    """What a relief on a bare board means for the covering that comes after it."""
    if relief.made_on != "bare-board":
        return StageResult()
    clear = relief.book.default("cut-out-clearance")
    operation = Operation(
        relief.op("fit-covering"),
        "Make the template for the covering",
        (
            say("The covering comes over this board, and the relief stands {height} high.",
                height=height),
            say("Cut the outline of the relief out of card, {clear} larger all round.",
                clear=clear),
            say("Before the covering is glued, cut that window out of it and try it dry."),
            say("Turn the cut edge under, or hide it later under a last bead of clay."),
        ),
        relief.book.practice("hand-set-up"),
        after=(dry,),
        before_any=COVERS,
        cautions=("blade",),
        tools=("knife", "thin card"),
    )  # fmt: skip
    problem = note(
        (*relief.part.path, "made_on"),
        f"the covering is put on after the relief, which stands {height.value:.3g} mm high "
        f"on the {relief.where}",
        "covering-over-relief",
        consequence="Cloth stretches over a low, rounded form at most; over anything else it "
        "tents and lifts",
        remedy="Cut a window in the covering round it, or make it on the covered case",
        source="common practice",
    )
    return StageResult(operations=(operation,), problems=(problem,))


def press_board(relief: Relief, dry: str, height: Quantity) -> StageResult:
    """The board a book with a relief is pressed under once it is cased in."""
    if relief.made_on == "finished-book" or relief.on == "spine":
        return StageResult()
    book, on = relief.book, relief.on
    deep = (height + book.default("cut-out-depth")).named(
        f"sculpt.press_board.{on}.depth",
        label=f"depth of the cut-out, {on}",
        rule="deeper than the relief is high",
        source="from memory",
    )
    name = f"sculpt.press_board.{on}"
    piece = Piece(
        name,
        f"Pressing board, {on}",
        number(1),
        relief.panel.width,
        relief.panel.height,
        "any",
        material="layers of thick card, foam or board",
        shape="cut out round the relief",
    )
    clear = book.default("cut-out-clearance")
    operation = Operation(
        relief.op("cut-press-board"),
        f"Cut the pressing board for the {relief.where}",
        (
            say("Cut layers of card or foam {width} by {height}, {deep} deep in all.",
                width=relief.panel.width, height=relief.panel.height, deep=deep),
            say("Cut the window out of every layer, {clear} outside the relief all round.",
                clear=clear),
            say("Glue the layers on a flat board, the islands inside the window too."),
            say("Try it on the dry relief: it may touch nowhere, and must reach every margin."),
            say("In the press it lies on the cover, the window down; nothing on the relief."),
            say("Without it: press from inside only, a weight on the open cover's paste-down."),
        ),
        book.practice("hand-set-up") + number(8) * book.practice("hand-cut-board"),
        after=(dry,),
        before_any=("case.press",),
        stops_for=("G3",),
        cautions=("blade", "hand-strain"),
        pieces=(name,),
        tools=("knife", "steel rule", "cutting mat"),
        splits=True,
    )  # fmt: skip
    drawings: tuple[Drawing, ...] = (cut_out(relief, clear),)
    return StageResult(
        quantities=(deep,), pieces=(piece,), operations=(operation,), drawings=drawings
    )
