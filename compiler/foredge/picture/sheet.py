"""Views set on a sheet: in one row or in two, all to one scale, words under each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from foredge.contract import Item, Label, Shape
from foredge.drawing.textbox import text_width
from foredge.picture.place import Box, Place
from foredge.picture.views import View

WIDTH, HEIGHT, TALLEST = 277.0, 182.0, 150.0
"""The sheet (A4 across, within its margins) and the most a view is high, in mm."""

MARGIN, GAP, TOP = 7.0, 9.0, 6.0
LETTERS, SMALL, LINE = 3.4, 3.0, 4.4
NOTE = "How it will look, not a template. Colours go by their names; light from the upper left."
_FALLEN = ("#f3f2f0", "#e7e5e2", "#d9d6d2")


@dataclass(frozen=True, slots=True)
class Told:
    """A view and the lines under it, its title first."""

    view: View
    words: tuple[str, ...]

    @property
    def span(self) -> float:
        """How wide it is in mm of the book."""
        return self.view.left + self.view.width + self.view.right

    @property
    def said(self) -> float:
        """How wide its words are on the sheet."""
        sizes = (LETTERS, *(SMALL for _ in self.words[1:]))
        return max(text_width(line, size) for line, size in zip(self.words, sizes, strict=True))


Row = Sequence[Told]


def compose(closed: Row, inside: Row) -> tuple[float, float, tuple[Item, ...]]:
    """Width, height and items of the sheet: all in one row, or ``inside`` below ``closed``."""
    layouts: list[list[Row]] = [[[*closed, *inside]], [closed, inside]]
    scales = [_scale(rows) for rows in layouts]
    # Two rows only where they show much more of the book.
    rows, scale = (
        (layouts[1], scales[1]) if scales[1] > 1.25 * scales[0] else (layouts[0], scales[0])
    )
    width = max(_across(row, scale) for row in rows) + 2 * MARGIN
    width = max(width, text_width(NOTE, SMALL) + 2 * MARGIN)
    items: list[Item] = []
    y = TOP
    for row in rows:
        foot = y + scale * max(told.view.height for told in row)
        items += _set(row, (width - _across(row, scale)) / 2, foot, scale)
        y = foot + _below(row)
    items.append(Label((width / 2, y + 2.0), NOTE, SMALL, anchor="middle"))
    return width, y + 5.0, tuple(items)


def _rooms(row: Row, scale: float) -> list[float]:
    return [max(scale * told.span, told.said) for told in row]


def _across(row: Row, scale: float) -> float:
    return sum(_rooms(row, scale)) + GAP * (len(row) - 1)


def _below(row: Row) -> float:
    """Room for the words."""
    return 6.0 + LINE * max(len(told.words) for told in row)


def _scale(rows: Sequence[Row]) -> float:
    """As large as the sheet allows; a narrow view takes the room of its words."""
    words = sum(_below(row) for row in rows)
    tall = sum(max(told.view.height for told in row) for row in rows)
    scale = min(1.0, TALLEST / tall if len(rows) == 1 else 1.0, (HEIGHT - TOP - words - 5) / tall)
    for row in rows:
        scale = min(scale, _fit(row, scale))
    return scale


def _fit(row: Row, scale: float) -> float:
    free = WIDTH - 2 * MARGIN - GAP * (len(row) - 1)
    for _ in row:
        wide = [told for told in row if scale * told.span > told.said]
        words = sum(told.said for told in row if scale * told.span <= told.said)
        across = sum(told.span for told in wide)
        if across:
            scale = min(scale, max(0.02, (free - words) / across))
    return scale


def _set(row: Row, x: float, foot: float, scale: float) -> Iterator[Item]:
    for told, room in zip(row, _rooms(row, scale), strict=True):
        yield from _placed(told, x, room, foot, scale)
        x += room + GAP


def _placed(told: Told, x: float, room: float, foot: float, scale: float) -> Iterator[Item]:
    """The view on its shadow, standing on the common ground, and its words below."""
    view = told.view
    left = x + (room - scale * told.span) / 2 + scale * view.left
    top = foot - scale * view.height
    box = Box(left, top, left + scale * view.width, foot)
    for place, colour in enumerate(_FALLEN):
        far = 2.2 - 0.6 * place
        fallen = Box(box.left + far * 0.4, box.top + far * 0.6, box.right + far, box.foot + far)
        yield Shape((fallen.ring,), colour=colour)
    yield from Place(left, top, scale).items(view.items)
    for place, line in enumerate(told.words):
        size = LETTERS if place == 0 else SMALL
        y = foot + 6.6 + LINE * place
        yield Label((x + room / 2, y), line, size, anchor="middle")
