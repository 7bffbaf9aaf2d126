"""The punching template at true scale, the folios on a sheet, the pages of a gathering."""

from __future__ import annotations

from itertools import product

from foredge.contract import (
    Circle,
    Drawing,
    GrainArrow,
    Item,
    Label,
    Line,
    Measured,
    Point,
    Quantity,
    Shape,
)
from foredge_stages.text_block.counts import collation
from foredge_stages.text_block.paper import Yield
from foredge_stages.text_block.sizes import FOLDS, Sizes
from foredge_stages.text_block.terms import mm

STRIP_MM = 60.0
MARGIN_MM = 20.0
TICK_MM = 6.0
LETTER_MM = 10.0
"""Letters of a picture of a whole sheet, which is shown much reduced."""

MOST_FOLIOS = 16
MOST_PIECES = 200


def rectangle(x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    """Four corners, clockwise from the top left."""
    return ((x, y), (x + width, y), (x + width, y + height), (x, y + height))


def template(size: Sizes, stations: tuple[Quantity, ...]) -> Drawing:
    """A strip as high as the folded leaf: laid into the fold, head to head, and punched."""
    height, left, top = size.fold_height.value, MARGIN_MM, MARGIN_MM
    middle = left + STRIP_MM / 2
    items: list[Item] = [
        Line(rectangle(left, top, STRIP_MM, height), "cut", closed=True),
        Line(((middle, top), (middle, top + height)), "fold"),
        Label((middle - 6, top + 11), "HEAD", 4.0, anchor="end"),
        Line(((left + 4, top + 11), (left + 7, top + 6), (left + 10, top + 11)), "outline"),
        Measured(
            (left + STRIP_MM, top + height), (left + STRIP_MM, top), mm(size.fold_height), -6.0
        ),
    ]
    for place, station in enumerate(stations, start=1):
        y = top + station.value
        items += [
            Line(((middle - TICK_MM, y), (middle + TICK_MM, y)), "outline"),
            Circle((middle, y), 0.8, "outline"),
            Label((middle + TICK_MM + 1.5, y + 1.2), f"{place}: {mm(station)}", 3.0),
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


def sheet_layout(layout: Yield, size: Sizes, folded: int) -> Drawing:
    """One sheet with its pieces; the folds run from top to bottom."""
    place, left, top = layout.placement, MARGIN_MM, MARGIN_MM
    across, down = place.across.value, place.down.value
    wide, high = size.piece_width.value, size.piece_height.value
    items: list[Item] = [Line(rectangle(left, top, across, down), "outline", closed=True)]
    for x, y, width, height in _strips(layout, size):
        items.append(Shape((rectangle(x, y, width, height),), "fill"))
        if min(width, height) > 2 * LETTER_MM:
            words = f"{width:.4g} × {height:.4g} mm"
            turn = -90.0 if height > width else 0.0
            items.append(Label((x + width / 2, y + height / 2), words, LETTER_MM, turn, "middle"))
    columns, rows = int(place.columns.value), int(place.rows.value)
    # Slips of paper by the hundred are not worth drawing one by one.
    few = columns * rows <= MOST_PIECES
    for column, row in product(range(columns), range(rows)) if few else ():
        x, y = left + place.start.value + column * wide, top + row * high
        items += _piece(x, y, wide, high, folded, f"{column + 1}.{row + 1}")
    if place.crease is not None:
        x = left + place.crease.value
        items.append(Line(((x, top - 5), (x, top + down + 5)), "hidden"))
        items.append(Label((x, top - 6), "old crease", 4.0, anchor="middle"))
    items += [
        Measured((left, top), (left + across, top), mm(place.across), 8.0, LETTER_MM),
        Measured((left, top + down), (left, top), mm(place.down), 8.0, LETTER_MM),
    ]
    if layout.grain_known:
        turn, x = (90.0 if layout.along else 0.0), left + place.start.value + wide * 3 / 4
        items.append(GrainArrow((x, top + high / 3), min(wide, high) / 4, turn))
    return Drawing(
        name="text-block-folio-layout",
        title="Folios on one sheet" + (", the sheet turned" if layout.turned else ""),
        width=across + 2 * MARGIN_MM,
        height=down + 2 * MARGIN_MM,
        items=tuple(items),
    )


def _piece(x: float, y: float, wide: float, high: float, folded: int, words: str) -> list[Item]:
    across, down, _ = FOLDS[folded]
    items: list[Item] = [
        Line(rectangle(x, y, wide, high), "cut", closed=True),
        Label((x + wide / 4, y + high / 2), words, LETTER_MM, anchor="middle"),
        Label(
            (x + wide * 3 / 4, y + high - 6),
            f"{wide:.4g} × {high:.4g} mm",
            LETTER_MM,
            0.0,
            "middle",
        ),
    ]
    for step in range(1, across):
        at = x + wide * step / across
        items.append(Line(((at, y), (at, y + high)), "fold"))
    for step in range(1, down):
        at = y + high * step / down
        items.append(Line(((x, at), (x + wide, at)), "fold"))
    return items


def _strips(layout: Yield, size: Sizes) -> list[tuple[float, float, float, float]]:
    """The off-cuts: left, top, width and height of each."""
    place, left, top = layout.placement, MARGIN_MM, MARGIN_MM
    start, down = place.start.value, place.down.value
    used = place.columns.value * size.piece_width.value
    rows = place.rows.value * size.piece_height.value
    areas = {
        "first_edge": (left, top, start, down),
        "side": (left + start + used, top, place.across.value - start - used, down),
        "end": (left + start, top + rows, used, down - rows),
    }
    return [areas[strip.name] for strip in place.strips]


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
