"""The bench work of a laminated board."""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import (
    BoardsJob,
    Operation,
    Piece,
    Quantity,
    StageResult,
    Text,
    adhesive_words,
    cautions,
    dry_in_room,
    glue,
    number,
    say,
    total,
    wet,
)
from foredge_boards.plies import Ply


def cut_layers(job: BoardsJob, plies: Sequence[Ply], blanks: Sequence[Piece]) -> Operation:
    """Every layer as a blank, with its grain marked."""
    steps = [say("Lay cartons out flat; keep folds, slots and glued flaps out of the blanks.")]
    steps += [_cut(blank) for blank in blanks]
    steps.append(say("Draw an arrow along the grain on every layer, and a number in its order."))
    if any(ply.corrugated for ply in plies):
        steps.append(say("On corrugated board the arrow runs along the flutes."))
    if any(ply.outer or ply.inner for ply in plies):
        steps.append(say("Scuff the coated faces with sandpaper and wipe off the dust."))
    pieces = sum(int(blank.count.value) for blank in blanks)
    return Operation(
        "case.cut-layers",
        "Cut the layers of the boards",
        tuple(steps),
        job.book.practice("hand-set-up") + number(2 * pieces) * job.book.practice("hand-cut"),
        cautions=("blade", "hand-strain"),
        pieces=tuple(blank.name for blank in blanks),
        tools=("knife", "steel rule", "cutting mat", "pencil", "sandpaper"),
        splits=True,
    )


def _cut(blank: Piece) -> Text:
    side = "width" if blank.grain == "width" else "height"
    return say(
        f"Cut {{count}} of {{what}}, {{width}} by {{height}}, the grain along the {side}.",
        count=blank.count,
        what=blank.stock or blank.material,
        width=blank.width,
        height=blank.height,
    )


def laminate(
    job: BoardsJob, plies: Sequence[Ply], blanks: Sequence[Piece], adhesive: str
) -> Operation:
    """Glue on both meeting faces, layer by layer, then weight."""
    book = job.book
    faces = number(2 * (len(plies) - 1))
    area = faces * blanks[0].width * blanks[0].height  # of one board
    strips = [blank for blank in blanks if blank.trimmed_to == "case.spine"]
    strip = [faces * strips[0].width * strips[0].height] if strips else []
    drying = dry_in_room(book, book.table("drying", _row(plies), "next"), shut=True)
    return Operation(
        "case.laminate-boards",
        "Laminate the boards",
        _glue_steps(adhesive_words(book, adhesive), plies),
        book.practice("hand-set-up") + faces * book.practice("hand-glue-face"),
        after=("case.cut-layers",),
        wait=drying,
        waiting="under even weight, dry card or blotter above and below",
        resources=("hands", "weights"),
        cautions=("lifting-weights", *cautions(book, "adhesives", adhesive)),
        uses=(glue(book, adhesive, total([2 * area, *strip]), "laminating the boards"),),
        wettings=tuple(
            wet(book, adhesive, area, board, "both", book.table("drying", _row(plies), "cure"))
            for board in ("board-front", "board-back")
        ),
        tools=("wide brush", "bone folder", "two boards", "weights"),
    )


def _glue_steps(adhesive: str, plies: Sequence[Ply]) -> tuple[Text, ...]:
    steps = [
        say("Lay the layers of each board out in their order, number 1 to the outside."),
        *_order(plies),
        say(
            "Brush {adhesive} on both faces that meet, thin and even, out to the edges.",
            adhesive=adhesive,
        ),
        say("Lay the second layer on the first, arrows in line, and rub down from the middle."),
    ]
    if len({ply.across for ply in plies}) == 2:
        steps.append(say("Turn the arrow of a crossing layer a quarter, as it is numbered."))
    if len(plies) > 2:
        steps.append(
            say("Go on in the same way to the last layer; work fast, a layer must not skin over.")
        )
    if any(ply.corrugated for ply in plies):
        steps.append(
            say("Press corrugated layers with a flat board and light weight only, or they crush.")
        )
    steps.append(say("Square the stack up, then lay it flat between press boards under weight."))
    return tuple(steps)


def _order(plies: Sequence[Ply]) -> list[Text]:
    """How the layers follow each other, where that is not all the same."""
    if len({ply.same for ply in plies}) > 1:
        return [
            say(f"Layer {at}: {{what}}{_coat(ply)}.", what=ply.stock or ply.figures.row)
            for at, ply in enumerate(plies, 1)
        ]
    if plies[0].outer == plies[0].inner:
        return []
    pairs = say("Pair the layers coat to coat; bare faces look out.")
    if len(plies) % 2 == 0:
        return [pairs]
    return [pairs, say("The odd layer comes last, its bare face out.")]


def _coat(ply: Ply) -> str:
    if ply.outer == ply.inner:
        return ", coated on both faces" if ply.outer else ""
    return ", the coat outwards" if ply.outer else ", the coat inwards"


def cure(job: BoardsJob, plies: Sequence[Ply]) -> Operation:
    """Water has to leave the glue before the board is measured or covered."""
    table = job.book.table
    row = _row(plies)
    return Operation(
        "case.cure-boards",
        "Let the boards cure",
        (
            say("Stand the boards on edge with air on both sides."),
            say("Turn them over once a day. A board that is cool to the touch is still wet."),
            say("Lay them on a flat table: a board that rocks goes back under weight."),
        ),
        job.book.practice("hand-measure"),
        after=("case.laminate-boards",),
        wait=dry_in_room(job.book, table("drying", row, "cure") - table("drying", row, "next")),
        waiting="standing on edge, air on both sides",
        rescue="stand the covered case open in moving air for a week, then press it",
    )


def _row(plies: Sequence[Ply]) -> str:
    return "board-2-layers" if len(plies) <= 2 else "board-many-layers"


def wrap_edges(job: BoardsJob, lap: Quantity, adhesive: str) -> StageResult:
    """Strips of paper round the open edges of a corrugated core, once the boards are cut."""
    book = job.book
    width = book.size(job.thickness + 2 * lap).named(
        "case.edge_wrap.width",
        label="width of the edge strips",
        rule="the board's edge and a lap on each face",
        source="common practice",
    )
    strips = [
        Piece(
            f"case.edge_wrap.{side}",
            f"Edge strip, {side} of the board",
            number(4),
            width,
            length,
            "height",
            material="thin strong paper",
        )
        for side, length in (("height", job.height), ("width", job.width))
    ]
    cut = "Cut four strips {width} by {length}."
    operation = Operation(
        "case.wrap-edges",
        "Wrap the edges of the boards",
        (
            say(cut, width=width, length=job.height),
            say(cut, width=width, length=job.width),
            say(
                "Glue a strip round each edge, the same lap on both faces; mitre it at the corners."
            ),
            say("Rub the laps down flat and let them dry under light weight."),
        ),
        number(8) * (book.practice("hand-cut") + book.practice("hand-glue-face")),
        after=("case.cut-boards",),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "next"), shut=True),
        waiting="dry under light weight",
        cautions=cautions(book, "adhesives", adhesive),
        pieces=tuple(strip.name for strip in strips),
        uses=(glue(book, adhesive, number(4) * width * (job.height + job.width), "edge strips"),),
    )
    return StageResult(quantities=(width,), pieces=tuple(strips), operations=(operation,))
