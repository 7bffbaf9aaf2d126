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

    ``thread`` is the length used, reserve included. ``sewn`` is the id of the operation
    after which the block is sewn. ``spine_layer`` is what the sewing adds to the spine's
    outside (tapes), ``lies_in_joint`` what it brings into the joint beside covering cloth.
    """

    work: StageResult
    stations: tuple[Quantity, ...]
    thread: Quantity
    sewn: str
    spine_layer: Quantity
    lies_in_joint: Quantity


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
    """``thickness`` is what both end-papers add to the block, ``lies_in_joint`` what one
    brings into a joint (its cloth). ``attached`` is the operation that attaches them;
    ``hinge`` is ``tipped``, ``sewn`` or ``cloth``, weakest first. ``leaves`` stay free at
    each end (fly-leaves)."""

    work: StageResult
    thickness: Quantity
    lies_in_joint: Quantity
    attached: str
    hinge: str
    leaves: Quantity


@dataclass(frozen=True, slots=True)
class EdgeJob:
    """Edges of a pressed, trimmed block of ``width`` by ``height`` by ``thickness``."""

    book: Book
    part: Part[Any]
    width: Quantity
    height: Quantity
    thickness: Quantity
    trimmed: str


@dataclass(frozen=True, slots=True)
class BoardsJob:
    """Two boards of ``width`` by ``height``, final once the gates are measured."""

    book: Book
    part: Part[Any]
    width: Quantity
    height: Quantity


@dataclass(frozen=True, slots=True)
class BoardsResult:
    """``ready`` is the operation after which the board stands finished, to be measured."""

    work: StageResult
    ready: str


@dataclass(frozen=True, slots=True)
class SpineJob:
    """The spine of a case for a block ``block_spine`` thick, over boards ``board`` thick.

    ``board_height`` is the height of the boards; ``joint_cloth`` the thickness of
    everything that lies in one joint.
    """

    book: Book
    part: Part[Any]
    block_spine: Quantity
    board: Quantity
    board_height: Quantity
    joint_cloth: Quantity


@dataclass(frozen=True, slots=True)
class SpineResult:
    """``width`` of the spine piece (of the bare gap where there is none), and the
    ``joint`` on each side of it: from spine piece to board edge, flat on the bench."""

    work: StageResult
    width: Quantity
    joint: Quantity
    has_piece: bool


@dataclass(frozen=True, slots=True)
class CoverJob:
    """A case to be covered, laid flat: board, joint, spine, joint, board.

    ``boards_cut`` is the operation after which the boards lie ready at final size.
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


@dataclass(frozen=True, slots=True)
class CoverResult:
    """``covered`` is the operation after which the case is covered and turned in."""

    work: StageResult
    covered: str


@dataclass(frozen=True, slots=True)
class CasingInJob:
    """A covered case and a finished block to be joined.

    ``paste_down_width`` and ``_height`` are of one paste-down.
    """

    book: Book
    part: Part[Any]
    board_width: Quantity
    board_height: Quantity
    joint: Quantity
    paste_down_width: Quantity
    paste_down_height: Quantity
    hinge: str
    covered: str
    block_ready: str
