"""The pocket of a magnet in the board: its depth, its poles, what of the pull is left."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from foredge.contract import (
    BEFORE_PASTE_DOWNS,
    ClosureJob,
    Operation,
    Problem,
    Quantity,
    Text,
    cited,
    dry_in_room,
    error,
    say,
    warning,
)
from foredge_closures.bench import mm
from foredge_closures.sheet import Mark

POCKET = "finishing.sink-closure"

BEFORE = (
    "sculpt.seal-front-1",
    "sculpt.fix-core-front",
    "case.cover-spine",
    "case.cover",
    *BEFORE_PASTE_DOWNS,
)
"""What hides the bare outside of a board."""


def share_of_pull(gap_mm: float, halving_mm: float) -> float:
    """What is left of a magnet's pull over a gap, where each ``halving_mm`` halves it."""
    return float(0.5 ** (max(gap_mm, 0.0) / halving_mm))


def pocket_problems(job: ClosureJob, deep: Quantity, web: Quantity) -> list[Problem]:
    """A pocket that comes out on the other side, or leaves less than it should.

    The web the maker asks for is an error to go below; the usual one is only advice.
    """
    left = job.board - deep
    if left.value > 0 and left.value >= web.value:
        return []
    path = (*job.part.path, "thickness")
    keeps = f"keeps {mm(left)}" if left.value > 0 else "keeps nothing"
    text = f"a pocket {mm(deep)} deep for the magnet: a board of {mm(job.board)} {keeps}"
    told = error if left.value <= 0 or job.part.options.web is not None else warning
    return [
        told(
            path,
            text,
            "magnet-pocket-too-deep",
            consequence="The magnet comes through the board"
            if left.value <= 0
            else "The web breaks, and the magnet shows or falls out",
            remedy=f"Leave {mm(web)}: a thinner magnet, or a board of {mm(deep + web)}",
            source=cited(web, "geometry"),
        )
    ]


def before_covering(
    job: ClosureJob, deep: Quantity, at: Quantity, marks: Sequence[Mark]
) -> Operation:
    """Sink the magnets into the outside of the front board, under the covering."""
    heat = job.book.practice("magnet-heat")
    steps = (
        say("Have round magnets {across} across and {thick} thick.",
            across=marks[0].across, thick=job.part.options.thickness),
        say("Mark the template on the outside of the front board, {at} from the fore-edge.", at=at),
        say("Cut each pocket {across} wide and {deep} deep; stop before it gives.",
            across=marks[0].across, deep=deep),
        *poles(job.part.options),
        say("Epoxy or white glue under the magnet, no hot glue; it lies just below the face."),
        say("Cap it with paper glued over, and sand level when dry."),
        say("From now on no oven: above {heat} a magnet loses its pull.", heat=heat),
    )  # fmt: skip
    return Operation(
        POCKET,
        "Sink the magnets",
        steps,
        job.book.practice("hand-closure"),
        after=tuple(one for one in (job.boards_cut,) if one),
        before_any=BEFORE,
        wait=dry_in_room(job.book, job.book.table("drying", "pva-joint", "next"), shut=True),
        waiting="the glue sets, the magnets apart from other steel",
        cautions=("blade", "hammer", "magnets", "small-parts", "resin-skin"),
        tools=("closure template", "hole punch or flat bit", "knife", "eye protection"),
    )


def poles(said: Any) -> tuple[Text, ...]:
    """Which side goes up: with steel opposite it does not matter, with magnets it does.

    ``said`` are the options of the magnets.
    """
    if said.keeper == "steel":
        return (say("Opposite steel either pole may face out; keep steel discs well away."),)
    mark = "Stack all magnets: they pull as they must. Mark the upper face of each with a pen."
    if said.marked:
        mark = "Stack all magnets: all marks must face one way, or one of them is marked wrong."
    return (
        say(mark),
        say("In the board the mark faces out; in the flap it faces away from the board."),
        say("Try every pair through a scrap of covering before any glue."),
    )
