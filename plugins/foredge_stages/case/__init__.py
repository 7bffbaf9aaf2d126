"""The stage ``case``: boards, spine, covering and casing-in of a flat-back book."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    BoardsJob,
    BoardsResult,
    Book,
    CasingInJob,
    CoverJob,
    CoverResult,
    Quantity,
    StageResult,
    Upstream,
    merge,
    total,
)
from foredge_stages.case.checks import advice, errors
from foredge_stages.case.cutting import CUT, cut_boards, gate_one
from foredge_stages.case.drawings import corner_template, laid_open, spacer_jig
from foredge_stages.case.frame import Chosen, Frame, build_frame, hangs
from foredge_stages.case.inner_strip import PASTE, paste_strip
from foredge_stages.case.options import CaseOptions
from foredge_stages.case.templates import spine_piece, square_jig


@dataclass(frozen=True, slots=True)
class CaseStage:
    """A case that is made apart from the block, flat on the bench, and then joined to it.

    Facts: ``case.covered``, ``case.cased_in`` and ``case.boards_cut`` hold operation ids.
    A part that names a quantity ``case.<part>.mass`` adds to ``case.mass``.
    """

    kind: str = "stage"
    name: str = "case"
    title: str = "Case"
    section: str = "case"
    prefix: str = "case"
    needs: tuple[str, ...] = ("text-block",)
    options: type[CaseOptions] = CaseOptions

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        """Everything about the case, from the layers of its boards to the pressed book."""
        options: CaseOptions = book.sections["case"]
        chosen = Chosen(
            options.boards,
            book.part(options.spine, "spine", "card", ("case", "spine")),
            options.covering,
            book.part(options.casing_in, "casing-in", "at-once", ("case", "casing_in")),
        )
        frame = build_frame(book, options, chosen, upstream)
        wrong = errors(options, frame)
        if wrong:
            return StageResult(quantities=frame.quantities(), problems=tuple(wrong))
        boards = _boards(book, chosen, frame)
        cover = _cover(book, options, chosen, frame, boards)
        strip = paste_strip(book, options.inner_strip, frame.distance, frame.block.height, cover)
        joined = _join(book, chosen, frame, upstream)
        ready = upstream.fact("text_block.block_ready")
        parts = merge(
            (
                StageResult(quantities=frame.quantities()),
                boards.work,
                frame.spine.work,
                gate_one(book, frame, boards, cover),
                cut_boards(book, frame, boards, ready),
                cover.work,
                strip,
                joined,
                StageResult(
                    facts=(("case.covered", PASTE),),
                    problems=tuple(advice(book, options, frame, hangs(upstream))),
                ),
            )
        )
        return parts + _closing(frame, parts, book.display)


def _boards(book: Book, chosen: Chosen, frame: Frame) -> BoardsResult:
    width = frame.spine.width if frame.spine.has_piece and frame.spine.same_board else None
    result: BoardsResult = chosen.boards.plugin.make(
        BoardsJob(book, chosen.boards, frame.width, frame.height, frame.board, width)
    )
    return result


def _cover(
    book: Book, options: CaseOptions, chosen: Chosen, frame: Frame, boards: BoardsResult
) -> CoverResult:
    result: CoverResult = chosen.covering.plugin.cover(
        CoverJob(
            book,
            chosen.covering,
            board_width=frame.width,
            board_height=frame.height,
            board=frame.board,
            joint=frame.joint,
            spine=frame.spine.width,
            has_spine_piece=frame.spine.has_piece,
            boards_cut=boards.dressed or CUT,
            turn_in=options.turn_in,
        )
    )
    return result


def _join(book: Book, chosen: Chosen, frame: Frame, upstream: Upstream) -> StageResult:
    result: StageResult = chosen.casing_in.plugin.join(
        CasingInJob(
            book,
            chosen.casing_in,
            board_width=frame.width,
            board_height=frame.height,
            joint=frame.joint,
            paste_down_width=upstream.quantity("text_block.paste_down.width"),
            paste_down_height=upstream.quantity("text_block.paste_down.height"),
            square_head=frame.squares.head,
            square_tail=frame.squares.tail,
            square_fore=frame.squares.fore_edge,
            hinge=upstream.fact("text_block.hinge"),
            covered=PASTE,
            block_ready=upstream.fact("text_block.block_ready"),
        )
    )
    return result


def _closing(frame: Frame, parts: StageResult, display: str) -> StageResult:
    """What only the whole case knows: its mass, its drawings, the sizes of its pieces."""
    named = {quantity.name: quantity for quantity in parts.quantities}
    sizes = [
        size
        for piece in parts.pieces
        for size in (piece.width, piece.height)
        if size.name is not None and size.name not in named
    ]
    new: dict[str | None, Quantity] = {size.name: size for size in sizes}
    masses = [q for name, q in named.items() if name and name.endswith(".mass")]
    whole = tuple(
        total(masses).named(
            "case.mass", label="mass of the case", rule="the sum of its parts", source="geometry"
        )
        for _ in masses[:1]
    )
    corner = tuple(
        corner_template(named["case.corner"], named["case.turn_in"], display)
        for name in named
        if name == "case.corner"
    )
    return StageResult(
        quantities=(*new.values(), *whole),
        drawings=(
            laid_open(frame, named, display),
            *spine_piece(frame, display),
            spacer_jig(frame, display),
            *corner,
            *square_jig(frame, display),
        ),
    )


PLUGIN = CaseStage()
