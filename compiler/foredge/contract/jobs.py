"""What a stage hands to a part, and what the part gives back, one pair a kind.

Lengths are quantities; ``x`` runs away from the spine, ``y`` from head to tail. A part's
own options are in ``part.options``, their place in the spec in ``part.path``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract.book import Book
from foredge.contract.measures import Part
from foredge.contract.work import StageResult
from foredge.quantity import Quantity


@dataclass(frozen=True, slots=True)
class SewingJob:
    """Gatherings to be sewn.

    ``fold_height`` is the folded sheet's height before trimming, ``trim_head`` and
    ``trim_tail`` what is cut off it later; ``pitch`` the thickness of one pressed gathering
    with its thread; ``thread_diameter`` uncompressed; ``thread`` a stock name.
    """

    book: Book
    part: Part[Any]
    fold_height: Quantity
    trim_head: Quantity
    trim_tail: Quantity
    gatherings: Quantity
    folios: Quantity
    leaf_thickness: Quantity
    pitch: Quantity
    thread: str | None
    thread_diameter: Quantity


@dataclass(frozen=True, slots=True)
class SewingResult:
    """``stations`` are distances from the head of the folded sheet, from head to tail.

    ``thread`` is the length used, reserve included. ``threads_in_fold`` is how many threads
    lie side by side in the fold of one gathering (the swell counts them). ``sewn`` is the
    id of the operation after which the block is sewn. ``spine_layer`` is what the sewing
    adds to the spine's outside (tapes), ``lies_in_joint`` what it brings into the joint
    beside covering cloth. ``replaces_super``: the gatherings are sewn through cloth that
    covers the whole spine and has a flange for each board.
    """

    work: StageResult
    stations: tuple[Quantity, ...]
    thread: Quantity
    threads_in_fold: Quantity
    sewn: str
    spine_layer: Quantity
    lies_in_joint: Quantity
    replaces_super: bool = False


@dataclass(frozen=True, slots=True)
class EndPaperJob:
    """End-papers for a block whose leaves are ``leaf_width`` by ``leaf_height`` (finished).

    ``fold_width`` and ``fold_height`` are the folded leaf before trimming. ``pressed`` and
    ``sewn`` are ids of the operations after which gatherings are pressed, the block sewn.
    """

    book: Book
    part: Part[Any]
    leaf_width: Quantity
    leaf_height: Quantity
    fold_width: Quantity
    fold_height: Quantity
    gatherings: Quantity
    thread_diameter: Quantity
    pressed: str
    sew: str


@dataclass(frozen=True, slots=True)
class EndPaperResult:
    """``thickness`` is what both end-papers add to the block, ``at_spine`` what they add
    there only (cloth in the fold), ``lies_in_joint`` what one brings into a joint (its
    cloth). ``attached`` is the operation that attaches them;
    ``hinge`` is ``tipped``, ``sewn`` or ``cloth``, weakest first. ``leaves`` stay free at
    each end (fly-leaves). ``sewn_gatherings`` is how many gatherings it adds to the sewing
    (0, or one at each end), ``mass`` that of both end-papers."""

    work: StageResult
    thickness: Quantity
    at_spine: Quantity
    lies_in_joint: Quantity
    attached: str
    hinge: str
    leaves: Quantity
    sewn_gatherings: Quantity
    mass: Quantity


@dataclass(frozen=True, slots=True)
class EdgeJob:
    """Edges of a pressed, trimmed block of ``width`` by ``height`` by ``thickness``.

    ``trimmed`` is the operation after which they are treated. ``cut`` names those that the
    trim cuts smooth (``head``, ``tail``, ``fore-edge``); the others stay as folded or torn.
    """

    book: Book
    part: Part[Any]
    width: Quantity
    height: Quantity
    thickness: Quantity
    trimmed: str
    cut: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BoardsJob:
    """Two boards of ``width`` by ``height``, ``thickness`` thick once cured; all three are
    final once the gates are measured.

    ``spine`` is the width of a stiff spine piece cut from the same board, as tall as the
    boards; None where there is none. Boards are cut to size in ``case.cut-boards``.
    """

    book: Book
    part: Part[Any]
    width: Quantity
    height: Quantity
    thickness: Quantity
    spine: Quantity | None = None


@dataclass(frozen=True, slots=True)
class BoardsResult:
    """``ready`` is the operation after which the board stands finished, to be measured.

    Its pieces are ``case.board`` (two of them), ``case.spine`` where the job asks for it,
    and the blanks these are trimmed from. ``dressed`` is an operation after the cutting
    that must be done before covering (edges wrapped), or empty.
    """

    work: StageResult
    ready: str
    dressed: str = ""


@dataclass(frozen=True, slots=True)
class SpineJob:
    """The spine of a case for a block ``block_spine`` thick, over boards ``board`` thick.

    ``board_height`` is the height of the boards; ``joint_cloth`` the thickness of
    everything that lies in one joint; ``joint`` what board and cloth ask for.
    """

    book: Book
    part: Part[Any]
    block_spine: Quantity
    board: Quantity
    board_height: Quantity
    joint_cloth: Quantity
    joint: Quantity


@dataclass(frozen=True, slots=True)
class SpineResult:
    """``width`` of the spine piece (of the bare gap where there is none), and the
    ``joint`` on each side of it: from spine piece to board edge, flat on the bench.

    ``thickness`` is of the spine piece (0 mm where there is none). ``same_board``: it is cut
    from the boards' own stuff, so the boards bring the piece."""

    work: StageResult
    width: Quantity
    joint: Quantity
    thickness: Quantity
    has_piece: bool
    same_board: bool = False


@dataclass(frozen=True, slots=True)
class CoverJob:
    """A case to be covered, laid flat: board, joint, spine, joint, board.

    ``boards_cut`` is the operation after which the boards lie ready at final size.
    ``turn_in`` is what the spec asks for; None leaves it to the covering material.
    """

    book: Book
    part: Part[Any]
    board_width: Quantity
    board_height: Quantity
    board: Quantity
    joint: Quantity
    spine: Quantity
    has_spine_piece: bool
    boards_cut: str
    turn_in: Quantity | None = None


@dataclass(frozen=True, slots=True)
class CoverResult:
    """``covered`` is the operation after which the case is covered and turned in.

    ``prepared`` are operations after which the covering is as it will lie in the joint
    (backed), so that its thickness can be measured.
    """

    work: StageResult
    covered: str
    prepared: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CasingInJob:
    """A covered case and a finished block to be joined.

    ``paste_down_width`` and ``_height`` are of one paste-down as it leaves the block. The
    result makes the fact ``case.cased_in`` known, and ends with ``case.press``.
    """

    book: Book
    part: Part[Any]
    board_width: Quantity
    board_height: Quantity
    joint: Quantity
    paste_down_width: Quantity
    paste_down_height: Quantity
    square_head: Quantity
    square_tail: Quantity
    square_fore: Quantity
    hinge: str
    covered: str
    block_ready: str
