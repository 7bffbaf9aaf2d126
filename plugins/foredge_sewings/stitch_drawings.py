"""The strip that long stitch goes through, with its holes, at full size."""

from __future__ import annotations

from foredge.contract import (
    Circle,
    Drawing,
    Item,
    Label,
    Line,
    Quantity,
    SewingJob,
    show_length,
)
from foredge_sewings.sewing_strip import Strip

_MARGIN = 20.0
_MOST_ROWS = 150
"""No strip of cloth is wider; the template of a slip of the pen is not worth drawing."""


def piercing_template(
    job: SewingJob, strip: Strip, stations: tuple[Quantity, ...]
) -> tuple[Drawing, ...]:
    """The strip at full size: a row of holes for each gathering, the folds of its flanges."""
    rows = int(job.gatherings.value)
    if rows > _MOST_ROWS:
        return ()
    width, height, left, top = strip.width.value, strip.height.value, _MARGIN, _MARGIN
    start = left + (width - strip.spine.value) / 2
    above = job.trim_head.value + strip.short.value
    items: list[Item] = [
        Line(((left, top), (left + width, top), (left + width, top + height), (left, top + height)),
             "cut", closed=True),
        *(Line(((x, top), (x, top + height)), "fold") for x in (start, start + strip.spine.value)),
        Label((left + width / 2, top - 6), "HEAD, paper side up", 4.0, anchor="middle"),
        *(Circle((start + (row + 0.5) * job.pitch.value, top + at.value - above), 0.4)
          for row in range(rows) for at in stations),
        *(Label((left - 2, top + at.value - above + 1), f"{place}", 3.0, anchor="end")
          for place, at in enumerate(stations, start=1)),
    ]  # fmt: skip
    display = job.book.display
    rows_told = f"{rows} rows, {show_length(job.pitch, display)} apart"
    first = show_length(stations[0], display)
    first_told = f"station 1 is {first} from the head of the folded leaf"
    items += [
        Label((_MARGIN, top + height + 6 + 5 * line), words, 3.0)
        for line, words in enumerate((rows_told, first_told))
    ]
    sheet = Drawing(
        "text-block-sewing-strip",
        "Sewing strip, to be pierced",
        max(width, 110.0) + 2 * _MARGIN,
        height + 2 * _MARGIN,
        tuple(items),
        true_scale=True,
    )
    return (sheet,)
