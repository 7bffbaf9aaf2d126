"""What the end-papers share: their paper, the pieces cut of it, their weight."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    LENGTH,
    EndPaperJob,
    Figures,
    Inside,
    Origin,
    Piece,
    Quantity,
    leaf,
    number,
    paper_figures,
    stuff_of,
)

PAPER = "text_block.end_paper"
MAKE = "text-block.make-end-papers"
PUNCH = "text-block.punch"
CHOICE = "the maker's choice"


@dataclass(frozen=True, slots=True)
class EndPaper:
    """The paper of both end-papers: ``thickness`` of all their leaves, ``mass`` of them."""

    figures: Figures
    thickness: Quantity
    mass: Quantity

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """What the sheet shows of them."""
        return (self.thickness, self.mass)


def nothing(what: str) -> Quantity:
    """A length of none, for what this kind does not bring."""
    return leaf(0.0, LENGTH, what, Origin("constant"))


def end_paper(job: EndPaperJob, leaves: Quantity) -> EndPaper:
    """Thickness and weight of ``leaves`` leaves of end-paper (both ends together)."""
    options: Any = job.part.options
    figures = paper_figures(job.book, options.paper, options.material)
    thickness = (leaves * figures.thickness).named(
        "text_block.end_papers.thickness",
        label="end-papers, both ends",
        rule=f"their leaves, paste-downs included, by one leaf ({figures.how})",
        source=figures.source or "the maker's measurement",
    )
    mass = (leaves * job.leaf_width * job.leaf_height * figures.grammage).named(
        "text_block.end_papers.mass",
        label="end-papers, weight",
        rule="their leaves by the grammage",
        source="geometry",
    )
    return EndPaper(figures, thickness, mass)


def title(job: EndPaperJob) -> str:
    """What the paper is called."""
    options: Any = job.part.options
    row = paper_figures(job.book, options.paper, options.material).row
    return job.book.words("paper", row, "title")


def folio(
    job: EndPaperJob, count: Quantity, width: Quantity | None = None, shape: str = ""
) -> Piece:
    """The folios cut for the end-papers: two leaves wide, trimmed with the block."""
    options: Any = job.part.options
    return Piece(
        name=PAPER,
        title="End-paper",
        count=count,
        width=2 * job.fold_width if width is None else width,
        height=job.fold_height,
        grain="height",
        stock=options.paper,
        material=title(job),
        shape=shape,
    )


def seen(job: EndPaperJob) -> Inside:
    """Its paper, as one opens the cover."""
    options: Any = job.part.options
    return Inside("end-paper", stuff_of(job.book, options.paper, options.material, "paper"))


def cuts(job: EndPaperJob, pieces: Quantity) -> Quantity:
    """Hands-on time of cutting and folding so many pieces."""
    book = job.book
    return book.practice("hand-cut") * pieces * number(2) + book.practice("hand-fold") * pieces
