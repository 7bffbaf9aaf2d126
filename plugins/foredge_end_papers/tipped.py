"""Tipped end-papers: a folio glued to the first and last leaf along a narrow line."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    EndPaperJob,
    EndPaperResult,
    Length,
    Operation,
    PartOptions,
    Quantity,
    StageResult,
    cited,
    dry_in_room,
    glue,
    number,
    say,
    stock_name,
    table_row,
)
from foredge_end_papers.bench import CHOICE, PAPER, cuts, end_paper, folio, nothing, seen

TIP = "text-block.tip-end-papers"


class TippedOptions(PartOptions, frozen=True, kw_only=True, tag="tipped"):
    """Options of ``use: tipped``."""

    paper: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper on the shelf.")] | None
    ) = None
    material: Annotated[str, table_row("paper"), Meta(description="Row of the paper table.")] = (
        "end-paper"
    )
    line: Annotated[Length, Meta(description="Width of the glue line along the fold.")] | None = (
        None
    )
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What it is tipped with.")
    ] = "pva"


class Tipped:
    """End-papers tipped on after sewing: quick, and the weakest hinge."""

    kind = "end-papers"
    name = "tipped"
    title = "Tipped end-papers"
    options = TippedOptions

    def make(self, job: EndPaperJob) -> EndPaperResult:
        """Two folios, glued along their folds."""
        options, book = job.part.options, job.book
        usual = book.default("tip-line")
        line = (usual if options.line is None else options.line).named(
            "text_block.end_papers.tip_line",
            label="glue line of the end-paper",
            rule="wide enough to hold, narrow enough for the first leaf to open",
            source=cited(usual if options.line is None else options.line, CHOICE),
        )
        paper = end_paper(job, number(4))
        work = StageResult(
            quantities=(line, *paper.quantities),
            pieces=(folio(job, number(2)),),
            operations=(_tip(job, line),),
            looks=(seen(job),),
        )
        return EndPaperResult(
            work=work,
            thickness=paper.thickness,
            at_spine=nothing("nothing at the spine alone"),
            lies_in_joint=nothing("no cloth in tipped end-papers"),
            attached=TIP,
            hinge="tipped",
            leaves=number(1),
            sewn_gatherings=number(0),
            mass=paper.mass,
        )


def _tip(job: EndPaperJob, line: Quantity) -> Operation:
    book, options = job.book, job.part.options
    area = line * job.fold_height * number(2)
    return Operation(
        id=TIP,
        title="Tip on the end-papers",
        steps=(
            say("Cut and fold 2 end-papers; the grain runs along the fold."),
            say("Mask all but {line} along the fold with waste paper; brush that line thinly.",
                line=line),
            say("Lay one on the first leaf and one on the last, folds exactly at the spine."),
            say("Rub down through clean paper; lay waste paper under the glued leaf."),
        ),
        hands_on=book.practice("hand-end-papers") + cuts(job, number(2)),
        after=(job.sew,),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "next"), shut=True),
        waiting="the glue line sets under a light weight",
        cautions=("blade", "pva"),
        pieces=(PAPER,),
        uses=(glue(book, options.adhesive, area, "tip lines of the end-papers"),),
        tools=("brush", "waste paper", "bone folder"),
        resources=("hands", "weights"),
    )  # fmt: skip


PLUGIN = Tipped()
