"""Templates of the case at true scale: the spine piece, and the jig that sets the square."""

from __future__ import annotations

from foredge.contract import (
    Drawing,
    GrainArrow,
    Item,
    Label,
    Line,
    Measured,
    Point,
    Quantity,
    show_length,
)
from foredge_stages.case.frame import Frame

ARM_MM = 60.0
"""How far the jig's arms reach along the block, mm."""


def spine_piece(frame: Frame, display: str) -> tuple[Drawing, ...]:
    """The stiffener of the spine; none where the spine has none."""
    if not frame.spine.has_piece:
        return ()
    width, height = frame.spine.width, frame.height
    left, top = 24.0, 16.0
    right, foot = left + width.value, top + height.value
    items: tuple[Item, ...] = (
        Line(((left, top), (right, top), (right, foot), (left, foot)), "cut", closed=True),
        Label(((left + right) / 2, top - 4), "HEAD", 3.5, anchor="middle"),
        GrainArrow(((left + right) / 2, (top + foot) / 2), min(30.0, height.value / 2), 90.0),
        Measured((left, foot), (right, foot), show_length(width, display), -8),
        Measured((left, foot), (left, top), show_length(height, display), 8),
    )
    drawing = Drawing(
        "case-spine-piece",
        "Spine piece",
        max(right + 24, 60.0),
        foot + 20,
        items,
        true_scale=True,
        sizes=(width, height),
    )
    return (drawing,)


def square_jig(frame: Frame, display: str) -> tuple[Drawing, ...]:
    """An angle of card as wide as the squares: flush with the board outside, the block inside.

    One for the head, and one for the tail where the squares differ. None where the block lies
    flush with its boards.
    """
    head, tail, fore = frame.squares.head, frame.squares.tail, frame.squares.fore_edge
    if head.value == tail.value:
        return _jig(frame, head, fore, "head-and-tail", display)
    return (*_jig(frame, head, fore, "head", display), *_jig(frame, tail, fore, "tail", display))


def _jig(
    frame: Frame, square: Quantity, fore: Quantity, end: str, display: str
) -> tuple[Drawing, ...]:
    across, down = fore.value, square.value
    if across <= 0 or down <= 0:
        return ()
    left, top = 24.0, 16.0
    arm_x = min(ARM_MM, frame.width.value / 2) + across
    arm_y = min(ARM_MM, frame.height.value / 3) + down
    board: Point = (left, top)
    inner: Point = (left + across, top + down)
    ring = (
        board,
        (left + arm_x, top),
        (left + arm_x, inner[1]),
        inner,
        (inner[0], top + arm_y),
        (left, top + arm_y),
    )
    told, foot = end.replace("-and-", " or "), top + arm_y
    items: tuple[Item, ...] = (
        Line(ring, "cut", closed=True),
        Measured((left, top + arm_y), (inner[0], top + arm_y), show_length(fore, display), -9),
        Measured((left + arm_x, top), (left + arm_x, inner[1]), show_length(square, display), 9),
        Label((inner[0] + 5, inner[1] + 8), "block", 3.5),
        Label((8, foot + 20), "Lay it flush with a corner of the board,", 3.0),
        Label((8, foot + 24.5), f"at {told}; push the block into the angle.", 3.0),
    )
    drawing = Drawing(
        f"case-square-jig-{end}",
        f"Jig for the square, {end.replace('-', ' ')}",
        max(left + arm_x + 28, 110.0),
        foot + 30,
        items,
        true_scale=True,
        sizes=(square, fore),
    )
    return (drawing,)
