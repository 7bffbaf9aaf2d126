"""What coverings share: options, turn-in, corners, and making up the case on its cloth."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract.backing import back_cloth
from foredge.contract.card import cited
from foredge.contract.covering_stock import Backing, CoveringStock, adhesive_problems
from foredge.contract.drying import dry_in_room
from foredge.contract.glue import cautions, glue, wet
from foredge.contract.jobs import CoverJob, CoverResult
from foredge.contract.measures import stock_name, table_row
from foredge.contract.options import PartOptions
from foredge.contract.text import Text, say
from foredge.contract.work import Operation, Piece, StageResult
from foredge.quantity import Origin, Quantity, leaf, number

Corners = Literal["mitred", "folded"]
_SUM = "the sum of what it covers, and its turn-ins"


class CoveringOptions(PartOptions, frozen=True, kw_only=True):
    """What every covering may be asked; a subclass adds its own and its tag."""

    material: Annotated[
        str, stock_name("cloth", "sheet"), Meta(description="The covering on the shelf.")
    ]
    backing: (
        Annotated[Backing, Meta(description="Tissue behind the cloth; by its kind if left out.")]
        | None
    ) = None
    adhesive: (
        Annotated[str, table_row("adhesives"), Meta(description="By the covering if left out.")]
        | None
    ) = None
    corners: Annotated[
        Corners, Meta(description="mitred: cut off at 45 degrees. folded: turned in whole.")
    ] = "mitred"


def turn_in(job: CoverJob, cloth: CoveringStock) -> Quantity:
    """The turn-in at every edge: the spec's, else what the covering's row says; rounded once."""
    asked = job.turn_in
    if asked is None and cloth.table == "cloth":
        # Decided and then made as decided: the range of opinion in the row is no uncertainty.
        usual = job.book.table("cloth", cloth.row, "turn_in")
        origin = usual.origin or Origin("table")
        asked = leaf(usual.value, usual.dimension, usual.name or "turn-in", origin)
    asked = asked if asked is not None else job.book.default("turn-in")
    return job.book.size(asked).named(
        "case.turn_in",
        label="turn-in",
        rule="as the covering needs",
        source=cited(asked) or "the maker's choice",
    )


def corner(job: CoverJob, cloth: CoveringStock) -> Quantity:
    """How far off the board's corner a mitre is cut: the edge of board and cloth must fit in."""
    clear = job.book.default("corner-clearance") * job.board + cloth.thickness
    return job.book.size(clear).named(
        "case.corner",
        label="cloth left at the corner",
        rule="a mitre clears the corner by the board's edge and the cloth on it",
        source=cited(job.book.practice("corner-clearance")),
    )


def turn_in_steps(corners: Corners, clear: Quantity) -> tuple[Text, ...]:
    """The last steps of covering: corners, then head and tail, then the fore-edges."""
    if corners == "mitred":
        first = say(
            "Cut each corner off at 45 degrees, {clear} clear of the board's corner.", clear=clear
        )
    else:
        first = say("Leave the corners whole; fold each one in over the board's corner first.")
    return (
        first,
        say("Turn in head and tail, tight over the edges; press the covering into the joints."),
        say("Tuck it in at the corners with the bone folder, then turn in the fore-edges."),
    )


def covering_piece(
    cloth: CoveringStock, name: str, title: str, width: Quantity, height: Quantity, copies: int = 1
) -> Piece:
    """A piece of the covering; ``width`` and ``height`` are sums of rounded parts."""
    return Piece(
        name,
        title,
        number(copies),
        width.named(f"{name}.width", label=f"width, {title.lower()}", rule=_SUM, source="geometry"),
        height.named(
            f"{name}.height", label=f"height, {title.lower()}", rule=_SUM, source="geometry"
        ),
        "height",
        stock=None if cloth.backed else cloth.stock,
        material="the backed cloth" if cloth.backed else "",
    )


def piece_mass(cloth: CoveringStock, piece: Piece) -> Quantity:
    """What ``piece`` weighs, all its copies, under the name ``<piece>.mass``."""
    return (piece.count * piece.width * piece.height * cloth.grammage).named(
        f"{piece.name}.mass",
        label=f"mass, {piece.title.lower()}",
        rule="area by grammage",
        source="geometry",
    )


