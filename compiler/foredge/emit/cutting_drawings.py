"""Each sheet of the cutting plan as a picture: pieces, numbered cuts, grain, off-cuts."""

from __future__ import annotations

from itertools import product

from foredge.contract import (
    Build,
    CutSheet,
    Drawing,
    Flat,
    GrainArrow,
    Item,
    Label,
    Line,
    Measured,
    Point,
    Shape,
    faces,
)
from foredge.display import show, show_size
from foredge.drawing.textbox import clash, text_width
from foredge.emit.cutting import millimetres, pieces_by_name, sheet_key, sheet_title
from foredge.plan.cutting import Cut, Rect

SHORT_MM = 160.0
"""The picture's longer side, about: a sheet is drawn reduced, its sizes are written on it."""

MARGIN_MM = 16.0
MOST_PIECES = 400
_PLACES = (0.06, 0.12, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.88, 0.94)
LETTER_MM = 3.0
SMALL_MM = 2.2
NUMBER_MM = SMALL_MM + 0.3
"""Height of the numbers of the cuts."""


def cut_drawings(build: Build) -> tuple[Drawing, ...]:
    """A picture for every way in which a sheet is cut up."""
    return tuple(_Picture(build, sheet).drawing() for sheet in build.plan.cutting.sheets)


class _Picture:
    """One sheet, drawn at a scale that makes its longer side ``SHORT_MM`` at most."""

    def __init__(self, build: Build, sheet: CutSheet) -> None:
        self._build = build
        self._sheet = sheet
        self._layout = sheet.layout
        longer = max(self._layout.sheet.width, self._layout.sheet.height)
        self._scale = min(1.0, SHORT_MM / longer)
        self._titles = {name: one.title for name, one in pieces_by_name(build).items()}

    def drawing(self) -> Drawing:
        """The sheet with everything on it."""
        wide = self._layout.sheet.width * self._scale
        high = self._layout.sheet.height * self._scale
        items: list[Item] = [
            *self._off_cuts(),
            *self._pieces(),
            *self._marks(),
            Line(self._corners(self._whole()), "outline", closed=True),
            *self._cuts(),
            *self._sizes(),
            *self._grain(wide, high),
        ]
        items += self._numbers([item for item in items if isinstance(item, Label)])
        used = {placement.piece.name for placement in self._layout.placements}
        cut = [one for one in self._build.whole.pieces if one.name in used]
        return Drawing(
            name=sheet_key(self._sheet),
            title=f"Cutting plan: {sheet_title(self._sheet)}",
            width=wide + 2 * MARGIN_MM,
            height=high + 2 * MARGIN_MM,
            items=tuple(items),
            sizes=tuple(q for one in cut for q in (one.width, one.height, one.count)),
        )

    def _whole(self) -> Rect:
        return Rect(0.0, 0.0, self._layout.sheet.width, self._layout.sheet.height)

    def _at(self, x: float, y: float) -> Point:
        return MARGIN_MM + x * self._scale, MARGIN_MM + y * self._scale

    def _corners(self, rect: Rect) -> tuple[Point, ...]:
        right, tail = rect.x + rect.width, rect.y + rect.height
        places = ((rect.x, rect.y), (right, rect.y), (right, tail), (rect.x, tail))
        return tuple(self._at(x, y) for x, y in places)

    def _pieces(self) -> list[Item]:
        items: list[Item] = []
        for placement in self._layout.placements[:MOST_PIECES]:
            rect = Rect(placement.x, placement.y, placement.width, placement.height)
            items.append(Shape((self._corners(rect),), "fill", 0.10))
            size = show_size(
                millimetres(placement.width), millimetres(placement.height), self._system
            )
            items += self._words(rect, (self._titles[placement.piece.name], size))
        return items

    def _off_cuts(self) -> list[Item]:
        items: list[Item] = []
        for off in self._layout.off_cuts:
            rect = Rect(off.x, off.y, off.width, off.height)
            size = show_size(millimetres(off.width), millimetres(off.height), self._system)
            items += self._words(rect, (f"off-cut {off.name}", size))
        return items

    def _words(self, rect: Rect, lines: tuple[str, ...]) -> list[Item]:
        """The lines in the middle of ``rect``, along its longer side, as far as there is room."""
        wide, high = rect.width * self._scale, rect.height * self._scale
        upright = high > wide * 1.5
        along, across = (high, wide) if upright else (wide, high)
        longest = max(text_width(line, 1.0) for line in lines)
        size = min(LETTER_MM, (along - 6.0) / longest, (across - 5.0) / (1.5 * len(lines)))
        if size < SMALL_MM:
            lines = lines[:1]
            longest = text_width(lines[0], 1.0)
            size = min(LETTER_MM, (along - 6.0) / longest, (across - 2.0) / 1.5)
        if size < 1.2:
            return []
        x, y = self._at(rect.x + rect.width / 2, rect.y + rect.height / 2)
        items: list[Item] = []
        for place, line in enumerate(lines):
            shift = (place - (len(lines) - 1) / 2) * 1.5 * size + 0.35 * size
            at = (x + shift, y) if upright else (x, y + shift)
            items.append(Label(at, line, size, -90.0 if upright else 0.0, "middle"))
        return items

    def _cuts(self) -> list[Item]:
        items: list[Item] = []
        for cut in self._layout.cuts[:MOST_PIECES]:
            items.append(Line(self._ends(cut), "cut"))
        return items

    def _numbers(self, words: list[Label]) -> list[Item]:
        """The number of each cut beside its line, where no other words stand."""
        placed: list[Label] = []
        for cut in self._layout.cuts[:MOST_PIECES]:
            (ax, ay), (bx, by) = self._ends(cut)
            for share, side in product(_PLACES, (-1.0, 1.0)):
                x, y = ax + share * (bx - ax), ay + share * (by - ay) + 0.9
                clear = text_width(str(cut.order), NUMBER_MM) / 2 + 0.7
                if cut.axis == "x":
                    at = x + side * clear, _between(y, ay + NUMBER_MM + 0.2, by - 0.7)
                else:
                    at = _between(x, ax + clear, bx - clear), y + side * 1.8
                label = Label(at, str(cut.order), NUMBER_MM, anchor="middle", role="cut")
                if not any(clash(label, other) for other in (*words, *placed)):
                    placed.append(label)
                    break
        return list(placed)

    def _ends(self, cut: Cut) -> tuple[Point, Point]:
        panel = cut.panel
        if cut.axis == "x":
            x = panel.x + cut.at
            return self._at(x, panel.y), self._at(x, panel.y + panel.height)
        y = panel.y + cut.at
        return self._at(panel.x, y), self._at(panel.x + panel.width, y)

    def _marks(self) -> list[Item]:
        """Spoiled places, and creases of a whole sheet."""
        if self._sheet.of:
            return []
        item = self._build.book.stock[self._sheet.stock]
        assert isinstance(item, Flat)
        face = faces(item)[self._sheet.size]
        items: list[Item] = [Shape((self._corners(zone),), "fill", 0.45) for zone in face.zones()]
        for line in face.crease_lines():
            ends = self._at(line.x, line.y), self._at(line.x + line.width, line.y + line.height)
            items.append(Line(ends, "hidden"))
        return items

    @property
    def _system(self) -> str:
        return "imperial" if self._build.book.display == "imperial" else "metric"

    def _sizes(self) -> list[Item]:
        whole = self._whole()
        left, right = self._at(0, 0), self._at(whole.width, 0)
        tail = self._at(0, whole.height)
        across, down = millimetres(whole.width), millimetres(whole.height)
        return [
            Measured(left, right, show(across, self._system), 8.0, LETTER_MM),
            Measured(tail, left, show(down, self._system), 8.0, LETTER_MM),
        ]

    def _grain(self, wide: float, high: float) -> list[Item]:
        item = self._build.book.stock[self._sheet.stock]
        assert isinstance(item, Flat)
        if item.grain == "unknown":
            return []
        words = Label((MARGIN_MM + wide, MARGIN_MM + high + 7.0), "grain", LETTER_MM, anchor="end")
        if item.grain == "width":
            x = MARGIN_MM + wide - text_width("grain", LETTER_MM) - 14.0
            return [GrainArrow((x, MARGIN_MM + high + 6.0), 20.0, 0.0), words]
        return [GrainArrow((MARGIN_MM + wide + 8.0, MARGIN_MM + high - 12.0), 20.0, 90.0), words]


def _between(value: float, least: float, most: float) -> float:
    return max(least, min(value, most))
