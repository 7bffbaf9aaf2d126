"""Everything the work takes from the shelf, operation by operation, for one book."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foredge.contract import Build, Linear, Piece, Quantity, Use

NOWHERE = 10**6
"""The place of what no operation names: a button that is bought and sewn on some time."""


@dataclass(frozen=True, slots=True)
class Claim:
    """``amount`` of ``material`` for one book, at the operation of ``place`` in the work.

    ``stock`` is named by the spec, else None. ``piece`` is what is cut off in one length.
    """

    material: str
    stock: str | None
    amount: Quantity
    place: int
    note: str = ""
    piece: Piece | None = None
    from_off_cuts: bool = False


def claims(build: Build) -> Iterator[Claim]:
    """Uses of materials and pieces of linear stock, in the order of the work.

    Pieces of sheets are the cutting plan's.
    """
    pieces = {piece.name: piece for piece in build.whole.pieces if _linear(build, piece)}
    seen: set[int] = set()
    for place, operation in enumerate(build.order):
        for use in operation.uses:
            if id(use) not in seen:  # a part may name it for the stage once more
                seen.add(id(use))
                yield _of_use(use, place)
        for name in operation.pieces:
            if name in pieces:
                yield _of_piece(pieces.pop(name), place)
    for use in build.whole.uses:
        if id(use) not in seen:
            seen.add(id(use))
            yield _of_use(use, NOWHERE)
    for piece in pieces.values():
        yield _of_piece(piece, NOWHERE)


def _linear(build: Build, piece: Piece) -> bool:
    return isinstance(build.book.stock.get(piece.stock or ""), Linear)


def _of_use(use: Use, place: int) -> Claim:
    return Claim(use.material, use.stock, use.amount, place, use.note, None, use.from_off_cuts)


def _of_piece(piece: Piece, place: int) -> Claim:
    return Claim(piece.title, piece.stock, piece.count * piece.height, place, piece=piece)
