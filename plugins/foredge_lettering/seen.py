"""The letters as the picture of the finished book shows them."""

from __future__ import annotations

from foredge.contract import Look, Point, Side, Stuff
from foredge_lettering.trace import Sheet, letter_origins


def letters_seen(sheet: Sheet, on: Side, stuff: Stuff) -> Look:
    """Lines as wide as the tool's, or filled outlines; the back's are seen from its spine on."""
    pieces: list[tuple[tuple[Point, ...], ...]] = []
    lines: list[tuple[Point, ...]] = []
    for row, origin in zip(sheet.setting.rows, letter_origins(sheet), strict=True):
        for letter in row.letters:
            drawn = tuple(
                tuple(_put(sheet, on, origin, point) for point in stroke) for stroke in letter
            )
            if sheet.setting.filled:
                pieces += [drawn] if drawn else []
            else:
                lines += drawn
    return Look(on, "letters", stuff, tuple(pieces), tuple(lines), sheet.stroke)


def _put(sheet: Sheet, on: Side, origin: Point, point: Point) -> Point:
    x, y = origin[0] + point[0] * sheet.height, origin[1] + point[1] * sheet.height
    across, down = sheet.place.on_panel((x, y))
    # One faces the back with its spine at the right; a look counts from the spine.
    return (sheet.place.panel_width.value - across if on == "back" else across), down
