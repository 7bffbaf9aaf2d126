"""The trace sheet: panel and letters at full size, and its mirror for rubbing down."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from foredge.contract import CheckBar, Cross, Drawing, Item, Label, Line, Point, Shape
from foredge_lettering.place import Place
from foredge_lettering.setting import Row, Setting

MARGIN = 15.0
FOOT = 26.0
LEAST = 130.0
"""mm: the sheet round the panel, what the bar at its foot needs, and the narrowest sheet."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a trace sheet shows; ``height`` of the capitals and ``stroke`` in mm."""

    key: str
    title: str
    panel: str
    place: Place
    setting: Setting
    height: float
    stroke: float
    align: str
    unit: Literal["mm", "in"]


def trace_sheets(sheet: Sheet) -> tuple[Drawing, Drawing]:
    """The sheet as one faces the panel, and mirrored."""
    return _drawing(sheet, mirrored=False), _drawing(sheet, mirrored=True)


def letter_origins(sheet: Sheet) -> tuple[Point, ...]:
    """Where each row's x = 0 and its baseline lie in the box, mm: along the lines, across them."""
    setting, height, half = sheet.setting, sheet.height, sheet.stroke / 2
    along, deep = sheet.place.along.value, sheet.place.deep.value
    top = (deep - setting.height * height) / 2 - setting.top * height
    origins = []
    for place, row in enumerate(setting.rows):
        slack = along - row.width * height
        start = {"left": half, "centre": slack / 2, "right": slack - half}[sheet.align]
        origins.append((start - row.left * height, top + place * setting.leading * height))
    return tuple(origins)


def _drawing(sheet: Sheet, *, mirrored: bool) -> Drawing:
    panel_width, panel_height = sheet.place.panel_width.value, sheet.place.panel_height.value
    width = max(panel_width + 2 * MARGIN, LEAST)
    left, top = (width - panel_width) / 2, MARGIN

    def put(point: Point) -> Point:
        x = left + point[0]
        return (width - x if mirrored else x), top + point[1]

    items = (*_panel(sheet, put), *_letters(sheet, put), *_words(sheet, width, mirrored))
    foot = CheckBar(
        ((width - 100) / 2, top + panel_height + 10), "in" if sheet.unit == "in" else "mm"
    )
    name = f"trace-{sheet.key}" + ("-mirrored" if mirrored else "")
    title = f"Tracing: {sheet.title}" + (", mirrored" if mirrored else "")
    return Drawing(
        name,
        title,
        width,
        top + panel_height + FOOT,
        (*items, foot),
        true_scale=True,
        sizes=(sheet.place.panel_width, sheet.place.panel_height),
    )


def _panel(sheet: Sheet, put: Callable[[Point], Point]) -> Iterator[Item]:
    place = sheet.place
    wide, high = place.panel_width.value, place.panel_height.value
    corners: tuple[Point, ...] = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    yield Line(tuple(put(corner) for corner in corners), "hidden", closed=True)
    if wide > 30:  # on a spine the crosses would lie in the letters
        for corner in corners:
            yield Cross(put(corner))
    along, deep = place.along.value, place.deep.value
    box: tuple[Point, ...] = ((0.0, 0.0), (along, 0.0), (along, deep), (0.0, deep))
    yield Line(tuple(put(place.on_panel(corner)) for corner in box), "guide", closed=True)
    for _, y in letter_origins(sheet):
        ends = ((0.0, y), (along, y))
        yield Line(tuple(put(place.on_panel(end)) for end in ends), "guide")


def _letters(sheet: Sheet, put: Callable[[Point], Point]) -> Iterator[Item]:
    for row, origin in zip(sheet.setting.rows, letter_origins(sheet), strict=True):
        yield from _row(sheet, row, origin, put)


def _row(sheet: Sheet, row: Row, origin: Point, put: Callable[[Point], Point]) -> Iterator[Item]:
    def place(point: Point) -> Point:
        x, y = origin[0] + point[0] * sheet.height, origin[1] + point[1] * sheet.height
        return put(sheet.place.on_panel((x, y)))

    for letter in row.letters:
        drawn = tuple(tuple(place(point) for point in stroke) for stroke in letter)
        if sheet.setting.filled:
            if drawn:
                yield Shape(drawn, "outline")
        else:
            for stroke in drawn:
                yield Line(stroke, "outline")


def _words(sheet: Sheet, width: float, mirrored: bool) -> Iterator[Item]:
    foot = MARGIN + sheet.place.panel_height.value
    side = "mirrored: lay it face down" if mirrored else "as you face it"
    yield Label((width / 2, MARGIN - 5), f"Head of the {sheet.panel}, {side}", 3.5, anchor="middle")
    yield Label((width / 2, foot + 6), "Tail", 3.5, anchor="middle")
