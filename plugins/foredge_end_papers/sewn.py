"""Sewn end-papers: an end gathering of their own, or hooked round the outer gathering."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    Count,
    EndPaperJob,
    EndPaperResult,
    Length,
    Operation,
    PartOptions,
    Quantity,
    StageResult,
    Text,
    cited,
    number,
    say,
    stock_name,
    table_row,
)
from foredge_end_papers.bench import (
    CHOICE,
    MAKE,
    PAPER,
    PUNCH,
    EndPaper,
    cuts,
    end_paper,
    folio,
    nothing,
    seen,
)


class SewnOptions(PartOptions, frozen=True, kw_only=True, tag="sewn"):
    """Options of ``use: sewn``."""

    paper: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper on the shelf.")] | None
    ) = None
    material: Annotated[str, table_row("paper"), Meta(description="Row of the paper table.")] = (
        "end-paper"
    )
    way: Annotated[
        Literal["gathering", "hooked"],
        Meta(
            description="gathering: sewn as the first and the last gathering. hooked: a narrow "
            "guard is folded round the outer gathering and sewn with it."
        ),
    ] = "gathering"
    folios: (
        Annotated[Count, Meta(description="Folios in an end gathering; one if left out.")] | None
    ) = None
    hook: Annotated[Length, Meta(description="Width of the guard that is folded round.")] | None = (
        None
    )


class Sewn:
    """End-papers sewn through the fold: they hold as well as the leaves do."""

    kind = "end-papers"
    name = "sewn"
    title = "Sewn end-papers"
    options = SewnOptions

    def make(self, job: EndPaperJob) -> EndPaperResult:
        """Folios for both ends, made before the gatherings are punched."""
        return _hooked(job) if job.part.options.way == "hooked" else _gathering(job)


def _gathering(job: EndPaperJob) -> EndPaperResult:
    chosen = job.part.options.folios
    folios = number(1) if chosen is None else chosen
    paper = end_paper(job, 4 * folios)
    steps = (
        say("Cut and fold {count} end-papers; the grain runs along the fold.", count=2 * folios),
        say("Lay one set before the first gathering and one after the last."),
        say("They are punched and sewn as gatherings of their own."),
    )
    work = StageResult(
        quantities=paper.quantities,
        looks=(seen(job),),
        pieces=(folio(job, 2 * folios),),
        operations=(_make(job, 2 * folios, steps),),
    )
    return _result(job, work, paper, 2 * folios - 1, number(2))


def _hooked(job: EndPaperJob) -> EndPaperResult:
    options = job.part.options
    usual = job.book.default("guard-fold")
    hook = (usual if options.hook is None else options.hook).named(
        "text_block.end_papers.hook",
        label="guard of the hooked end-paper",
        rule="wide enough to stay folded round the gathering, too narrow to show",
        source=cited(usual if options.hook is None else options.hook, CHOICE),
    )
    paper = end_paper(job, number(4))
    width = job.book.size_up(2 * job.fold_width + hook)
    steps = (
        say("Cut 2 end-papers; the grain runs along the fold."),
        say("Fold {hook} over along one side for the guard, then fold the rest in the middle.",
            hook=hook),
        say("Hook one guard round the first gathering and one round the last."),
        say("They are punched and sewn with these gatherings."),
    )  # fmt: skip
    work = StageResult(
        quantities=(hook, *paper.quantities),
        looks=(seen(job),),
        pieces=(folio(job, number(2), width, "a guard is folded over along one side"),),
        operations=(_make(job, number(2), steps),),
    )
    return _result(job, work, paper, number(1), number(0))


def _result(
    job: EndPaperJob, work: StageResult, paper: EndPaper, leaves: Quantity, sewn: Quantity
) -> EndPaperResult:
    return EndPaperResult(
        work=work,
        thickness=paper.thickness,
        at_spine=nothing("nothing at the spine alone"),
        lies_in_joint=nothing("no cloth in sewn end-papers"),
        attached=job.sew,
        hinge="sewn",
        leaves=leaves,
        sewn_gatherings=sewn,
        mass=paper.mass,
    )


def _make(job: EndPaperJob, pieces: Quantity, steps: tuple[Text, ...]) -> Operation:
    return Operation(
        id=MAKE,
        title="Make the end-papers",
        steps=steps,
        hands_on=cuts(job, pieces),
        after=(job.pressed,),
        before_any=(PUNCH,),
        cautions=("blade",),
        pieces=(PAPER,),
        tools=("knife", "steel rule", "bone folder"),
    )


PLUGIN = Sewn()
