"""The stage's numbers put together, each made once, in the order they follow from each other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Book,
    EndPaperJob,
    EndPaperResult,
    Figures,
    Part,
    Problem,
    Quantity,
    SewingJob,
    SewingResult,
    ThreadFigures,
    ceil,
    minimum,
    paper_figures,
    thread_figures,
)
from foredge_stages.text_block import block, counts, linings, paper, sizes
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.preparing import PRESS
from foredge_stages.text_block.terms import SECTION

SEW = "text-block.sew"


@dataclass(frozen=True, slots=True)
class Leaves:
    """The paper side: sizes, yield, counts. ``one`` is a leaf's thickness."""

    figures: Figures
    folios: Quantity
    one: Quantity
    size: sizes.Sizes
    layout: paper.Yield
    counts: counts.Counts
    sheets: Quantity
    pieces: Quantity
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Threaded:
    """The sewing side: thread, end-papers, sewing structure. ``name`` is a stock name."""

    name: str | None
    figures: ThreadFigures
    diameter: Quantity
    pitch: Quantity
    ends_part: Part[Any]
    ends: EndPaperResult
    sewing_part: Part[Any]
    sewing: SewingResult


@dataclass(frozen=True, slots=True)
class Plan:
    """Everything the result is told from. ``leaves`` is the thickness of all leaves."""

    book: Book
    options: TextBlockOptions
    paper: Leaves
    thread: Threaded
    leaves: Quantity
    swell: Quantity
    block: block.Block
    linings: linings.Linings


def plan(book: Book, options: TextBlockOptions) -> Plan:
    """From sheets and thread to the block and its linings."""
    made = _leaves(book, options)
    thread = _thread(book, options, made)
    all_leaves = block.pages_thickness(book, options, made.counts, made.one)
    swell = block.swell(
        made.counts,
        thread.diameter,
        thread.figures.bedding,
        thread.sewing.threads_in_fold,
        thread.ends.sewn_gatherings,
    )
    estimate = block.estimate(book, options, made.size, all_leaves, swell, thread.ends)
    lined = linings.line(
        book,
        options,
        estimate,
        _kettle(made.size, thread.sewing),
        sewn_through=thread.sewing.replaces_super,
    )
    return Plan(book, options, made, thread, all_leaves, swell, estimate, lined)


def _leaves(book: Book, options: TextBlockOptions) -> Leaves:
    figures = paper_figures(book, options.paper, "book")
    folios, problems = counts.folios_per_gathering(book, options.gatherings, figures)
    size = sizes.sizes(book, options, folios, figures)
    layout = paper.lay_out(book, options, size)
    counted = counts.counts(options.gatherings, layout, folios, book.copies)
    return Leaves(
        figures=figures,
        folios=folios,
        one=block.leaf_thickness(figures),
        size=size,
        layout=layout,
        counts=counted,
        sheets=paper.sheets_needed(layout, counted.folios),
        pieces=ceil(counted.folios / size.piece_folios),
        problems=tuple(problems),
    )


def _thread(book: Book, options: TextBlockOptions, made: Leaves) -> Threaded:
    sewing_part = book.part(options.sewing, "sewing", "tapes", (SECTION, "sewing"))
    ends_part = book.part(options.end_papers, "end-papers", "sewn", (SECTION, "end_papers"))
    # Every sewing structure of ours has the option `thread`; another one may do without.
    name: str | None = getattr(sewing_part.options, "thread", None)
    figures = thread_figures(book, name)
    diameter = block.thread_diameter(figures)
    pitch = block.pitch(made.one, made.folios, diameter, figures.bedding)
    ends = _ends(book, options, made, ends_part, diameter)
    job = SewingJob(
        book=book,
        part=sewing_part,
        fold_height=made.size.fold_height,
        trim_head=made.size.trims.head,
        trim_tail=made.size.trims.tail,
        gatherings=made.counts.gatherings + ends.sewn_gatherings,
        folios=made.folios,
        leaf_thickness=made.one,
        pitch=pitch,
        thread=name,
        thread_diameter=diameter,
    )
    sewing: SewingResult = sewing_part.plugin.sew(job)
    return Threaded(name, figures, diameter, pitch, ends_part, ends, sewing_part, sewing)


def _ends(
    book: Book, options: TextBlockOptions, made: Leaves, part: Part[Any], diameter: Quantity
) -> EndPaperResult:
    job = EndPaperJob(
        book=book,
        part=part,
        leaf_width=options.leaf.width,
        leaf_height=options.leaf.height,
        fold_width=made.size.fold_width,
        fold_height=made.size.fold_height,
        gatherings=made.counts.gatherings,
        thread_diameter=diameter,
        pressed=PRESS,
        sew=SEW,
    )
    ends: EndPaperResult = part.plugin.make(job)
    return ends


def _kettle(size: sizes.Sizes, sewing: SewingResult) -> Quantity:
    """The nearer of both end stations, from the finished edge."""
    first, last = sewing.stations[0], sewing.stations[-1]
    return minimum(first - size.trims.head, size.fold_height - size.trims.tail - last)
