"""What must lie on the bench: pieces by what they are cut from, other materials, tools."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from foredge.contract import Build, Piece, StockItem, Use
from foredge.dimension import Dimension
from foredge.display import show
from foredge.emit.escape import escape
from foredge.emit.words import Words, state_within
from foredge.emit.work import PieceRow, piece_row, step_numbers
from foredge.quantity import Quantity, bands, total


@dataclass(frozen=True, slots=True)
class CutFrom:
    """Everything cut from one stock item, or from one material of the maker's choice."""

    title: str
    about: str
    rows: tuple[PieceRow, ...]


@dataclass(frozen=True, slots=True)
class UseRow:
    """A material used up, all its steps together."""

    material: str
    amount: str
    state: str
    note: str
    steps: str


def cut_from(build: Build) -> tuple[CutFrom, ...]:
    """The pieces, grouped; stock in the order of the spec, the maker's choice last."""
    words = Words(build)
    stock = {name: place for place, name in enumerate(build.book.stock)}

    def place(piece: Piece) -> tuple[int, str]:
        return stock.get(piece.stock or "", len(stock)), piece.stock or piece.material

    groups = []
    for (_, name), pieces in groupby(sorted(build.whole.pieces, key=place), key=place):
        item = build.book.stock.get(name)
        rows = tuple(piece_row(words, piece) for piece in pieces)
        about = _about(words, item) if item is not None else ""
        groups.append(CutFrom(escape(name) or "a material of your choice", about, rows))
    return tuple(groups)


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
    if item.note:
        parts.append(escape(item.note))
    return ", ".join(parts)


def uses(build: Build) -> tuple[UseRow, ...]:
    """Every material used, summed over the steps, in the order in which it is first needed."""
    numbers = step_numbers(build)
    found: dict[tuple[str, str | None, Dimension], list[tuple[Use, str]]] = {}
    seen: set[int] = set()
    at_steps = [(use, numbers[op.id]) for op in build.order for use in op.uses]
    for use, step in [*at_steps, *((use, "") for use in build.whole.uses)]:
        if id(use) in seen:  # a stage may list an operation's use once more for itself
            continue
        seen.add(id(use))
        found.setdefault((use.material, use.stock, use.amount.dimension), []).append((use, step))
    sums = [total([use.amount for use, _ in entries]) for entries in found.values()]
    words = Words(build)
    rows = []
    for (material, stock, _), entries, amount, band in zip(
        found, found.values(), sums, bands(sums), strict=True
    ):
        notes = dict.fromkeys(escape(use.note) for use, _ in entries if use.note)
        rows.append(
            UseRow(
                material=escape(material) + (f", from {escape(stock)}" if stock else ""),
                amount=words.ranged(amount, band),
                state=state_within(amount, band),
                note="; ".join(notes),
                steps=", ".join(dict.fromkeys(step for _, step in entries if step)),
            )
        )
    return tuple(rows)


def tools(build: Build) -> tuple[str, ...]:
    """Every tool once, in alphabetical order."""
    named = {escape(tool) for operation in build.order for tool in operation.tools}
    return tuple(sorted(named, key=lambda tool: (tool.casefold(), tool)))
