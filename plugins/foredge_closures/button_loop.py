"""``button-loop``: a button on the front board, a cord loop from the back one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    ClosureJob,
    ClosureResult,
    Length,
    PartOptions,
    Piece,
    Quantity,
    StageResult,
    Text,
    Thread,
    Use,
    cited,
    number,
    say,
    stock_name,
)
from foredge_closures import bench
from foredge_closures.anchor import anchor_of, bed_problems, from_fore_edge
from foredge_closures.seen import button, cords
from foredge_closures.sheet import Mark, board_sheet, off_board


class ButtonLoopOptions(PartOptions, frozen=True, kw_only=True, tag="button-loop"):
    """Options of ``use: button-loop``. The button stands beside any relief, not on it."""

    button: Annotated[Length, Meta(description="Diameter of the button, or length of a toggle.")]
    button_thickness: Annotated[Length, Meta(description="How thick it is.")] | None = None
    button_from_fore_edge: (
        Annotated[Length, Meta(description="Its middle from the fore-edge.")] | None
    ) = None
    cord: Annotated[str, stock_name("thread"), Meta(description="The cord.")] | None = None
    cord_diameter: Annotated[Length, Meta(description="Its diameter.")] | None = None
    from_fore_edge: Annotated[Length, Meta(description="The loop's hole from the edge.")] | None = (
        None
    )


@dataclass(frozen=True, slots=True)
class _Loop:
    button: Quantity
    cord: Quantity
    anchor: Quantity
    edge: Quantity
    at: Quantity
    deep: Quantity
    thick: Quantity
    reach: Quantity
    length: Quantity
    cut: Quantity
    hole: Quantity
    bore: Quantity
    flat: Quantity


class ButtonLoop:
    """A loop that slips over a button."""

    kind = "closure"
    name = "button-loop"
    title = "Button and loop"
    options = ButtonLoopOptions

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """The loop passes over the button while the book is closed, and lies behind it."""
        loop = _loop(job)
        piece = Piece(f"{bench.NAME}.cord", "Cord for the loop", number(1), loop.cord, loop.cut,
                      "any", stock=job.part.options.cord,
                      material="smooth cord that does not stretch")  # fmt: skip
        middle, pair = job.board_height / 2, 1.5 * loop.bore
        front = [Mark("hole", loop.at, middle + s * pair, loop.bore, loop.bore) for s in (-1, 1)]
        back = [
            Mark("hole", loop.edge, middle, loop.hole, loop.hole),
            Mark("bed", loop.edge + loop.anchor / 2, middle, loop.anchor, 2 * loop.cord),
        ]
        set_it = bench.set_closure(
            job, "Set button and loop", _set(loop), (piece,), area=2 * loop.anchor * loop.cord,
            hazards=("blade", "awl-needle", "small-parts"), tools=("awl", "needle"),
        )  # fmt: skip
        button_use = Use("button", number(1))
        work = StageResult(
            quantities=(loop.thick, loop.reach, loop.length, loop.cut, loop.hole, loop.anchor,
                        loop.edge),
            pieces=(piece,),
            uses=(button_use,),
            operations=(
                bench.with_bought(set_it, button_use),
                bench.fit_closure(job, "Try button and loop", _FIT, hazards=("small-parts",)),
            ),
            drawings=(
                board_sheet(job, "front", "inside", front),
                board_sheet(job, "back", "inside", back),
            ),
            problems=(*bed_problems(job, loop.cord / 2), *off_board(job, (*front, *back))),
            looks=(
                *cords(job, job.part.options.cord, loop.cord.value, loop.at.value, loop.edge.value),
                button(job, loop.button.value, loop.at.value),
            ),
        )  # fmt: skip
        return ClosureResult(work, 1 * loop.deep, bench.FIT)


def _loop(job: ClosureJob) -> _Loop:
    said, book = job.part.options, job.book
    item = book.stock.get(said.cord) if said.cord else None
    known = item.diameter if isinstance(item, Thread) else None
    cord = bench.decided(
        job, said.cord_diameter if said.cord_diameter is not None else known, "cord-diameter"
    )
    anchor, edge = anchor_of(job), from_fore_edge(job, said.from_fore_edge)
    at = bench.decided(job, said.button_from_fore_edge, "button-edge")
    deep = bench.decided(job, said.button_thickness, "button-thickness")
    thick = bench.in_use(job, over_relief=False)
    play = book.default("closure-play")
    reach = bench.named(
        "reach", edge + thick + at, "loop from its hole to the middle of the button",
        "to the edge, round the fore-edge, and in to the button", "geometry",
    )  # fmt: skip
    length = bench.named(
        "length", 2 * (reach + said.button / 2 + deep), "cord outside, both strands",
        "the loop has to slip over the far rim of the button and its thickness", "geometry",
    )  # fmt: skip
    cut = bench.named(
        "cut", book.size_up(length + 2 * (job.board + job.covering + anchor)), "cord, cut",
        "outside, through the board, and glued down at both ends", "geometry",
    )  # fmt: skip
    hole = bench.named(
        "hole", 2 * cord + play, "hole for the loop", "both strands pass", cited(play)
    )
    bore = book.default("button-hole")
    return _Loop(
        said.button,
        cord,
        anchor,
        edge,
        at,
        deep,
        thick,
        reach,
        length,
        cut,
        hole,
        bore,
        book.size(reach),
    )


def _set(loop: _Loop) -> tuple[Text, ...]:
    return (
        say("Front board: bore two holes {bore} wide for the button, {at} from the fore-edge.",
            bore=loop.bore, at=loop.at),
        say("Sew the button, {across} across, on with a shank as long as two thicknesses of cord.",
            across=loop.button),
        say("Knot inside on a scrap of cloth, and glue it flat."),
        say("Cut the cord {cut} long; touch its ends with glue.", cut=loop.cut),
        say("Back board: bore one hole {hole} wide, {edge} in, half way down.",
            hole=loop.hole, edge=loop.edge),
        say("Both ends in from outside; {reach} from hole to button, and it must slip over.",
            reach=loop.flat),
        say("Splay {anchor} of each end in a bed pared {deep} deep, and glue it flat.",
            anchor=loop.anchor, deep=loop.cord / 2),
    )  # fmt: skip


_FIT = (
    say("Slip the loop over the button: it lies behind it without pulling the board."),
    say("Loose? Put a stitch across both strands. Pull the button to test it."),
)

PLUGIN = ButtonLoop()
