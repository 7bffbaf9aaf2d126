"""What the shelf's things ask for before they are used, and to what steps they bring cautions.

Musty cloth and paper are bagged and frozen before anything else is done with them, sheets that
are to look old are dipped, dried and pressed; what is second-hand, old or painted brings its
cautions to every step that uses it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from foredge.ageing import age_sheets
from foredge.contract import (
    Board,
    Book,
    Cloth,
    Flat,
    Operation,
    Sheet,
    Stage,
    StageResult,
    StockItem,
    number,
    say,
    total,
)

FROZEN = ("musty", "insects")
"""States that freezing helps against; mouldy is thrown out."""

USED = ("second-hand", "old")

Prepared = Mapping[str, str]
"""Stock item -> the operation after which it may be used."""


def quarantine_needed(item: StockItem) -> bool:
    """Whether ``item`` has still to be bagged and frozen."""
    return item.quarantined is None and any(one in FROZEN for one in item.state)


def cared_for(
    book: Book, stage: Stage, result: StageResult, known: Prepared
) -> tuple[StageResult, Prepared]:
    """``result`` with what its stock asks for first, and cautions.

    ``known`` is what was prepared for the stages before; the first stage that uses an item
    prepares it.
    """
    used = {one.id: tuple(dict.fromkeys(_used(book, result, one))) for one in result.operations}
    ready = dict(known)
    extra: list[Operation] = []
    for name in dict.fromkeys(name for names in used.values() for name in names):
        first = [] if name in ready else list(_preparing(book, stage, result, name))
        if first:
            extra += first
            ready[name] = first[-1].id
    operations = (_careful(book, one, used[one.id], ready) for one in result.operations)
    return replace(result, operations=(*extra, *operations)), ready


def _preparing(book: Book, stage: Stage, result: StageResult, name: str) -> Iterator[Operation]:
    """Freezing before ageing: one after the other."""
    item, after = book.stock[name], tuple[str, ...]()
    if quarantine_needed(item):
        frozen = _quarantine(book, stage, name)
        after = (frozen.id,)
        yield frozen
    if isinstance(item, Sheet) and item.aged is not None:
        count = total([one.count for one in result.pieces if one.stock == name] or [number(1)])
        yield age_sheets(book, f"{stage.name}.age-{name}", name, item.aged, count, after)


def _used(book: Book, result: StageResult, operation: Operation) -> Iterator[str]:
    """The stock items ``operation`` uses: of its pieces, and by name."""
    pieces = {piece.name: piece.stock for piece in result.pieces}
    for name in (
        *(pieces.get(piece) for piece in operation.pieces),
        *(use.stock for use in operation.uses),
    ):
        if name in book.stock:
            yield str(name)
    for use in operation.uses:
        if use.stock is None:
            yield from (
                name for name, item in book.stock.items() if _means(use.material, name, item)
            )


def _means(material: str, name: str, item: StockItem) -> bool:
    """Whether a step that calls for ``material`` may mean this item: a clasp of the shelf."""
    label = _fold(getattr(item, "material", None) or name)
    return re.match(rf"{re.escape(label)}\b", _fold(material)) is not None


def _fold(name: str) -> str:
    return re.sub(r"[-_\s]+", " ", name.casefold()).strip()


def _careful(
    book: Book, operation: Operation, names: tuple[str, ...], ready: Prepared
) -> Operation:
    """``operation`` after its stock is prepared, with the cautions of what is old."""
    waits = tuple(ready[name] for name in names if name in ready)
    told = tuple(caution for name in names for caution in cautions_of(book.stock[name]))
    if not waits and not told:
        return operation
    return replace(
        operation,
        after=tuple(dict.fromkeys((*operation.after, *waits))),
        cautions=tuple(dict.fromkeys((*operation.cautions, *told))),
    )


def cautions_of(item: StockItem) -> Iterator[str]:
    """What working with something second-hand or old may do to you."""
    if item.found not in USED and not set(item.state) & {*FROZEN, "mouldy"}:
        return
    if isinstance(item, Flat):
        yield "mould-thrift"
    if item.found == "old" and isinstance(item, Board | Cloth):
        # Old covers, their cloth and board, were pasted by recipes with mercury in them.
        yield "historic-poison"
    green = "green" in (getattr(item, "colour", None) or "").casefold()
    if item.found == "old" and green and isinstance(item, Cloth):
        yield "antique-green-cloth"
    if "painted" in item.state:
        yield "old-paint"


def _quarantine(book: Book, stage: Stage, name: str) -> Operation:
    found = ", ".join(one for one in book.stock[name].state if one in FROZEN)
    return Operation(
        f"{stage.name}.quarantine-{name}",
        f"Freeze {name}",
        (
            say(
                "Found: {found}. Shake and brush it at an open window, in gloves and mask.",
                found=found,
            ),
            say("Feel that it is dry; put it in a bag, press the air out, close it tight."),
            say("Freeze it; let it thaw in the closed bag, so that no dew falls on it."),
            say("Open it at the window and look it through once more; what is mouldy goes out."),
        ),
        book.practice("hand-set-up"),
        wait=book.table("drying", "quarantine", "next"),
        waiting="in the freezer in its bag, then thawing in it",
        cautions=("mould-thrift",),
        tools=("bag that closes tight", "freezer", "soft brush", "gloves", "mask"),
        batch=True,
        rescue="take other stuff for what is not cut yet, and keep the book apart and dry",
    )
