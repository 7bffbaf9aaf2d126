"""A covering material as it comes from the shelf, with its backing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from foredge.contract.book import Book
from foredge.contract.glue import adhesive_words
from foredge.contract.look import Stuff, Texture, stuff_of
from foredge.contract.shelf import Figures, cloth_figures, paper_figures
from foredge.contract.stock import Cloth, Sheet, stock_path
from foredge.contract.text import Text, say
from foredge.problem import Path, Problem, note, warning
from foredge.quantity import Quantity

Backing = Literal["tissue", "none"]
_TEXTURES: dict[str, Texture] = {"cloth": "cloth", "leather": "leather", "imitation": "leather"}
UNKNOWN = "cotton"
"""The row a cloth is taken for when the shelf does not say what it is."""


@dataclass(frozen=True, slots=True)
class CoveringStock:
    """Cloth, leather or paper that covers a case.

    ``table`` holds the row its ``figures`` come from; ``thickness`` and ``grammage`` are with
    the backing, where it is ``backed``.
    """

    stock: str
    figures: Figures
    table: str
    backed: bool
    thickness: Quantity
    grammage: Quantity
    problems: tuple[Problem, ...] = ()

    @property
    def row(self) -> str:
        """The row of the table it was taken from."""
        return self.figures.row

    def word(self, book: Book, key: str) -> str:
        """What its row of the cloth table says under ``key``; empty for a sheet of paper."""
        return book.words("cloth", self.row, key) if self.table == "cloth" else ""

    def stuff(self, book: Book) -> Stuff:
        """What is seen of it."""
        kind = self.word(book, "kind")
        texture = _TEXTURES.get(kind, "paper")
        return stuff_of(book, self.stock, self.row, texture)

    def pull(self, book: Book) -> Quantity:
        """How hard it pulls a board as it dries; a sheet of paper is 1."""
        if self.table != "cloth":
            return book.practice("pull-paper")
        return book.table("cloth", self.row, "pull")

    def adhesive(self, book: Book) -> str:
        """The adhesive its row asks for; the mix for a sheet of paper."""
        return self.word(book, "adhesive") or "pva-paste-mix"

    def glued_face(self, book: Book) -> str:
        """``board``, ``both``, or the covering itself: where the adhesive is brushed on."""
        return "board" if self.backed else self.word(book, "glue_on") or "paper"

    def laid(self, book: Book) -> str:
        """Which way it is laid, as the end of a sentence; leather has no grain to mind."""
        kind = "paper" if self.table != "cloth" else self.word(book, "kind")
        return {"leather": "", "paper": ", the grain along the spine"}.get(
            kind, ", the warp along the spine"
        )

    def advice(self, book: Book) -> tuple[Text, ...]:
        """What its row has to say to whoever works with it."""
        said = self.word(book, "note")
        steps = [Text(said)] if said and not self.backed else []
        if self.word(book, "kind") == "leather":
            steps.append(say("Pare the turn-ins and the strip over each joint thin."))
        return tuple(steps)


def covering_stock(
    book: Book, stock: str, backing: Backing | None = None, path: Path = ()
) -> CoveringStock:
    """The covering ``stock``, backed where its kind needs it or ``backing`` says so.

    A thickness given on the shelf already has the backing in it.
    """
    item = book.stock.get(stock)
    if isinstance(item, Sheet):
        figures = paper_figures(book, stock, "decorated")
        return CoveringStock(stock, figures, "paper", False, figures.thickness, figures.grammage)
    figures = cloth_figures(book, stock, UNKNOWN)
    needed = book.words("cloth", figures.row, "backing") == "needed"
    backed = backing == "tissue" or (backing is None and needed)
    thickness, grammage = figures.thickness, figures.grammage
    if backed:
        tissue = cloth_figures(book, None, "backing-tissue")
        grammage = grammage + tissue.grammage
        thickness = thickness if figures.measured else thickness + tissue.thickness
    found: list[Problem] = []
    if isinstance(item, Cloth) and item.material is None:
        found.append(_unknown(stock, figures.row))
    elif backing == "none" and needed:
        found.append(_unbacked(stock, figures.row, path))
    return CoveringStock(stock, figures, "cloth", backed, thickness, grammage, tuple(found))


def _unknown(stock: str, row: str) -> Problem:
    return note(
        stock_path(stock),
        f"the shelf does not say what '{stock}' is; it is taken for {row}",
        "cloth-unknown",
        on_key=True,
        remedy=f"Give stock.{stock} a material, and its thickness if you can measure it",
    )


def _unbacked(stock: str, row: str, path: Path) -> Problem:
    return warning(
        path,
        f"'{stock}' ({row}) is used without a backing",
        "cloth-unbacked",
        consequence="Glue comes through to the face, and the cloth stretches on the bias",
        remedy="Leave backing out, and the cloth is backed with tissue first"
        if path[-1:] == ("backing",)
        else "Take paper or book cloth there",
        source="common practice",
    )


def adhesive_problems(
    book: Book, cloth: CoveringStock, adhesive: str, path: Path
) -> tuple[Problem, ...]:
    """A warning where a wet adhesive is to hold a plastic back."""
    wet = book.table("adhesives", adhesive, "water").value > 0
    if cloth.adhesive(book) != "contact" or not wet:
        return ()
    title = adhesive_words(book, adhesive)
    return (
        warning(
            path,
            f"'{cloth.stock}' has a plastic back, and {title} does not hold on it",
            "glue-plastic-back",
            consequence="The turn-ins lift",
            remedy="Use contact adhesive, or an imitation with a paper or cloth back",
            source="from memory",
        ),
    )
