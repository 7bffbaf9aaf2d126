"""Adhesive for an area: how much to use, how much water it brings, what to beware of."""

from __future__ import annotations

import re
from typing import Literal

from foredge.contract.book import Book
from foredge.contract.work import Use, Wetting
from foredge.quantity import Quantity

Side = Literal["inside", "outside", "both", "edge"]


def glue(book: Book, adhesive: str, area: Quantity, what: str) -> Use:
    """The mass of ``adhesive`` (a row of its table) on ``area``, with its spare."""
    amount = area * book.table("adhesives", adhesive, "spread") * (1 + book.practice("waste-glue"))
    return Use(book.words("adhesives", adhesive, "title") or adhesive, amount, note=what)


def adhesive_words(book: Book, adhesive: str) -> str:
    """What a sentence calls it: the row's title, small where no abbreviation begins it."""
    title = book.words("adhesives", adhesive, "title") or adhesive
    return title if title[1:2].isupper() else title[:1].lower() + title[1:]


def wet(
    book: Book,
    adhesive: str,
    area: Quantity,
    what: str,
    side: Side,
    dry_after: Quantity,
    *,
    layer: str = "",
    pull: Quantity | None = None,
) -> Wetting:
    """The water that ``adhesive`` on ``area`` brings to one side of a part of the book.

    ``layer`` is what it glues on there; its ``pull`` is that of one sheet of paper if left out.
    """
    mass = area * book.table("adhesives", adhesive, "spread")
    water = mass * book.table("adhesives", adhesive, "water")
    if not layer:
        return Wetting(what, side, water, dry_after)
    weight = pull if pull is not None else book.practice("pull-paper")
    return Wetting(what, side, water, dry_after, layer, area, weight)


def cautions(book: Book, table: str, row: str) -> tuple[str, ...]:
    """The ids of the cautions a row of a table asks for."""
    return tuple(re.findall(r"[a-z][a-z0-9-]*", book.words(table, row, "cautions")))
