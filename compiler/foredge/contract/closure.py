"""Closures: what the finishing stage hands them, and what they give back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Protocol

from foredge.contract.book import Book
from foredge.contract.measures import Part
from foredge.contract.ornament import INTO_CASE
from foredge.contract.plugin import PartPlugin
from foredge.contract.work import StageResult
from foredge.quantity import Quantity

BEFORE_PASTE_DOWNS = INTO_CASE
"""Operations that hide the insides of the boards: whatever is anchored there is set before."""


@dataclass(frozen=True, slots=True)
class Relief:
    """The relief on one panel: how high it stands above the covering, and the area it covers.

    Both are 0 where there is none.
    """

    height: Quantity
    footprint: Quantity


@dataclass(frozen=True, slots=True)
class ClosureJob:
    """A closure to be made.

    ``board`` is the board's thickness, ``covering`` that of what covers it. ``case_thickness``
    is the closed book without its relief, ``thickness`` with everything on it (relief,
    patterns, coats), which rests on gate G3 where there is a relief: what is cut before
    ``sculpted`` is cut long and fitted at the end. ``swell`` is what a filled book grows by
    at the fore-edge. ``boards_cut``, ``covered``, ``cased_in``, ``pressed`` and ``sculpted``
    are operation ids (``sculpted`` empty without a relief); ``coated`` is the operation
    after which the painted book may be closed, and the closure fitted for good.
    """

    book: Book
    part: Part[Any]
    board_width: Quantity
    board_height: Quantity
    board: Quantity
    covering: Quantity
    spine: Quantity
    joint: Quantity
    square_fore: Quantity
    case_thickness: Quantity
    thickness: Quantity
    height: Quantity
    width: Quantity
    front: Relief
    back: Relief
    spine_relief: Relief
    swell: Quantity
    boards_cut: str
    covered: str
    cased_in: str
    pressed: str
    sculpted: str
    coated: str


@dataclass(frozen=True, slots=True)
class ClosureResult:
    """What a closure makes known.

    Its operations are ``finishing.<verb>-closure``; those that anchor it come
    ``before_any`` of :data:`BEFORE_PASTE_DOWNS`. ``adds_thickness`` is what it adds to the
    closed book, ``done`` the last operation, after which the closure works (empty where
    ``work`` holds an error).
    """

    work: StageResult
    adds_thickness: Quantity
    done: str


class Closure(PartPlugin, Protocol):
    """What keeps the book shut; kind ``closure``."""

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """Lengths, holes, pieces and operations."""
        ...
