"""The stage ``text-block``: from sheets on the shelf to a block that is measured."""

from __future__ import annotations

from typing import Any

from foredge.contract import (
    Book,
    Drawing,
    EdgeJob,
    Inside,
    Part,
    Piece,
    PieceGrain,
    Problem,
    Quantity,
    StageResult,
    Upstream,
    merge,
    stuff_of,
)
from foredge_stages.text_block import (
    advice,
    block,
    counts,
    drawings,
    folding,
    forwarding,
    paper,
    preparing,
    thrift,
)
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.plan import Plan, plan
from foredge_stages.text_block.spine_drawing import linings_template
from foredge_stages.text_block.terms import SECTION, STAGE, name


class TextBlock:
    """Folios, gatherings, sewing, end-papers, spine, edges; gate G2."""

    kind = "stage"
    name = STAGE
    title = "Text block"
    options = TextBlockOptions
    section = SECTION
    prefix = SECTION
    needs: tuple[str, ...] = ()

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        """Everything about the block, to its last measurement."""
        made = plan(book, book.sections[SECTION])
        own = StageResult(
            quantities=_quantities(made),
            pieces=(_folio(made), *made.linings.pieces),
            drawings=_drawings(made),
            problems=_problems(made),
            looks=(Inside("block", stuff_of(book, made.options.paper, "book", "paper")),),
        )
        return merge((own, _work(made)))


def _folio(made: Plan) -> Piece:
    size, layout, folded = made.paper.size, made.paper.layout, made.options.folded
    grain: PieceGrain = "height" if layout.along else "width"
    return Piece(
        name=preparing.FOLIO,
        title="Folio",
        count=made.paper.pieces,
        width=size.piece_width,
        height=size.piece_height,
        grain=grain if layout.grain_known else "height",
        stock=made.options.paper,
        shape="" if folded == 1 else f"folded {folded} times",
        over_crease=True,
        offset=layout.placement.start if layout.placement.crease is not None else None,
    )


def _drawings(made: Plan) -> tuple[Drawing, ...]:
    size, display = made.paper.size, made.book.display
    return (
        drawings.template(size, made.thread.sewing.stations, display),
        *drawings.gathering(int(made.paper.folios.value)),
        *linings_template(made.block, made.linings, display),
    )


def _quantities(made: Plan) -> tuple[Quantity, ...]:
    leaves, thread = made.paper, made.thread
    strips, off_cuts = paper.off_cuts(leaves.layout, leaves.size, leaves.sheets, leaves.figures)
    filled, _ = block.filled(made.options, made.block)
    return (
        leaves.one,
        leaves.folios,
        *leaves.size.quantities,
        *leaves.layout.quantities,
        *leaves.counts.quantities,
        leaves.sheets,
        *strips,
        off_cuts,
        *folding.folded_down(leaves.layout.sheet)[0],
        thread.diameter,
        thread.pitch,
        block.threads_in_fold(thread.sewing.threads_in_fold),
        made.leaves,
        made.swell,
        *made.block.quantities,
        *filled,
        *made.linings.quantities,
        block.mass(leaves.counts, made.options, leaves.figures, thread.ends),
        *advice.for_case(made),
    )


def _work(made: Plan) -> StageResult:
    """Operations in order, the gate after the last, and what others may ask."""
    leaves, thread = made.paper, made.thread
    prepared = preparing.Prepared(
        made.book, made.options, leaves.size, leaves.layout, leaves.counts, leaves.folios,
        leaves.sheets, leaves.pieces,
    )  # fmt: skip
    first = preparing.operations(prepared, thread.sewing, thread.ends.sewn_gatherings)
    # As sewn, before pressing: rests on no gate.
    thick = (leaves.counts.gatherings + thread.ends.sewn_gatherings) * thread.pitch
    sewn = forwarding.Sewn(made.book, made.options, leaves.size, made.linings, thick)
    last = forwarding.operations(sewn, thread.ends.attached)
    done, edges = _edges(made, last[-1].id)
    facts = (
        (name("hinge"), thread.ends.hinge),
        (name("end_papers"), thread.ends_part.plugin.name),
        (name("block_ready"), done),
        *folding.folded_down(leaves.layout.sheet)[1],
    )
    return merge(
        (
            StageResult(operations=first),
            thread.ends.work,
            thread.sewing.work,
            StageResult(operations=last),
            edges,
            StageResult(gates=(block.gate(made.block, done),), facts=facts),
        )
    )


def _edges(made: Plan, trimmed: str) -> tuple[str, StageResult]:
    """Each edge treatment after the one before it; the id of the last operation."""
    work = StageResult()
    for part in made.options.edges:
        treated = _edge(made, part, trimmed)
        trimmed = treated.operations[-1].id if treated.operations else trimmed
        work = work + treated
    return trimmed, work


def _edge(made: Plan, part: Part[Any], trimmed: str) -> StageResult:
    # Edges are done before G2, so they go by the planned sizes.
    leaf, thickness = made.options.leaf, made.leaves + made.thread.ends.thickness
    trims = made.paper.size.trims
    cut = tuple(
        edge
        for edge, off in (
            ("head", trims.head),
            ("tail", trims.tail),
            ("fore-edge", trims.fore_edge),
        )
        if off.value > 0
    )
    job = EdgeJob(made.book, part, leaf.width, leaf.height, thickness, trimmed, cut)
    treated: StageResult = part.plugin.treat(job)
    return treated


def _swell_problems(made: Plan) -> list[Problem]:
    """By the readings once there are both; not where the room is wanted for what is pasted in."""
    if made.options.inserts is not None:
        return []
    ends, read = made.thread.ends, made.block
    edge, swollen = made.leaves + ends.thickness, made.swell
    if {"block.spine", "block.fore_edge"} <= set(made.book.readings):
        edge, swollen = read.fore_edge, read.spine - read.fore_edge - ends.at_spine
    return block.swell_problems(made.book, edge, swollen)


def _problems(made: Plan) -> tuple[Problem, ...]:
    leaves, chosen = made.paper, made.options.gatherings
    unfilled = counts.fill_problems(
        chosen, made.options.paper, leaves.layout, leaves.folios, made.book.copies
    )
    # A shelf that fills no gathering is told once.
    sheets = unfilled or paper.short_of_sheets(
        made.book, made.options, leaves.layout, leaves.sheets, leaves.counts.folios
    )
    return (
        *leaves.problems,
        *leaves.size.problems,
        *leaves.layout.problems,
        *leaves.counts.problems,
        *thrift.smaller_leaf(leaves.layout, leaves.size, made.options.folded),
        *sheets,
        *_swell_problems(made),
        *block.filled(made.options, made.block)[1],
        *made.linings.problems,
        *advice.problems(made),
    )
