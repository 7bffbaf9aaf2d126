"""A stiff spine piece of board."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    Length,
    PartOptions,
    Piece,
    Problem,
    Quantity,
    SpineJob,
    SpineResult,
    StageResult,
    board_figures,
    cited,
    maximum,
    note,
    number,
    stock_name,
)


class BoardOptions(PartOptions, frozen=True, kw_only=True, tag="board"):
    """A stiff spine piece of board."""

    stock: (
        Annotated[
            str,
            stock_name("board"),
            Meta(description="Its own board; that of the sides if left out."),
        ]
        | None
    ) = None
    width: (
        Annotated[Length, Meta(description="Of the spine piece; block and two boards if left out.")]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class BoardSpine:
    """As wide as the closed book is thick; its joint is never less than a quarter of the block."""

    kind: str = "spine"
    name: str = "board"
    title: str = "Board spine"
    options: type[BoardOptions] = BoardOptions

    def plan(self, job: SpineJob) -> SpineResult:
        """Width block + two boards; joint at least a quarter of the block's thickness."""
        options: BoardOptions = job.part.options
        book = job.book
        asked = options.width if options.width is not None else job.block_spine + 2 * job.board
        width = book.size(asked).named(
            "case.spine.width",
            label="spine piece",
            rule="as the spec says" if options.width is not None else "the block and both boards",
            source="A. W. Johnson, on joints, Skin Deep vol. 15 (J. Hewit & Sons)",
        )
        share = book.default("rigid-spine-joint")
        joint = maximum(job.joint, job.block_spine * share)
        same = options.stock is None
        thickness = job.board if same else board_figures(book, options.stock, "greyboard").thickness
        work = StageResult(problems=(self._note(job, share),))
        if not same:
            work = work + self._piece(job, width)
        return SpineResult(work, width, joint, thickness, has_piece=True, same_board=same)

    def _piece(self, job: SpineJob, width: Quantity) -> StageResult:
        stock = job.part.options.stock
        grammage = board_figures(job.book, stock, "greyboard").grammage
        mass = (width * job.board_height * grammage).named(
            "case.spine.mass",
            label="mass of the spine piece",
            rule="area by grammage",
            source="geometry",
        )
        piece = Piece(
            "case.spine", "Spine piece", number(1), width, job.board_height, "height", stock=stock
        )
        return StageResult(quantities=(mass,), pieces=(piece,))

    def _note(self, job: SpineJob, share: Quantity) -> Problem:
        return note(
            job.part.path,
            f"the spine is stiff board behind a block {job.block_spine.value:.1f} mm thick; its "
            f"joint is kept at {share.value:g} of that or more",
            "spine-rigid",
            consequence="A stiff flat back pulls at the paste-downs and tears the joints in a few "
            "years; binders do not agree on this",
            remedy="Use card, or cloth-jointed end-papers",
            source=cited(share),
        )


PLUGIN = BoardSpine()
