"""How the clay of a relief dries: what it lies on, and air or oven."""

from __future__ import annotations

from typing import Any

from foredge.contract.book import Book
from foredge.contract.measures import Part
from foredge.contract.shelf import cloth_figures
from foredge.contract.stock import Cloth

_SHUT = "imitation"
"""The kind of covering whose face is a film of plastic."""


def shut_below(book: Book, relief: Part[Any]) -> str:
    """What under a relief takes no water, as a sentence calls it; empty where something does.

    A sealed bare board takes none, nor does a covering with a face of plastic. What is left is
    the air above: foil takes none either, but a core of paper or card drinks.
    """
    said = relief.options
    core = said.core
    if core.card is not None or book.words("armature", core.foil, "kind") == "paper":
        return ""
    if said.made_on == "bare-board":
        return "" if said.seal == "none" else "the sealed board"
    covering = book.sections["case"].covering
    stock = getattr(covering.options, "sides", None) if said.on != "spine" else None
    stock = stock or getattr(covering.options, "material", None)
    if not isinstance(book.stock.get(stock or ""), Cloth):
        return ""
    row = cloth_figures(book, stock, "cotton").row
    return f"the plastic of '{stock}'" if book.words("cloth", row, "kind") == _SHUT else ""
