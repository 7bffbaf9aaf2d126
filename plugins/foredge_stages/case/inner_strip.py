"""The strip inside the case, over spine piece and joints: it takes the strain off the cloth."""

from __future__ import annotations

from foredge.contract import (
    Book,
    CoverResult,
    Operation,
    Piece,
    Quantity,
    StageResult,
    cautions,
    cited,
    dry_in_room,
    glue,
    number,
    paper_figures,
    say,
)
from foredge_stages.case.options import InnerStrip

PASTE = "case.line-spine"
"""Id of the operation that pastes it in."""


def strip_thickness(book: Book, options: InnerStrip) -> Quantity:
    """What the strip adds to the joint."""
    if options.thickness is not None:
        return options.thickness
    return paper_figures(book, options.stock, options.material).thickness


def paste_strip(
    book: Book,
    options: InnerStrip,
    distance: Quantity,
    block_height: Quantity,
    cover: CoverResult,
) -> StageResult:
    """The strip as a piece, and pasting it in once the case is covered."""
    lap = book.size(options.lap if options.lap is not None else book.default("inner-strip-lap"))
    width = (distance + 2 * lap).named(
        "case.inner_strip.width",
        label="width of the inner spine strip",
        rule="spine and joints, and a lap on each board",
        source=cited(book.practice("inner-strip-lap")),
    )
    height = book.size(block_height).named(
        "case.inner_strip.height",
        label="height of the inner spine strip",
        rule="as tall as the block, so that it does not show",
        source="common practice",
    )
    piece = Piece(
        "case.inner_strip",
        "Inner spine strip",
        number(1),
        width,
        height,
        "height",
        stock=options.stock,
        material="" if options.stock else book.words("paper", options.material, "title"),
        kinds=("sheet",),
    )
    return StageResult(
        quantities=(width, height),
        pieces=(piece,),
        operations=(_operation(book, width, height, cover.covered),),
    )


def _operation(book: Book, width: Quantity, height: Quantity, covered: str) -> Operation:
    return Operation(
        PASTE,
        "Paste in the inner spine strip",
        (
            say(
                "Cut the strip {width} by {height}, the grain along the spine.",
                width=width,
                height=height,
            ),
            say("Glue it and lay it in the middle over spine and joints, head and tail alike."),
            say("Press it down into both joints with the bone folder, then onto the boards."),
        ),
        book.practice("hand-cut") + book.practice("hand-glue-face"),
        after=(covered,),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "next")),
        waiting="dry open",
        cautions=cautions(book, "adhesives", "pva"),
        pieces=("case.inner_strip",),
        uses=(glue(book, "pva", width * height, "inner spine strip"),),
        tools=("bone folder", "glue brush"),
    )
