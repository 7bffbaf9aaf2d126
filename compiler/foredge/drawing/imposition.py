"""Drawings laid out on printed pages: small ones share, large ones are tiled.

Templates come first, at true scale; pictures follow, reduced to fit, and say so.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from foredge.drawing.extent import used, without_bars
from foredge.drawing.model import Drawing, Item, Label, Point
from foredge.drawing.page_frame import TOP, Sheet, fitted
from foredge.drawing.paper import MARGIN, Paper
from foredge.drawing.sheets import Placed, Window
from foredge.drawing.textbox import text_width
from foredge.drawing.tiling import Grid, Room, Tile, grid, shelves

CAPTION = 6.0
"""mm above a drawing for its title."""

GAP = 6.0
"""mm between drawings that share a page."""

HALF_PAGE = 0.7
"""A picture that need not be reduced further than to this shares its page."""

_CAPTION_SIZE = 3.2


@dataclass(frozen=True, slots=True)
class Subject:
    """A drawing to be printed, what of it is used, and what must be known of it first."""

    drawing: Drawing
    part: Window
    note: str = ""


def subject(drawing: Drawing, note: str = "") -> Subject:
    """``drawing`` as it is printed: without the white round it and its check bars."""
    plain = without_bars(drawing)
    return Subject(plain, used(plain), note)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A drawing as it goes on a page that it may share."""

    subject: Subject
    caption: str
    scale: float
    size: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Laid:
    """The sheets of one kind, and for each subject the first and the last of them (from 0)."""

    sheets: tuple[Sheet, ...]
    found: tuple[tuple[Subject, int, int], ...]


def templates(subjects: Sequence[Subject], paper: Paper) -> Laid:
    """Every true-scale drawing; pages in the order of the first thing on them."""
    upright: list[_Piece] = []
    level: list[_Piece] = []
    alone: list[Subject] = []
    for subject in subjects:
        piece = _piece(subject, subject.drawing.title, 1.0, paper)
        if paper.room(level=False).holds(*piece.size):
            upright.append(piece)
        elif paper.room(level=True).holds(*piece.size):
            level.append(piece)
        else:
            alone.append(subject)
    groups = [
        *_shared(upright, paper, level=False, title="Templates"),
        *_shared(level, paper, level=True, title="Templates"),
        *(([one], _tiled(one, paper)) for one in alone),
    ]
    return _laid(groups, subjects)


def pictures(subjects: Sequence[Subject], paper: Paper) -> Laid:
    """What is to be looked at and not measured, reduced to half a page or to a whole one."""
    upright: list[_Piece] = []
    level: list[_Piece] = []
    for subject in subjects:
        turned, scale = _reduction(subject.part, paper)
        told = "picture, not to scale" + ("" if scale > 0.995 else f", reduced to {scale:.0%}")
        piece = _piece(subject, f"{subject.drawing.title} ({told})", scale, paper)
        (level if turned else upright).append(piece)
    groups = [
        *_shared(upright, paper, level=False, title="Pictures, not to scale"),
        *_shared(level, paper, level=True, title="Pictures, not to scale"),
    ]
    return _laid(groups, subjects)


def _reduction(part: Window, paper: Paper) -> tuple[bool, float]:
    """Whether on a level page, and mm on paper for a mm of it: half a page where that does."""

    def scale(room: Room, share: float) -> float:
        high = room.height * share - CAPTION - GAP / 2
        return min(1.0, room.width / part.width, high / part.height)

    upright, level = paper.room(level=False), paper.room(level=True)
    half = scale(upright, 0.5)
    if half >= HALF_PAGE:
        return False, half
    one, other = scale(upright, 1.0), scale(level, 1.0)
    return other > one, max(one, other)


def _laid(groups: Iterable[tuple[list[Subject], list[Sheet]]], subjects: Sequence[Subject]) -> Laid:
    sheets: list[Sheet] = []
    places: dict[int, tuple[int, int]] = {}
    order = {id(one): which for which, one in enumerate(subjects)}
    for group, pages in sorted(groups, key=lambda one: min(order[id(each)] for each in one[0])):
        first = len(sheets)
        sheets += pages
        places |= {id(one): (first, len(sheets) - 1) for one in group}
    return Laid(tuple(sheets), tuple((one, *places[id(one)]) for one in subjects))


def _piece(subject: Subject, caption: str, scale: float, paper: Paper) -> _Piece:
    part, most = subject.part, paper.room(level=False).width
    told = max(text_width(words, _CAPTION_SIZE) for words in (caption, subject.note))
    over = CAPTION * (2 if subject.note else 1)
    size = (max(part.width * scale, min(told, most)), part.height * scale + over)
    return _Piece(subject, caption, scale, size)


def _shared(
    pieces: Sequence[_Piece], paper: Paper, *, level: bool, title: str
) -> Iterator[tuple[list[Subject], list[Sheet]]]:
    room = paper.room(level=level)
    for slots in shelves([piece.size for piece in pieces], room, GAP):
        chosen = [pieces[slot.which] for slot in slots]
        subjects = [piece.subject for piece in chosen]
        if len(chosen) == 1:
            yield subjects, [_single(chosen[0], level)]
            continue
        placed: list[Placed] = []
        captions: list[Item] = []
        for slot, piece in zip(slots, chosen, strict=True):
            y = TOP + slot.y
            for words in filter(None, (piece.caption, piece.subject.note)):
                label = Label((MARGIN + slot.x, y + CAPTION - 2), words, _CAPTION_SIZE)
                captions.append(fitted(label, piece.size[0]))
                y += CAPTION
            placed.append(_put(piece.subject, (MARGIN + slot.x, y), piece.scale))
        marks = tuple(one.drawing.title for one in subjects)
        yield subjects, [Sheet(title, level, tuple(placed), "", tuple(captions), marks)]


def _single(piece: _Piece, level: bool) -> Sheet:
    """A page of its own: the page's title says what it is."""
    subject = piece.subject
    placed = _put(subject, (MARGIN, TOP), piece.scale)
    return Sheet(piece.caption, level, (placed,), subject.note, (), (subject.drawing.title,))


def _put(subject: Subject, at: Point, scale: float) -> Placed:
    return Placed(subject.drawing, at, subject.part, scale)


def tiles_of(part: Window, paper: Paper) -> tuple[bool, Grid]:
    """Whether its pages lie level, and its tiles; upright where both need as many."""
    upright, level = (grid(part, paper.room(level=turned)) for turned in (False, True))
    return (True, level) if len(level.tiles) < len(upright.tiles) else (False, upright)


def _tiled(subject: Subject, paper: Paper) -> list[Sheet]:
    level, tiles = tiles_of(subject.part, paper)
    if len(tiles.tiles) == 1:
        return [_single(_Piece(subject, subject.drawing.title, 1.0, (0.0, 0.0)), level)]
    return [_tile_sheet(subject, tile, tiles, level) for tile in tiles.tiles]


def _tile_sheet(subject: Subject, tile: Tile, tiles: Grid, level: bool) -> Sheet:
    drawing, count = subject.drawing, len(tiles.tiles)
    first = tile is tiles.tiles[0]
    return Sheet(
        f"{tile.name} of {count}: {drawing.title}",
        level,
        (Placed(drawing, (MARGIN, TOP), tile.window),),
        subject.note,
        marks=(drawing.title,) if first else (),
        tile=tile,
        grid=tiles,
    )
