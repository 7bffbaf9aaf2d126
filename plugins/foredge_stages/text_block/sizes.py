"""From the finished leaf to the folio that is cut: trim, creep and rough edges are added."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    LENGTH,
    Book,
    Figures,
    Origin,
    Problem,
    Quantity,
    cited,
    given,
    leaf,
    maximum,
    note,
    number,
    total,
)
from foredge_stages.text_block.options import TextBlockOptions, Trim
from foredge_stages.text_block.terms import CHOICE, GEOMETRY, SECTION, mm, name

TEAR = "a torn folio wanders by the difference of the usual allowances for torn and cut edges"

FOLDS: dict[int, tuple[int, int, int]] = {1: (2, 1, 1), 2: (2, 2, 2), 3: (4, 2, 4)}
"""Times folded -> leaf widths and leaf heights in the piece, folios it makes."""


@dataclass(frozen=True, slots=True)
class Trims:
    """What is cut off each edge; ``any`` says whether the block is trimmed at all."""

    head: Quantity
    tail: Quantity
    fore_edge: Quantity
    any: bool


@dataclass(frozen=True, slots=True)
class Sizes:
    """``fold_width`` and ``fold_height`` of the folded leaf before trimming; ``piece_*`` of
    what is cut from the sheet, with the folios it makes."""

    trims: Trims
    creep: Quantity
    fold_width: Quantity
    fold_height: Quantity
    piece_width: Quantity
    piece_height: Quantity
    piece_folios: Quantity
    quantities: tuple[Quantity, ...]
    problems: tuple[Problem, ...]


def trims(book: Book, options: TextBlockOptions) -> Trims:
    """The trim of each edge: as the spec says, ``none``, or the usual allowance."""
    if options.trim == "none":
        zero = _zero("text_block.trim")
        return Trims(zero, zero, zero, False)
    chosen = options.trim if isinstance(options.trim, Trim) else Trim()
    usual = book.default("trim-allowance")
    head, tail, fore = (
        usual if edge is None else edge for edge in (chosen.head, chosen.tail, chosen.fore_edge)
    )
    return Trims(head, tail, fore, any(edge.value > 0 for edge in (head, tail, fore)))


def _zero(key: str) -> Quantity:
    return leaf(0.0, LENGTH, key, Origin("spec", tuple(key.split(".")), "none"))


def creep(book: Book, folios: Quantity, paper: Figures) -> Quantity:
    """How far the innermost leaf of a gathering stands out before the outermost."""
    factor = book.practice("creep-sharp")
    return (factor * maximum(folios - 1, number(0)) * paper.thickness).named(
        name("creep"),
        label="creep",
        rule="each folio inside pushes out by one leaf thickness at a sharp fold, by half pi "
        "times that at a round one",
        source=f"{GEOMETRY} of the fold; {cited(factor)}",
    )


def rough(book: Book, options: TextBlockOptions, cut: Trims) -> Quantity | None:
    """Extra width of the folio, beyond trim: what a tear asks for more than a cut."""
    torn = book.default("torn-edge-allowance")
    amount, rule, source = torn - book.default("rough-cut-allowance"), TEAR, cited(torn)
    if options.rough is not None:
        amount, rule, source = options.rough, "as the spec says", CHOICE
    elif not options.edges_torn or cut.fore_edge.value == 0:
        # A cut folio needs only its trim; where nothing is trimmed the torn edge is finished.
        return None
    return given(amount, cut.fore_edge).named(
        name("rough"), label="rough allowance on the folio's width", rule=rule, source=source
    )


def _fold_width(
    book: Book, options: TextBlockOptions, cut: Trims, out: Quantity, extra: Quantity | None
) -> Quantity:
    widths = [options.leaf.width]
    if cut.fore_edge.value > 0:
        # An inner leaf that stands out must not pull the outermost one out of the knife's reach.
        widths += [cut.fore_edge, out]
    if extra is not None:
        widths.append(extra / 2)
    return book.size_up(given(total(widths), cut.fore_edge)).named(
        name("fold.width"),
        label="folded leaf, width before trimming",
        rule="finished leaf, fore-edge trim and creep, and half the rough allowance",
        source="common practice",
    )


def sizes(book: Book, options: TextBlockOptions, folios: Quantity, paper: Figures) -> Sizes:
    """Every size of the leaf, the folded leaf and the piece that is cut."""
    cut = trims(book, options)
    out = creep(book, folios, paper)
    extra = rough(book, options, cut)
    fold_width = _fold_width(book, options, cut, out, extra)
    fold_height = book.size_up(options.leaf.height + cut.head + cut.tail).named(
        name("fold.height"),
        label="folded leaf, height before trimming",
        rule="finished leaf, and the trim at head and tail",
        source="common practice",
    )
    across, down, made = FOLDS[options.folded]
    piece_width = (across * fold_width).named(
        name("folio.width"),
        label="folio, flat, across the fold",
        rule="a folio is two leaves wide; one folded three times is four",
        source=GEOMETRY,
    )
    piece_height = (down * fold_height).named(
        name("folio.height"),
        label="folio, flat, along the fold",
        rule="a folio is one leaf high; one folded more than once is two",
        source=GEOMETRY,
    )
    optional = () if extra is None else (extra,)
    return Sizes(
        trims=cut,
        creep=out,
        fold_width=fold_width,
        fold_height=fold_height,
        piece_width=piece_width,
        piece_height=piece_height,
        piece_folios=number(made),
        quantities=(out, *optional, fold_width, fold_height, piece_width, piece_height),
        problems=tuple(_problems(book, options, cut, out)),
    )


def _problems(book: Book, options: TextBlockOptions, cut: Trims, out: Quantity) -> list[Problem]:
    path = (SECTION, "trim")
    found = []
    deckle = book.default("deckle-creep")
    if cut.fore_edge.value == 0 and out.value > deckle.value:
        found.append(
            note(
                path,
                f"the inner leaves will stand out by {mm(out)} at the fore-edge",
                "creep-untrimmed",
                consequence="The fore-edge shows a step in every gathering",
                remedy="Trim the fore-edge, or put fewer folios in a gathering",
                source=cited(deckle),
            )
        )
    if cut.fore_edge.value and options.edges_torn and min(cut.head.value, cut.tail.value) < 3:
        found.append(
            note(
                path,
                f"torn edges are trimmed by only {mm(cut.head)} at the head and {mm(cut.tail)} "
                "at the tail",
                "torn-edge-trim",
                consequence="The knife may not reach below the tear everywhere",
                remedy="Give more trim there, or leave the torn edge (trim: none)",
                source="from memory",
            )
        )
    return found
