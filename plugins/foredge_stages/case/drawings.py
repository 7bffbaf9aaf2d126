"""The case laid open, and the spacer strips, as drawings in millimetres."""

from __future__ import annotations

from collections.abc import Mapping

from foredge.contract import (
    Drawing,
    GrainArrow,
    Item,
    Label,
    Line,
    Measured,
    Point,
    Quantity,
    corners,
    show_length,
)
from foredge_stages.case.frame import Frame

MARGIN = 30.0
"""Room around the case for dimensions, mm."""


def laid_open(frame: Frame, named: Mapping[str | None, Quantity], display: str) -> Drawing:
    """The inside of the case before turning in: boards, joints, spine, turn-ins, mitres.

    ``named`` are the quantities of the case; turn-in, corner and the edge of a cloth that
    covers only part of the boards (``case.cloth_reach``) are drawn where they are known.
    """
    turn = named["case.turn_in"].value if "case.turn_in" in named else 0.0
    left, top = MARGIN + turn, MARGIN + turn
    board, height = frame.width.value, frame.height.value
    right = left + board + frame.distance.value
    items: list[Item] = [
        _box(left, top, board, height),
        _box(right, top, board, height),
        *(_grain(x + board / 2, top + height / 2) for x in (left, right)),
        *_spine(frame, left + board, top),
        *_dimensions(frame, left, right, top, display),
    ]
    reach = named.get("case.cloth_reach")
    if reach is not None:
        edges = (left + board - reach.value, right + reach.value)
        items += [Line(((x, top - turn), (x, top + height + turn)), "hidden") for x in edges]
    if turn:
        items += _covering(left, top, right + board - left, height, turn, named, display)
    width = 2 * MARGIN + 2 * turn + 2 * board + frame.distance.value
    return Drawing(
        "case-laid-open",
        "Case laid open, inside up",
        width,
        2 * MARGIN + 2 * turn + height,
        tuple(items),
        true_scale=True,
        sizes=(frame.width, frame.height, frame.distance, *_known(named)),
    )


def _box(x: float, y: float, width: float, height: float) -> Line:
    return Line(corners(x, y, width, height), closed=True)


def _grain(x: float, y: float) -> GrainArrow:
    return GrainArrow((x, y), 30.0, 90.0)


def _spine(frame: Frame, board_edge: float, top: float) -> list[Item]:
    width, height = frame.spine.width.value, frame.height.value
    x = board_edge + frame.joint.value
    if frame.spine.has_piece:
        return [_box(x, top, width, height), _grain(x + width / 2, top + height / 2)]
    middle = x + width / 2
    return [Line(((middle, top), (middle, top + height)), "guide")]


def _dimensions(frame: Frame, left: float, right: float, top: float, display: str) -> list[Item]:
    board, bottom = frame.width.value, top + frame.height.value
    inner = left + board
    joint = inner + frame.joint.value
    return [
        Measured((left, bottom), (inner, bottom), show_length(frame.width, display), -8),
        Measured((inner, bottom), (right, bottom), show_length(frame.distance, display), -8),
        Measured((right, bottom), (right + board, bottom), show_length(frame.width, display), -8),
        Measured((inner, top), (joint, top), show_length(frame.joint, display), 8),
        Measured((left, bottom), (left, top), show_length(frame.height, display), 8),
    ]


def _covering(
    left: float,
    top: float,
    width: float,
    height: float,
    turn: float,
    named: Mapping[str | None, Quantity],
    display: str,
) -> list[Item]:
    outer = _box(left - turn, top - turn, width + 2 * turn, height + 2 * turn)
    items: list[Item] = [Line(outer.points, "cut", closed=True)]
    clear = named.get("case.corner")
    if clear is not None:
        for x, dx in ((left, -1.0), (left + width, 1.0)):
            for y, dy in ((top, -1.0), (top + height, 1.0)):
                items.append(Line(_mitre(x, y, dx, dy, clear.value, turn), "cut"))
    x, y = left - turn, top - turn
    bottom, right = y + height + 2 * turn, x + width + 2 * turn
    items.append(Measured((x, y), (left, y), show_length(named["case.turn_in"], display), 8))
    items += [
        Measured((x, bottom), (right, bottom), show_length(width + 2 * turn, display), -12),
        Measured((x, bottom), (x, y), show_length(height + 2 * turn, display), 12),
    ]
    return items


def _mitre(
    x: float, y: float, dx: float, dy: float, clear: float, turn: float
) -> tuple[Point, Point]:
    """The cut at 45 degrees that passes ``clear`` off the corner (x, y), across the turn-ins."""
    reach = clear * 2**0.5
    return (x + dx * turn, y + dy * (reach - turn)), (x + dx * (reach - turn), y + dy * turn)


def _known(named: Mapping[str | None, Quantity]) -> tuple[Quantity, ...]:
    return tuple(named[name] for name in ("case.turn_in", "case.corner") if name in named)


def corner_template(clear: Quantity, over: Quantity, display: str) -> Drawing:
    """A true-scale jig: laid on the board's corner, its long edge is where the mitre is cut."""
    board_corner, turn = clear.value, over.value
    at, reach = 14 + turn, turn + 34
    start, end = _mitre(at, at, -1.0, -1.0, board_corner, turn)
    cloth = ((at - turn, at + reach), (at - turn, at - turn), (at + reach, at - turn))
    return Drawing(
        "case-corner",
        "Corner template: turn-in and mitre",
        at + reach + 30,
        at + reach + 24,
        (
            Line(((at, at + reach), (at, at), (at + reach, at)), "outline"),
            Line(cloth, "hidden"),
            Line((start, end), "cut"),
            Measured((at - turn, at + reach), (at, at + reach), show_length(over, display), -8),
            Label((at + 4, at + 8), "board"),
            Label((at + 4, at + 13), "cut the covering", 3.0),
            Label((at + 4, at + 17), "along the slanting line", 3.0),
        ),
        true_scale=True,
        sizes=(clear, over),
    )


def spacer_jig(frame: Frame, display: str) -> Drawing:
    """The spacer strips at full size, each with its width."""
    height, y = min(frame.height.value, 60.0), 10.0
    wide = frame.distance.value
    items: list[Item] = [
        Line(corners(10, y, wide, height), "cut", closed=True),
        Measured(
            (10, y + height), (10 + wide, y + height), show_length(frame.distance, display), -6
        ),
        Label((10, y + height + 16), "board to board"),
    ]
    x = 10 + wide + 15
    if frame.spine.has_piece:
        items += [
            Line(corners(x, y, frame.joint.value, height), "cut", closed=True),
            Measured(
                (x, y + height),
                (x + frame.joint.value, y + height),
                show_length(frame.joint, display),
                -6,
            ),
            Label((x, y + height + 16), "joint"),
        ]
        x += frame.joint.value + 15
    return Drawing(
        "case-spacers",
        "Spacer strips",
        x + 10,
        y + height + 25,
        tuple(items),
        true_scale=True,
        sizes=(frame.height, frame.distance, frame.joint),
    )
