"""A spine piece of flexible card: the usual one for a flat-back case."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    Length,
    PartOptions,
    Piece,
    Quantity,
    SpineJob,
    SpineResult,
    StageResult,
    board_figures,
    number,
    stock_name,
    table_row,
)


class CardOptions(PartOptions, frozen=True, kw_only=True, tag="card"):
    """A spine piece of flexible card."""

    stock: (
        Annotated[str, stock_name("sheet", "board"), Meta(description="The card on the shelf.")]
        | None
    ) = None
    material: Annotated[
        str, table_row("paper"), Meta(description="Row of the paper table, without a stock.")
    ] = "card"
    width: (
        Annotated[Length, Meta(description="Of the spine piece; block and one board if left out.")]
        | None
    ) = None
    thickness: Annotated[Length, Meta(description="Where you measured it.")] | None = None


@dataclass(frozen=True, slots=True)
class CardSpine:
    """As wide as the block is thick, and one board more."""

    kind: str = "spine"
    name: str = "card"
    title: str = "Card spine"
    options: type[CardOptions] = CardOptions

    def plan(self, job: SpineJob) -> SpineResult:
        """Width block + one board; the joint stays as board and cloth ask."""
        options: CardOptions = job.part.options
        book = job.book
        asked = options.width if options.width is not None else job.block_spine + job.board
        width = book.size(asked).named(
            "case.spine.width",
            label="spine piece",
            rule="as the spec says" if options.width is not None else "the block and one board",
            source="common practice",
        )
        thickness, grammage = self._figures(job)
        mass = (width * job.board_height * grammage).named(
            "case.spine.mass",
            label="mass of the spine piece",
            rule="area by grammage",
            source="geometry",
        )
        piece = Piece(
            "case.spine",
            "Spine piece",
            number(1),
            width,
            job.board_height,
            "height",
            stock=options.stock,
            material=""
            if options.stock
            else book.words("paper", options.material, "title").lower(),
        )
        work = StageResult(quantities=(mass,), pieces=(piece,))
        return SpineResult(work, width, job.joint, thickness, has_piece=True)

    def _figures(self, job: SpineJob) -> tuple[Quantity, Quantity]:
        """Thickness and grammage of the card."""
        options: CardOptions = job.part.options
        book = job.book
        if options.stock:
            known = board_figures(book, options.stock, "carton")
            thickness, grammage = known.thickness, known.grammage
        else:
            grammage = book.default("spine-card")
            thickness = grammage * book.table("paper", options.material, "bulk")
        return options.thickness if options.thickness is not None else thickness, grammage


PLUGIN = CardSpine()
