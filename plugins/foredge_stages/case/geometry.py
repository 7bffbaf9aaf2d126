"""The sizes of a flat-back case as pure functions of quantities.

The case lies flat on the bench: board, joint, spine, joint, board. ``joint`` is the gap from
spine piece to board edge, ``dip`` the part of it that the cloth uses up by going down into
the joint when the book is closed.
"""

from __future__ import annotations

from foredge.contract import LENGTH, Book, Origin, Quantity, leaf, maximum

NOTHING = leaf(0.0, LENGTH, "0 mm", Origin("constant"))
"""No length, as the lower end of a ``maximum``."""


def joint_by_rule(book: Book, board: Quantity, cloth: Quantity) -> Quantity:
    """The joint for a board over all the cloth that lies in it: 6 mm + board + 2 x the surplus."""
    surplus = maximum(NOTHING, cloth - book.default("joint-cloth-free"))
    return book.default("joint-base") + board + book.default("joint-cloth-factor") * surplus


def dip_of(board: Quantity, spine: Quantity, block_spine: Quantity) -> Quantity:
    """What the closed joint takes back: half a board, and half of what the spine is wider."""
    return board / 2 + (spine - block_spine) / 2


def board_width_of(
    block_width: Quantity, square: Quantity, joint: Quantity, dip: Quantity
) -> Quantity:
    """A board reaches from the joint to the fore-edge square."""
    return block_width + square - (joint - dip)


def board_height_of(block_height: Quantity, head: Quantity, tail: Quantity) -> Quantity:
    """The block with a square at head and at tail."""
    return block_height + head + tail


def board_distance_of(spine: Quantity, joint: Quantity) -> Quantity:
    """From board to board, flat on the bench."""
    return spine + 2 * joint


def flat_width_of(board_width: Quantity, distance: Quantity) -> Quantity:
    """The case laid open, without its turn-ins."""
    return 2 * board_width + distance
