"""The first pages of a set of templates: how to print, what is on which page, maps of tiles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from foredge.drawing.imposition import Laid, Subject, tiles_of
from foredge.drawing.model import Drawing, Item, Label, Line, Shape
from foredge.drawing.page_frame import TOP, Sheet, fitted
from foredge.drawing.paper import MARGIN, Paper
from foredge.drawing.sheets import Placed, Window, whole
from foredge.drawing.textbox import text_width
from foredge.drawing.tiling import Grid, Slot, shelves

LINE = 4.8
SIZE = 3.5
MAP_WIDTH, MAP_HEIGHT = 88.0, 58.0
"""mm: the room for one map of tiles."""

_GAP = 6.0
_PAGES = 34.0
"""mm for the page numbers at the left of the list."""


@dataclass(frozen=True, slots=True)
class _Block:
    """Something on the contents pages: lines of words, or a map with what it maps."""

    width: float
    height: float
    items: tuple[Item, ...]
    map_of: Subject | None = None
    scale: float = 1.0


def contents(book: str, paper: Paper, true: Laid, seen: Laid) -> list[Sheet]:
    """The sheets that go before ``true`` (templates) and ``seen`` (pictures)."""
    count = len(_sheets(book, paper, true, seen, 0))
    # The page numbers move the rest along, and do not change how many lines there are.
    return _sheets(book, paper, true, seen, count)


def _sheets(book: str, paper: Paper, true: Laid, seen: Laid, before: int) -> list[Sheet]:
    room = paper.room(level=False)
    lines = _lines(book, paper, true, seen, before)
    most = int(room.height // LINE)
    blocks = [
        _words(lines[start : start + most], room.width) for start in range(0, len(lines), most)
    ]
    blocks += [_map(subject, paper) for subject, first, last in true.found if last > first]
    sizes = [(block.width, block.height) for block in blocks]
    return [
        Sheet(
            "What is on which page",
            False,
            tuple(part for slot in slots for part in _put(blocks[slot.which], slot)),
            marks=() if place else ("What is on which page",),
        )
        for place, slots in enumerate(shelves(sizes, room, _GAP))
    ]


def _put(block: _Block, slot: Slot) -> list[Placed]:
    """``block`` on its page: what it maps, and over it its lines and words."""
    left, top = MARGIN + slot.x, TOP + slot.y
    words = whole(Drawing("", "", block.width, block.height, block.items), (left, top))
    if block.map_of is None:
        return [words]
    mapped = block.map_of
    return [Placed(mapped.drawing, (left, top + LINE), mapped.part, block.scale), words]


def _words(lines: Sequence[tuple[str, str]], width: float) -> _Block:
    items: list[Item] = []
    for place, (pages, text) in enumerate(lines):
        y = place * LINE + LINE - 1.4
        if pages:
            items.append(fitted(Label((0, y), pages, SIZE), _PAGES - 2))
        left = _PAGES if pages else 0.0
        items.append(fitted(Label((left, y), text, SIZE), width - left))
    return _Block(width, len(lines) * LINE, tuple(items))


def _lines(book: str, paper: Paper, true: Laid, seen: Laid, before: int) -> list[tuple[str, str]]:
    lines = [("", words) for words in (
        *wrapped(book, SIZE, paper.room(level=False).width),
        f"Print on {paper.title} at 100 %, no fitting to page, one side only.",
        "Then hold a ruler against both bars at the foot of a page: 100 mm, and 4 in.",
        "If a bar is not as long as it says, no template of this print is: print again.",
        "",
    )]  # fmt: skip
    lines += [("", "Templates, at true scale")]
    lines += [_entry(found, before) for found in true.found]
    if any(last > first for _, first, last in true.found):
        lines += [("", words) for words in (
            "",
            "Tiles: cut each along its full lines at the left and at the top.",
            "Lay it on its neighbour up to the dotted line, crosses on crosses, and glue.",
        )]  # fmt: skip
    if seen.found:
        lines += [("", ""), ("", "Pictures, not to scale: print them if you like")]
        lines += [_entry(found, before + len(true.sheets)) for found in seen.found]
    return [*lines, ("", "")]


def _entry(found: tuple[Subject, int, int], before: int) -> tuple[str, str]:
    subject, first, last = found
    start, end = before + first + 1, before + last + 1
    pages = f"page {start}" if start == end else f"pages {start} to {end}"
    note = " (provisional)" if subject.note else ""
    return pages, f"{subject.drawing.title}{note}"


def wrapped(text: str, size: float, width: float) -> list[str]:
    """``text`` in lines of at most ``width`` mm; a word that is longer stands alone."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _map(subject: Subject, paper: Paper) -> _Block:
    """The whole drawing, small, with the lines of its tiles and their names."""
    part = subject.part
    _, tiles = tiles_of(part, paper)
    scale = min(MAP_WIDTH / part.width, MAP_HEIGHT / part.height)
    title = Label((0, LINE - 2), f"Map of tiles: {subject.drawing.title}", 3.0)
    items = (fitted(title, MAP_WIDTH), *_tile_boxes(tiles, part, scale))
    return _Block(MAP_WIDTH, MAP_HEIGHT + LINE, items, subject, scale)


def _tile_boxes(tiles: Grid, part: Window, scale: float) -> list[Item]:
    items: list[Item] = []
    for tile in tiles.tiles:
        window = tile.window
        right = window.x + window.width if tile.right is None else tile.right
        foot = window.y + window.height if tile.foot is None else tile.foot
        left, right = (scale * (x - part.x) for x in (window.x, right))
        top, foot = (scale * (y - part.y) for y in (window.y, foot))
        top, foot = top + LINE, foot + LINE
        ring = ((left, top), (right, top), (right, foot), (left, foot))
        items.append(Line(ring, "outline", closed=True))
        x, y = (left + right) / 2, (top + foot) / 2
        wide = text_width(tile.name, 4.0) / 2
        back = ((x - wide, y - 3.6), (x + wide, y - 3.6), (x + wide, y + 1.4), (x - wide, y + 1.4))
        items += [Shape((back,), "fill", 0.0), Label((x, y), tile.name, 4.0, anchor="middle")]
    return items
