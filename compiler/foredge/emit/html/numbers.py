"""Numbers of the page: shown in the units wanted, and each able to say how it was made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from markupsafe import Markup

from foredge.contract import Band, Build, Piece, Quantity, Text
from foredge.display import in_inches, in_mm, show
from foredge.emit.html.told import SYSTEMS, as_text, harmless, switched
from foredge.emit.words import PROVISIONAL, range_of
from foredge.formula import is_constant, label_of


class Numbers:
    """Renders the quantities of one build and remembers which were shown.

    A number that can be explained becomes a button that carries its place in the list of
    derivations (:mod:`foredge.emit.html.derivations`).
    """

    def __init__(self, build: Build) -> None:
        self._shown = build.book.display
        self._build = build
        self._places: dict[int, int] = {}
        self._known: list[Quantity] = []
        self._labels: dict[int, str] = {}

    def __iter__(self) -> Iterator[Quantity]:
        """Every quantity that has a place, in the order of the places."""
        return iter(self._known)

    def place(self, quantity: Quantity) -> int:
        """Where the derivation of ``quantity`` stands in the list."""
        at = self._places.get(id(quantity))
        if at is None:
            at = self._places[id(quantity)] = len(self._known)
            self._known.append(quantity)
        return at

    def number(self, quantity: Quantity, label: str = "") -> Markup:
        """A number in a sentence, marked while it is provisional."""
        mark = "" if quantity.firm else f"{PROVISIONAL} "
        within = range_of(self._build, quantity)
        return self.told(quantity, _texts(quantity, None, mark, within), label)

    def ranged(self, quantity: Quantity, band: Band | None = None) -> Markup:
        """A number with its 95 % range."""
        band = self._build.band(quantity) if band is None else band
        return self._told(quantity, _texts(quantity, band))

    def told(self, quantity: Quantity, texts: tuple[str, str, str], label: str = "") -> Markup:
        """``texts`` (metric, imperial, both) that were written from ``quantity``.

        ``label`` is what it is called where it has no name of its own.
        """
        markup = self._told(quantity, texts)
        if label and quantity.name is None and id(quantity) in self._places:
            self._labels.setdefault(id(quantity), label)
        return markup

    def written(self, quantity: Quantity, words: Sequence[str], label: str = "") -> Markup:
        """The same from words of a Markdown view, one a system of units."""
        metric, imperial, both = map(as_text, words)
        return self.told(quantity, (metric, imperial, both), label)

    def label(self, quantity: Quantity) -> str:
        """What ``quantity`` is called in words; what nobody named is "this number"."""
        label = self._labels.get(id(quantity)) or label_of(quantity)
        return "this number" if label == quantity.op else label

    def text(self, text: Text) -> Markup:
        """A sentence with its numbers in it."""
        return Markup("").join(
            self.number(part) if isinstance(part, Quantity) else Markup.escape(harmless(part))
            for part in text.segments()
        )

    def size(self, piece: Piece) -> Markup:
        """Width × height of a piece, each explained by itself."""
        width, height = piece.width, piece.height
        inches = f"{in_inches(width)} × {in_inches(height)} in"
        unit = switched(("mm", "in", f"mm ({inches})"), self._shown)
        sides = [self._side(width), self._side(height)]
        return Markup('<span class="size">{} × {} {}</span>').format(*sides, unit)

    def _side(self, length: Quantity) -> Markup:
        return self._told(length, (in_mm(length), in_inches(length), in_mm(length)))

    def _told(self, quantity: Quantity, texts: tuple[str, str, str]) -> Markup:
        unnamed = quantity.name is None and is_constant(quantity)
        if unnamed or (quantity.op == "leaf" and quantity.origin is None):
            return switched(texts, self._shown)
        return switched(texts, self._shown, data_q=str(self.place(quantity)))


def _texts(
    quantity: Quantity, band: Band | None, mark: str = "", within: Band | None = None
) -> tuple[str, str, str]:
    told = (mark + show(quantity, system, band, within=within) for system in SYSTEMS)
    metric, imperial, both = told
    return metric, imperial, both
