"""What goes into the cutting engine and what comes out: plain values, lengths in mm.

The origin of a sheet is its left head corner; x runs to the right, y runs down.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle on a sheet, in mm. A crease is a rectangle without width (or height)."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Sheet:
    """A size of sheet on the shelf, in mm, and how many there are.

    ``price`` is for one sheet; prices count only when every sheet has one.
    No piece will lie over a ``keep_out`` rectangle.
    Raises ValueError for sizes, counts or prices that cannot be.
    """

    name: str
    width: float
    height: float
    count: int
    price: float | None = None
    keep_out: tuple[Rect, ...] = ()

    def __post_init__(self) -> None:
        _check_size("sheet", self.name, self.width, self.height)
        _check_count("sheet", self.name, self.count)
        if self.price is not None and not (math.isfinite(self.price) and self.price >= 0):
            raise ValueError(
                f"The price of sheet '{self.name}' is {self.price}; it must be 0 or more."
            )
        for zone in self.keep_out:
            _check_zone(self, zone)


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece to cut, in mm, and how many; ``turn`` says it may be cut turned by 90 degrees.

    Raises ValueError for sizes or counts that cannot be.
    """

    name: str
    width: float
    height: float
    count: int
    turn: bool

    def __post_init__(self) -> None:
        _check_size("piece", self.name, self.width, self.height)
        _check_count("piece", self.name, self.count)


@dataclass(frozen=True, slots=True)
class Placement:
    """One piece on a sheet: left head corner and size as it lies there, in mm."""

    piece: Piece
    x: float
    y: float
    width: float
    height: float

    @property
    def turned(self) -> bool:
        """True when the piece lies turned by 90 degrees."""
        return (self.width, self.height) != (self.piece.width, self.piece.height)


@dataclass(frozen=True, slots=True)
class OffCut:
    """A clean rectangle that is left when all cuts are made, in mm; letters within one sheet."""

    name: str
    x: float
    y: float
    width: float
    height: float

    @property
    def area(self) -> float:
        """In mm2."""
        return self.width * self.height


@dataclass(frozen=True, slots=True)
class Part:
    """One side of a cut: what the panel is that comes off, and what becomes of it.

    Exactly one holds: ``next_cut`` numbers the cut it goes on to, ``placement`` is the index
    of the finished piece, ``off_cut`` names what is kept; none of them: it is waste.
    """

    panel: Rect
    next_cut: int | None = None
    placement: int | None = None
    off_cut: str | None = None


@dataclass(frozen=True, slots=True)
class Cut:
    """One edge-to-edge cut of ``panel``.

    ``order`` counts from 1 on each sheet. With axis ``"x"`` the knife runs from head to tail,
    ``at`` mm from the panel's left edge; with ``"y"`` from left to right, ``at`` mm from its
    head edge. The kerf is lost beyond ``at``. ``first`` is the left or head part.
    """

    order: int
    panel: Rect
    axis: Literal["x", "y"]
    at: float
    first: Part
    second: Part


@dataclass(frozen=True, slots=True)
class UsedSheet:
    """One sheet that is cut up: its pieces, the cuts in order, and what is left."""

    sheet: Sheet
    placements: tuple[Placement, ...]
    cuts: tuple[Cut, ...]
    off_cuts: tuple[OffCut, ...] = ()


@dataclass(frozen=True, slots=True)
class Unplaced:
    """How many of a piece found no room."""

    piece: Piece
    count: int


@dataclass(frozen=True, slots=True)
class CutPlan:
    """The sheets to cut up and the pieces that found no room.

    ``proven`` says that no plan can place these pieces on less sheet area (on priced stock: for
    less money). When it is False the plan may still be the best there is.
    """

    used: list[UsedSheet]
    unplaced: list[Unplaced]
    proven: bool = False

    @property
    def area(self) -> float:
        """Total area of the used sheets in mm2."""
        return math.fsum(used.sheet.width * used.sheet.height for used in self.used)


def _check_size(what: str, name: str, width: float, height: float) -> None:
    for side, value in (("width", width), ("height", height)):
        if isinstance(value, bool) or not (math.isfinite(value) and value > 0):
            raise ValueError(
                f"The {side} of {what} '{name}' is {value}; it must be more than 0 mm."
            )


def _check_count(what: str, name: str, count: int) -> None:
    if isinstance(count, bool) or not isinstance(count, int):
        raise ValueError(f"The count of {what} '{name}' is {count!r}; it must be a whole number.")
    if count < 0:
        raise ValueError(f"The count of {what} '{name}' is {count}; it must be 0 or more.")


def _check_zone(sheet: Sheet, zone: Rect) -> None:
    values = (zone.x, zone.y, zone.width, zone.height)
    if not all(math.isfinite(value) for value in values) or zone.width < 0 or zone.height < 0:
        raise ValueError(f"A keep-out zone of sheet '{sheet.name}' has an impossible size: {zone}.")
