"""Where slits, holes, beds and pockets lie: the whole board at full size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from foredge.contract import (
    CheckBar,
    Circle,
    ClosureJob,
    Drawing,
    Hatch,
    Item,
    Label,
    Line,
    Measured,
    Problem,
    Quantity,
    corners,
    error,
    show_length,
)
from foredge_closures.bench import mm

MARGIN = 15.0
LEAST = 130.0


@dataclass(frozen=True, slots=True)
class Mark:
    """A place on a board, by its middle: ``fore`` from the fore-edge, ``head`` from the head.

    ``across`` runs from fore-edge to spine, ``along`` from head to tail. A ``hole`` is round.
    """

    what: Literal["slit", "hole", "bed", "pocket", "plate"]
    fore: Quantity
    head: Quantity
    across: Quantity
    along: Quantity


def off_board(job: ClosureJob, marks: Sequence[Mark]) -> list[Problem]:
    """A mark that does not lie on its board with something left round it."""
    width, height = job.board_width.value, job.board_height.value
    for mark in marks:
        x, y = mark.across.value / 2, mark.along.value / 2
        if mark.what == "bed":
            continue  # it lies beside its slit; the slit says enough
        room = min(mark.fore.value - x, width - mark.fore.value - x,
                   mark.head.value - y, height - mark.head.value - y)  # fmt: skip
        if room < (-1e-6 if mark.what == "plate" else 1e-6):
            where = f"{mm(mark.fore)} from the fore-edge and {mm(mark.head)} from the head"
            return [
                error(job.part.path, f"a {mark.what} {where} does not lie on a board "
                      f"{mm(job.board_width)} by {mm(job.board_height)}", "closure-off-board",
                      remedy="Move it, or make it smaller", source="geometry")
            ]  # fmt: skip
    return []


def board_sheet(
    job: ClosureJob,
    board: Literal["front", "back"],
    face: Literal["inside", "outside"],
    marks: Sequence[Mark],
) -> Drawing:
    """One face of one board as it lies before you, head up, with its marks."""
    wide, high = job.board_width.value, job.board_height.value
    width = max(wide + 2 * MARGIN, LEAST)
    left, top = (width - wide) / 2, MARGIN
    fore_right = (board == "back") == (face == "inside")
    items: list[Item] = [Line(corners(left, top, wide, high), "cut", closed=True)]
    for mark in marks:
        x = left + (wide - mark.fore.value if fore_right else mark.fore.value)
        items += _mark(mark, x, top + mark.head.value)
    items += _figures(job, marks, left, top, fore_right)
    spine, fore = (left, left + wide) if fore_right else (left + wide, left)
    unit: Literal["mm", "in"] = "in" if job.book.display == "imperial" else "mm"
    items += [
        Label((width / 2, top - 5), f"{board} board, {face} up, head", 3.5, anchor="middle"),
        Label((_beside(spine, width), top + high / 2), "spine side", 3.5, -90.0, "middle"),
        Label((_beside(fore, width), top + high / 2), "fore-edge", 3.5, -90.0, "middle"),
        CheckBar(((width - 101.6) / 2, top + high + 8), unit),
    ]
    return Drawing(
        f"closure-{board}-board",
        f"Closure: {board} board, {face}",
        width,
        top + high + 24,
        tuple(items),
        true_scale=True,
        sizes=(
            job.board_width,
            job.board_height,
            *(side for mark in marks for side in (mark.fore, mark.head)),
        ),
    )


def _mark(mark: Mark, x: float, y: float) -> list[Item]:
    across, along = mark.across.value, mark.along.value
    if mark.what in ("hole", "pocket"):
        cross = 1.5 + across / 2
        return [
            Circle((x, y), across / 2, "cut"),
            Line(((x - cross, y), (x + cross, y)), "guide"),
            Line(((x, y - cross), (x, y + cross)), "guide"),
        ]
    ring = corners(x - across / 2, y - along / 2, across, along)
    if mark.what in ("bed", "plate"):
        return [Line(ring, "outline", closed=True), Hatch((ring,), 2.5)]
    ends = ((x - across / 2, y - along / 2), (x + across / 2, y + along / 2))
    return [Line(ends, "cut")]


def _figures(
    job: ClosureJob, marks: Sequence[Mark], left: float, top: float, fore_right: bool
) -> list[Item]:
    """How far each mark lies from the fore-edge and from the head; a bed goes with its slit."""
    wide, shown = job.board_width.value, job.book.display
    placed = [mark for mark in marks if mark.what != "bed"]
    items: list[Item] = []
    edge, inwards = (left + wide, -1) if fore_right else (left, 1)
    foot = top + max((mark.head.value + mark.along.value / 2 for mark in placed), default=0.0)
    for at, mark in enumerate(_once(placed, "fore")):
        if mark.what != "plate":
            x, y = edge + inwards * mark.fore.value, foot + 10.0 + 8.0 * at
            words = Label(
                (x + inwards * 2.0, y + 1.0),
                show_length(mark.fore, shown),
                3.0,
                anchor="end" if fore_right else "start",
            )
            items += [Line(((x, foot + 1.0), (x, y), (edge, y)), "dimension"), words]
    for at, mark in enumerate(_once(placed, "head")):
        x = edge + inwards * (wide - 14.0 - 9.0 * at)
        y, near = top + mark.head.value, edge + inwards * (mark.fore + mark.across / 2).value
        items.append(Line(((near + inwards * 2.0, y), (x, y)), "guide"))
        items.append(Measured((x, y), (x, top), show_length(mark.head, shown), 0.0))
    return items


def _once(marks: Sequence[Mark], side: Literal["fore", "head"]) -> list[Mark]:
    """One mark for each place, so that no line crosses another's figure."""
    places = {round(getattr(mark, side).value, 2): mark for mark in marks}
    return [places[at] for at in sorted(places, reverse=side == "fore")]


def _beside(edge: float, width: float) -> float:
    return edge - 4 if edge < width / 2 else edge + 6
