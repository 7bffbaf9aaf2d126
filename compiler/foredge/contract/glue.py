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
    book: Book, adhesive: str, area: Quantity, what: str, side: Side, dry_after: Quantity
) -> Wetting:
    """The water that ``adhesive`` on ``area`` brings to one side of a part of the book."""
    mass = area * book.table("adhesives", adhesive, "spread")
    return Wetting(what, side, mass * book.table("adhesives", adhesive, "water"), dry_after)


def cautions(book: Book, table: str, row: str) -> tuple[str, ...]:
    """The ids of the cautions a row of a table asks for."""
    return tuple(re.findall(r"[a-z][a-z0-9-]*", book.words(table, row, "cautions")))