def make_up(
    job: CoverJob,
    cloth: CoveringStock,
    piece: Piece,
    over: Quantity,
    turning: tuple[Text, ...],
    *,
    glued: Quantity,
    adhesive: str | None = None,
    verb: str = "cover",
    title: str = "Cover the case",
) -> CoverResult:
    """The case made up on ``piece``: backing, laying on boards and spine, turning in.

    ``glued`` is the width on each board that the piece covers; ``over`` its turn-in;
    ``turning`` the steps after it is rubbed down; ``verb`` names the operation.
    """
    backing, prepared = back_cloth(job, cloth, piece)
    cut = say(
        "Cut the {what} {width} by {height}" + cloth.laid(job.book) + ".",
        what=piece.title.lower(),
        width=piece.width,
        height=piece.height,
    )
    steps = (cut, *cloth.advice(job.book), *_lay_boards(job, cloth, over), *turning)
    after = (job.boards_cut, *prepared)
    area = glued * job.board_height
    making = glue_on_boards(
        job, cloth, piece, steps, area, after=after, adhesive=adhesive, verb=verb, title=title
    )
    work = StageResult(
        quantities=(over, piece_mass(cloth, piece)), pieces=(piece,), problems=cloth.problems
    )
    return CoverResult(backing + work + making, f"case.{verb}", prepared)


def glue_on_boards(
    job: CoverJob,
    cloth: CoveringStock,
    piece: Piece,
    steps: tuple[Text, ...],
    area: Quantity,
    *,
    after: tuple[str, ...],
    adhesive: str | None = None,
    hands_on: Quantity | None = None,
    verb: str = "cover",
    title: str = "Cover the case",
) -> StageResult:
    """The operation ``case.<verb>`` that glues ``piece`` down, on ``area`` of each board."""
    book = job.book
    used = adhesive or cloth.adhesive(book)
    extra = cautions(book, "cloth", cloth.row) if cloth.table == "cloth" else ()
    cure = book.table("drying", "covering", "cure")
    operation = Operation(
        f"case.{verb}",
        title,
        steps,
        hands_on if hands_on is not None else book.practice("hand-cover"),
        after=after,
        wait=dry_in_room(book, book.table("drying", "covering", "next"), shut=True),
        waiting="under weight between blotters",
        resources=("hands", "weights"),
        cautions=tuple(dict.fromkeys(("blade", *cautions(book, "adhesives", used), *extra))),
        pieces=(piece.name,),
        uses=(glue(book, used, piece.count * piece.width * piece.height, "covering"),),
        wettings=tuple(
            wet(
                book,
                used,
                area,
                board,
                "outside",
                cure,
                layer=piece.title.lower(),
                pull=cloth.pull(book),
            )
            for board in ("board-front", "board-back")
        ),
        tools=("glue brush", "bone folder", "knife", "blotters", "weights"),
    )
    problems = adhesive_problems(book, cloth, used, (*job.part.path, "adhesive"))
    return StageResult(operations=(operation,), problems=problems)


def _lay_boards(job: CoverJob, cloth: CoveringStock, over: Quantity) -> tuple[Text, ...]:
    """Laying boards and spine piece on the covering, with the spacer between."""
    return (
        say(
            "On the wrong side draw {over} in from head and tail: the boards go between.",
            over=over,
        ),
        _glue_face(cloth.glued_face(job.book)),
        say(
            "Lay down the first board, the spacer strip against it, and the second board against "
            "the strip."
        ),
        say(
            "That sets the boards {distance} apart; leave the same margin on both sides.",
            distance=job.spine + 2 * job.joint,
        ),
        _lay_spine(job),
        say("Turn it over and rub the covering down through clean paper, from the middle."),
    )


def _glue_face(face: str) -> Text:
    if face == "board":
        return say("Glue each board and lay it on the cloth; never brush glue on the cloth.")
    if face == "both":
        return say("Glue board and covering, and lay them together when the glue is ready.")
    return say("Glue the wrong side of the {covering} from the middle out.", covering=face)


def _lay_spine(job: CoverJob) -> Text:
    if not job.has_spine_piece:
        return say("Take the spacer out; nothing lies between the boards.")
    return say(
        "Take the spacer out. Lay the spine piece {joint} from each board with the joint strips; "
        "then take them out.",
        joint=job.joint,
    )
