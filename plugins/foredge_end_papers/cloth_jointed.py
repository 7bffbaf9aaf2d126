"""Cloth-jointed end-papers: a strip of cloth is the fold, and it is sewn."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    EndPaperJob,
    EndPaperResult,
    Figures,
    Inside,
    Length,
    Operation,
    PartOptions,
    Piece,
    Problem,
    Quantity,
    StageResult,
    cited,
    cloth_figures,
    dry_in_room,
    error,
    glue,
    number,
    say,
    stock_name,
    stuff_of,
    table_row,
)
from foredge_end_papers.bench import CHOICE, MAKE, PAPER, PUNCH, cuts, end_paper, seen, title

STRIP = "text_block.joint_strip"


class ClothJointedOptions(PartOptions, frozen=True, kw_only=True, tag="cloth-jointed"):
    """Options of ``use: cloth-jointed``."""

    paper: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper on the shelf.")] | None
    ) = None
    material: Annotated[str, table_row("paper"), Meta(description="Row of the paper table.")] = (
        "end-paper"
    )
    cloth: (
        Annotated[str, stock_name("cloth", "tape"), Meta(description="The cloth on the shelf.")]
        | None
    ) = None
    cloth_material: Annotated[
        str, table_row("cloth"), Meta(description="Row of the cloth table.")
    ] = "cotton"
    strip: Annotated[Length, Meta(description="Width of the whole strip, flat.")] | None = None
    overlap: (
        Annotated[Length, Meta(description="How far the paper lies over the strip.")] | None
    ) = None
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What paper and cloth are joined with.")
    ] = "pva"


class ClothJointed:
    """The strongest of these: for heavy boards and covers with a relief."""

    kind = "end-papers"
    name = "cloth-jointed"
    title = "Cloth-jointed end-papers"
    options = ClothJointedOptions

    def make(self, job: EndPaperJob) -> EndPaperResult:
        """Two strips, four leaves; sewn through the cloth as end gatherings."""
        cloth = cloth_figures(job.book, job.part.options.cloth, job.part.options.cloth_material)
        paper = end_paper(job, number(4))
        strip, overlap, width = _widths(job)
        strips = 2 * strip * job.leaf_height * cloth.grammage
        mass = (paper.mass + strips).named(
            "text_block.end_papers.mass_with_cloth",
            label="end-papers with their cloth, weight",
            rule="leaves and strips by their grammages",
            source="geometry",
        )
        at_spine = (4 * cloth.thickness).named(
            "text_block.end_papers.at_spine",
            label="cloth joints, both ends",
            rule="folded, a strip lies double beside the spine, at both ends of the block",
            source=cloth.source or "the maker's measurement",
        )
        work = StageResult(
            quantities=(strip, overlap, width, *paper.quantities, at_spine, mass),
            pieces=_pieces(job, strip, width),
            operations=(_make(job, strip, overlap),),
            looks=(
                seen(job),
                Inside("joint", stuff_of(job.book, job.part.options.cloth, cloth.row, "cloth")),
            ),
            problems=tuple(_problems(job, strip, overlap)),
        )
        return EndPaperResult(
            work=work,
            thickness=paper.thickness,
            at_spine=at_spine,
            lies_in_joint=_in_joint(cloth),
            attached=job.sew,
            hinge="cloth",
            leaves=number(1),
            sewn_gatherings=number(2),
            mass=mass,
        )


def _in_joint(cloth: Figures) -> Quantity:
    """One wing of the strip crosses the joint to the board."""
    return cloth.thickness


def _widths(job: EndPaperJob) -> tuple[Quantity, Quantity, Quantity]:
    """Strip, overlap of the paper on it, and the leaf that is left to cut of paper."""
    options, book = job.part.options, job.book
    lap = book.default("cloth-joint-lap")
    strip = book.size(2 * lap if options.strip is None else options.strip).named(
        "text_block.joint_strip.width",
        label="cloth joint, width of the strip",
        rule="over the joint and on to the board with one wing, on to the fly-leaf with the other",
        source=cited(lap) if options.strip is None else CHOICE,
    )
    tip = book.default("tip-line")
    overlap = book.size(tip if options.overlap is None else options.overlap).named(
        "text_block.joint_strip.overlap",
        label="paper over the cloth joint",
        rule="a glue line's width holds paper and cloth together",
        source=cited(tip if options.overlap is None else options.overlap, CHOICE),
    )
    beside = job.fold_width - strip / 2 + overlap
    # A strip wider than the leaves is an error; the sizes still have to be sizes.
    width = book.size_up(beside if beside.value > 0 else overlap).named(
        "text_block.end_paper.leaf_width",
        label="end-paper leaf beside the cloth",
        rule="the folded leaf less half the strip, and the overlap",
        source="geometry",
    )
    return strip, overlap, width


def _pieces(job: EndPaperJob, strip: Quantity, width: Quantity) -> tuple[Piece, ...]:
    options, book = job.part.options, job.book
    leaves = Piece(
        name=PAPER,
        title="End-paper leaf",
        count=number(4),
        width=width,
        height=job.fold_height,
        grain="height",
        stock=options.paper,
        material=title(job),
    )
    strips = Piece(
        name=STRIP,
        title="Cloth joint",
        count=number(2),
        width=strip,
        height=job.fold_height,
        grain="height",
        stock=options.cloth,
        material=book.words(
            "cloth", cloth_figures(book, options.cloth, options.cloth_material).row, "title"
        ),
    )
    return leaves, strips


def _problems(job: EndPaperJob, strip: Quantity, overlap: Quantity) -> list[Problem]:
    bare = overlap.value < strip.value / 2
    if bare and strip.value < 2 * job.leaf_width.value:
        return []
    leaf = job.leaf_width.value
    text = f"half of a strip {strip.value:g} mm wide is no less than the leaf of {leaf:g} mm"
    if not bare:
        text = (
            f"a strip {strip.value:g} mm wide has no cloth bare where {overlap.value:g} mm of "
            "paper lie over it from each side"
        )
    return [
        error(
            (*job.part.path, "strip"),
            text,
            "cloth-joint-width",
            consequence="No paper is left beside it" if bare else "The joint is stiff paper",
            remedy="Make the strip wider than twice the overlap and narrower than the leaf",
        )
    ]


def _make(job: EndPaperJob, strip: Quantity, overlap: Quantity) -> Operation:
    book, options = job.book, job.part.options
    area = overlap * job.fold_height * number(4)
    return Operation(
        id=MAKE,
        title="Make the cloth-jointed end-papers",
        steps=(
            say("Cut 2 strips of cloth, {strip} wide, the warp along the fold.", strip=strip),
            say("Fold each strip along its middle and crease it."),
            say("Glue {overlap} along one side of a leaf and lay it on a wing of the strip.",
                overlap=overlap),
            say("Do the other wing alike; the two leaves then lie one on the other."),
            say("Put waste paper between, weight it, and let it dry."),
            say("Lay one end-paper before the first gathering and one after the last."),
            say("They are punched through the fold of the cloth and sewn as gatherings."),
        ),
        hands_on=book.practice("hand-end-papers") + cuts(job, number(6)),
        after=(job.pressed,),
        before_any=(PUNCH,),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "next"), shut=True),
        waiting="the laps dry under a weight",
        cautions=("blade", "pva"),
        pieces=(PAPER, STRIP),
        uses=(glue(book, options.adhesive, area, "cloth joints of the end-papers"),),
        tools=("knife", "steel rule", "brush", "bone folder"),
        resources=("hands", "weights"),
    )  # fmt: skip


PLUGIN = ClothJointed()
