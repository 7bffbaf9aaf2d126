"""The punching template at true scale, and the pages of a gathering."""

from __future__ import annotations

from foredge.contract import (
    Circle,
    Drawing,
    Item,
    Label,
    Line,
    Measured,
    Quantity,
    corners,
    show_length,
)
from foredge_stages.text_block.counts import collation
from foredge_stages.text_block.sizes import Sizes

STRIP_MM = 60.0
MARGIN_MM = 20.0
TICK_MM = 6.0
MOST_FOLIOS = 16


def template(size: Sizes, stations: tuple[Quantity, ...], display: str) -> Drawing:
    """A strip as high as the folded leaf: laid into the fold, head to head, and punched."""
    height, left, top = size.fold_height.value, MARGIN_MM, MARGIN_MM
    middle = left + STRIP_MM / 2
    items: list[Item] = [
        Line(corners(left, top, STRIP_MM, height), "cut", closed=True),
        Line(((middle, top), (middle, top + height)), "fold"),
        Label((middle, top - 3), "HEAD", 4.0, anchor="middle"),
        Line(((left + 4, top + 7), (left + 7, top + 2), (left + 10, top + 7)), "outline"),
        Measured(
            (left + STRIP_MM, top + height),
            (left + STRIP_MM, top),
            show_length(size.fold_height, display),
            -6.0,
        ),
    ]
    for place, station in enumerate(stations, start=1):
        y = top + station.value
        items += [
            Line(((middle - TICK_MM, y), (middle + TICK_MM, y)), "outline"),
            Circle((middle, y), 0.8, "outline"),
            *_told(middle, y, place, station, display),
        ]
    for name, cut, y in (("head", size.trims.head, top), ("tail", size.trims.tail, top + height)):
        if cut.value > 0:
            line = y + cut.value if name == "head" else y - cut.value
            items.append(Line(((left, line), (left + STRIP_MM, line)), "hidden"))
    return Drawing(
        name="text-block-punching-template",
        title="Punching template",
        width=STRIP_MM + 2 * MARGIN_MM + 6,
        height=height + 2 * MARGIN_MM,
        items=tuple(items),
        true_scale=True,
    )


def _told(middle: float, y: float, place: int, station: Quantity, display: str) -> list[Item]:
    """A station's distance from the head; where both units are wanted, inches at the left."""
    first = "metric" if display == "both" else display
    told = f"{place}: {show_length(station, first)}"
    items: list[Item] = [Label((middle + TICK_MM + 1.5, y + 1.2), told, 3.0)]
    if display == "both":
        inches = show_length(station, "imperial")
        items.append(Label((middle - TICK_MM - 1.5, y + 1.2), inches, 3.0, anchor="end"))
    return items


def gathering(folios: int) -> tuple[Drawing, ...]:
    """One gathering from the head, its folios inside each other, with the pages they carry.

    None where it would have more folios than a page can show.
    """
    if folios > MOST_FOLIOS:
        return ()
    gap, reach = 9.0, 70.0
    height = folios * 2 * gap + 10
    middle = MARGIN_MM + height / 2
    items: list[Item] = []
    for step, (first, last) in enumerate(collation(folios)):
        half = (folios - step) * gap
        spine = MARGIN_MM + step * 4.0
        end = MARGIN_MM + reach + 20
        items += [
            Line(((end, middle - half), (spine + 4, middle - half), (spine, middle),
                  (spine + 4, middle + half), (end, middle + half)), "outline"),
            Label((end + 2, middle - half + 1.2), f"{first}, {first + 1}", 3.5),
            Label((end + 2, middle + half + 1.2), f"{last}, {last + 1}", 3.5),
        ]  # fmt: skip
    picture = Drawing(
        name="text-block-gathering",
        title="Pages of one gathering, seen from the head",
        width=reach + 70,
        height=height + 2 * MARGIN_MM,
        items=tuple(items),
    )
    return (picture,)
