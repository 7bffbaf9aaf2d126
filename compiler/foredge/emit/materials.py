"""What must lie on the bench: pieces by what they are cut from, and tools."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from foredge.contract import Build, Flat, Piece, Size, StockItem
from foredge.display import show, show_size
from foredge.emit.escape import escape
from foredge.emit.words import Words
from foredge.emit.work import PieceRow, piece_row
from foredge.quantity import Quantity
from foredge.spec.words import listed


@dataclass(frozen=True, slots=True)
class CutFrom:
    """Everything cut from one stock item, or from one material of the maker's choice."""

    title: str
    about: str
    rows: tuple[PieceRow, ...]


def cut_from(build: Build) -> tuple[CutFrom, ...]:
    """The pieces, grouped; stock in the order of the spec, the maker's choice last."""
    words = Words(build)
    groups = []
    for pieces in pieces_by_stock(build):
        name = pieces[0].stock or pieces[0].material
        item = build.book.stock.get(name)
        rows = tuple(piece_row(words, piece) for piece in pieces)
        about = _about(words, item) if item is not None else ""
        groups.append(CutFrom(escape(name) or "a material of your choice", about, rows))
    return tuple(groups)


def pieces_by_stock(build: Build) -> tuple[tuple[Piece, ...], ...]:
    """The pieces of each group of :func:`cut_from`, in the same order."""
    stock = {name: place for place, name in enumerate(build.book.stock)}

    def place(piece: Piece) -> tuple[int, str]:
        return stock.get(piece.stock or "", len(stock)), piece.stock or piece.material

    ordered = sorted(build.whole.pieces, key=place)
    return tuple(tuple(pieces) for _, pieces in groupby(ordered, key=place))


def _about(words: Words, item: StockItem) -> str:
    """``sheet 440 × 600 mm, grain along the width, 14 on the shelf``."""
    parts = [str(type(item).__struct_config__.tag)]
    sides = (("width", "wide"), ("height", "high"), ("length", "long"))
    told = [
        f"{show(side, words.system)} {word}"
        for key, word in sides
        if isinstance(side := getattr(item, key, None), Quantity)
    ]
    parts[0] = " ".join([parts[0], ", ".join(told)]).strip()
    grain = getattr(item, "grain", None)
    if grain in ("width", "height"):
        parts.append(f"grain along the {grain}")
    count = getattr(item, "count", None)
    if isinstance(count, Quantity):
        parts.append(f"{show(count)} on the shelf")
    if isinstance(item, Flat) and item.more:
        parts.append(f"also {listed(_size(words, size) for size in item.more)}")
    if item.note:
        parts.append(escape(item.note))
    return ", ".join(parts)


def _size(words: Words, size: Size) -> str:
    """``6 of 300 × 420 mm``."""
    told = show_size(size.width, size.height, words.system)
    return f"{show(size.count)} of {told}" if size.count is not None else told


def tools(build: Build) -> tuple[str, ...]:
    """Every tool once, in alphabetical order."""
    named = {escape(tool) for operation in build.order for tool in operation.tools}
    return tuple(sorted(named, key=lambda tool: (tool.casefold(), tool)))
