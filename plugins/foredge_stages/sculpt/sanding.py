"""A dry relief sanded smooth, where the maker wants that instead of a wet finger."""

from __future__ import annotations

from foredge.contract import Operation, StageResult, say
from foredge_stages.sculpt.core import PER_AREA
from foredge_stages.sculpt.reading import Relief

DUSTY = "dust-talc"
"""The caution of a clay with filler in it."""


def sand(relief: Relief, after: tuple[str, ...]) -> StageResult:
    """Nothing unless the spec asks for it; out of doors where the dust is that of filler."""
    if relief.options.smoothing != "sanding":
        return StageResult()
    book = relief.book
    dusty = DUSTY in relief.figures.cautions
    where = say("Go outdoors, out of the wind, in a dust mask; nobody without one near you.")
    operation = Operation(
        relief.op("sand"),
        f"Sand the relief on the {relief.where}",
        (
            *((where,) if dusty else ()),
            say("Where the paper clogs the clay is still wet: stop, and let it dry."),
            say("Fine paper, light strokes; go round edges, not over them."),
            say("Wipe the dust up with a damp cloth, do not blow it off."),
        ),
        book.practice("hand-set-up")
        + book.practice("hand-coat") * relief.report.surface / PER_AREA,
        after=after,
        cautions=(DUSTY,) if dusty else (),
        tools=("fine sandpaper", "damp cloth", *(("dust mask",) if dusty else ())),
        outdoors=dusty,
        splits=True,
    )
    return StageResult(operations=(operation,))
