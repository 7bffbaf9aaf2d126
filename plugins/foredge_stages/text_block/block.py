"""The sewn block: thickness of its leaves, swell, height and width, and gate G2."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Book,
    EndPaperResult,
    Figures,
    Gate,
    Problem,
    Quantity,
    Reading,
    ThreadFigures,
    ceil,
    cited,
    given,
    maximum,
    note,
    say,
    total,
    warning,
)
from foredge_stages.text_block.counts import Counts
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.sizes import Sizes
from foredge_stages.text_block.terms import GEOMETRY, SECTION, mm, name, zero

GATE = "G2"


@dataclass(frozen=True, slots=True)
class Block:
    """The four readings of G2 as gate nodes, and what they are estimated from."""

    height: Quantity
    width: Quantity
    spine: Quantity
    fore_edge: Quantity
    quantities: tuple[Quantity, ...]


def leaf_thickness(paper: Figures) -> Quantity:
    """One leaf."""
    return paper.thickness.named(
        name("leaf.thickness"),
        label="one leaf",
        rule=paper.how,
        source=paper.source or "the maker's measurement",
    )


def pages_thickness(
    book: Book, options: TextBlockOptions, counts: Counts, one: Quantity
) -> Quantity:
    """All leaves, pressed."""
    press = book.practice("block-compression") if options.pressed is None else options.pressed
    return (counts.leaves * one * press).named(
        name("leaves.thickness"),
        label="all leaves, pressed",
        rule="leaves (half the pages) by one leaf, by what pressing makes of the stack",
        source=f"{GEOMETRY}; pressing: {cited(press, 'the maker measured it')}",
    )


def thread_diameter(thread: ThreadFigures) -> Quantity:
    """The thread before it is pulled tight."""
    return thread.diameter.named(
        name("thread.diameter"),
        label="thread diameter",
        rule=thread.how,
        source=thread.source or "the maker's measurement",
    )


def pitch(one: Quantity, folios: Quantity, diameter: Quantity, bedding: Quantity) -> Quantity:
    """One pressed gathering with the thread in its fold."""
    return (2 * folios * one + diameter * bedding).named(
        name("gathering.pitch"),
        label="one gathering with its thread",
        rule="two leaves a folio, and the thread as it beds in the fold",
        source=GEOMETRY,
    )


def swell(
    counts: Counts, diameter: Quantity, bedding: Quantity, threads: Quantity, extra: Quantity
) -> Quantity:
    """What the thread adds to the spine; ``extra`` gatherings are end-papers sewn along."""
    return ((counts.gatherings + extra) * threads * diameter * bedding).named(
        name("swell"),
        label="swell",
        rule="one thread a gathering (as the sewing lays it), less what beds into the paper",
        source="Douglas Cockerell, Bookbinding, and the Care of Books, 1901, p. 119; bedding: "
        + cited(bedding),
    )


def estimate(
    book: Book,
    options: TextBlockOptions,
    size: Sizes,
    leaves: Quantity,
    swollen: Quantity,
    ends: EndPaperResult,
) -> Block:
    """The block as it should come out of the press, every reading behind its gate."""
    error = book.practice("trim-error")
    height, width = planned(options, size)
    paper = leaves + ends.thickness
    thick = [paper, swollen]
    if ends.at_spine.value > 0:
        thick.append(ends.at_spine)
    if options.inserts is not None and options.inserts.stubs is not None:
        # A stub is as thick as one insert, to hold its room open.
        thick.append(options.inserts.stubs * options.inserts.each)
    readings = (
        ("block.height", "block height", height + error, "the finished leaf"),
        ("block.width", "block width", width + error, "finished leaf, creep where untrimmed"),
        ("block.spine", "block thickness at the spine", total(thick),
         "leaves and end-papers, swell, cloth joints, stubs"),
        ("block.fore_edge", "block thickness at the fore-edge", paper, "leaves and end-papers"),
    )  # fmt: skip
    nodes = [
        book.measured(value, GATE, key, label).named(
            name(key), label=label, rule=f"{rule}; measure the pressed block", source=GEOMETRY
        )
        for key, label, value, rule in readings
    ]
    height, wide, spine, edge = nodes
    return Block(height, wide, spine, edge, (height, wide, spine, edge))


def planned(options: TextBlockOptions, size: Sizes) -> tuple[Quantity, Quantity]:
    """Height and width the block is meant to have, from the leaf as trimmed or as cut."""
    cut = size.trims
    ends = cut.head.value + cut.tail.value
    height = options.leaf.height if ends > 0 else size.fold_height
    # An untrimmed fore-edge is as wide as the leaf that stands out most.
    width = options.leaf.width if cut.fore_edge.value > 0 else size.fold_width + size.creep
    return given(height, cut.head, cut.tail), given(width, cut.fore_edge)


def filled(options: TextBlockOptions, block: Block) -> tuple[tuple[Quantity, ...], list[Problem]]:
    """The fore-edge once matter is pasted in, and the stubs that keep the block square."""
    inserts = options.inserts
    if inserts is None:
        return (), []
    fill = inserts.each * inserts.pages
    edge = (block.fore_edge + fill).named(
        name("fore_edge_filled"),
        label="fore-edge with everything pasted in",
        rule="the measured fore-edge, and every insert",
        source=GEOMETRY,
    )
    gap = maximum(edge - block.spine, zero())
    stubs = ceil(gap / inserts.each).named(
        name("stubs_more"),
        label="further stubs that keep the block square",
        rule="what the filled fore-edge has more than the spine, over one stub",
        source="common practice",
    )
    if stubs.value < 1:
        return (edge, stubs), []
    problem = note(
        (SECTION, "inserts"),
        f"filled, the fore-edge is {mm(edge)} and the spine {mm(block.spine)} thick",
        "fore-edge-gapes",
        consequence="The book gapes, and the sewing takes the strain",
        remedy=f"Sew in {stubs.value:g} more stubs as thick as one insert, take fewer folios to a "
        "gathering, or a thicker thread",
        source="common practice",
    )
    return (edge, stubs), [problem]


def swell_problems(book: Book, edge: Quantity, swollen: Quantity) -> list[Problem]:
    """How much thicker the spine comes out than the fore-edge, ``edge``, end-papers and all."""
    share = swollen.value / edge.value
    most, round_at = book.default("swell-flat"), book.default("swell-rounded")
    if share <= most.value:
        return []
    tell = warning if share > round_at.value else note
    return [
        tell(
            (SECTION, "sewing"),
            f"the thread swells the spine by {mm(swollen)}, {share:.0%} of the "
            f"{mm(edge)} at the fore-edge; a flat back takes about {most.value:.0%}",
            "swell-large",
            consequence="The block becomes a wedge, thick at the spine",
            remedy="Take a thinner thread or more folios to a gathering, press longer, or "
            "use the room for pasted-in matter",
            source=cited(round_at),
        )
    ]


def mass(
    counts: Counts, options: TextBlockOptions, paper: Figures, ends: EndPaperResult
) -> Quantity:
    """The finished block, glue and thread left out."""
    area = options.leaf.width * options.leaf.height
    return (counts.leaves * area * paper.grammage + ends.mass).named(
        name("mass"),
        label="block, weight",
        rule="finished leaves by their grammage, and the end-papers; glue and thread left out",
        source=GEOMETRY,
    )


def gate(block: Block, after: str) -> Gate:
    """G2, taken when nothing that changes the block is left to do."""
    readings = tuple(
        Reading((node.name or "").removeprefix(f"{SECTION}."), node.label, node)
        for node in block.quantities
    )
    how = (
        say("Close the block under a board, without squeezing it."),
        say("Measure height and width at three places; write the largest."),
        say("Keep all flanges out of the way; measure the thickness at the spine."),
        say("Measure the thickness at the fore-edge."),
    )
    return Gate(GATE, "Measure the pressed block", after, readings, how)


def threads_in_fold(threads: Quantity) -> Quantity:
    """How many threads lie side by side in one fold."""
    return threads.named(
        name("thread.in_fold"),
        label="threads in one fold",
        rule="as the sewing structure lays them",
        source="Douglas Cockerell, Bookbinding, and the Care of Books, 1901, p. 107",
    )
