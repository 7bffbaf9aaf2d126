"""Long stitch on paper: the strip with its holes at full size, and the way of the thread."""

from __future__ import annotations

from itertools import pairwise

from foredge.contract import Circle, Drawing, Item, Label, Line, Quantity, SewingJob
from foredge_sewings.bench import mm
from foredge_sewings.sewing_strip import Strip

_MARGIN = 20.0
_ROW = 24.0
_SHOWN = 3
"""Gatherings in the diagram: the third is the first with a kettle."""

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
    rows_told = f"{rows} rows, {job.pitch.value:.2f} mm apart"
    first_told = f"station 1 is {mm(stations[0])} from the head of the folded leaf"
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


def sewing_diagram(job: SewingJob, stations: tuple[Quantity, ...]) -> Drawing:
    """The spine from outside: full lines are long stitches, broken ones lie in the folds."""
    rows = min(int(job.gatherings.value), _SHOWN)
    top = _MARGIN + 14
    ys = [top + at.value - stations[0].value for at in stations]
    items: list[Item] = [
        Label((_MARGIN, _MARGIN - 4), "Seen from outside, head up", 4.0),
        Label((_MARGIN, _MARGIN + 2), "full line: outside; broken: inside the fold", 3.0),
    ]
    for row in range(rows):
        x = _MARGIN + 12 + row * _ROW
        items.append(Label((x, top - 5), f"{row + 1}", 4.0, anchor="middle"))
        for place, (first, last) in enumerate(pairwise(ys)):
            items.append(Line(((x, first), (x, last)), "outline" if place % 2 else "hidden"))
        items += [Circle((x, y), 0.9, "outline", filled=True) for y in ys]
        items += _arrow(x, ys[-1] if row % 2 == 0 else ys[0], down=row % 2 == 0)
        if row + 1 < rows:
            y = ys[-1] if row % 2 == 0 else ys[0]
            items.append(Line(((x, y), (x + _ROW, y)), "outline"))
    items += [
        Label((_MARGIN + 6, y + 1.2), f"{place}", 3.0, anchor="end")
        for place, y in enumerate(ys, start=1)
    ]
    return Drawing(
        "text-block-long-stitch",
        "Long stitch, the way of the thread",
        max(2 * _MARGIN + 24 + rows * _ROW, 120.0),
        ys[-1] + _MARGIN + 8,
        tuple(items),
    )


def _arrow(x: float, y: float, *, down: bool) -> list[Item]:
    """Which way a row is sewn: a tip beside its last station."""
    tip = y - 3 if down else y + 3
    back = tip - 4 if down else tip + 4
    return [Line(((x + 1.5, back), (x + 3, tip), (x + 4.5, back)), "outline")]
