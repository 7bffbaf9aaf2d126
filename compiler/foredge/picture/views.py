"""The closed book from the front, the back and the spine, as items in millimetres of the book."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from foredge.contract import Item, Line, Point, Shape, Side
from foredge.picture.colours import FLAT, Colour, lit, written
from foredge.picture.edges import page_edges
from foredge.picture.face import Faces
from foredge.picture.frame import Frame
from foredge.picture.place import Box, Place

_STRIPS = 9
_ROUND_MM = 0.6


@dataclass(frozen=True, slots=True)
class View:
    """What is seen from one side: its items lie in 0 to ``width``, 0 to ``height``, but for
    what stands out by ``left`` and ``right`` mm."""

    title: str
    width: float
    height: float
    items: tuple[Item, ...]
    left: float = 0.0
    right: float = 0.0


def cover(faces: Faces, frame: Frame, on: Side) -> View:
    """The book lying closed, seen from above its front, or from below its back."""
    before, wide, high = frame.before_board, frame.board_width, frame.board_height
    whole = before + wide
    seen = Box(-before, 0.0, wide, high)
    board = Place(before, 0.0, 1.0) if on == "front" else Place(0.0, 0.0, 1.0, mirror=wide)
    spine = min(before * 0.45, 4.0)
    joint = faces.joint()
    near, far = (0.0, before) if on == "front" else (whole, wide)
    step = spine if on == "front" else -spine
    items: list[Item] = [
        *strips(near, near + step, high, faces.ground("spine"), 0.5, 0.74),
        *_groove(min(near + step, far), max(near + step, far), high, joint),
    ]
    items += board.items(faces.painted(on, wide, high))
    items += board.items(faces.closure(on, seen))
    title = "Front" if on == "front" else "Back"
    return View(title, whole, high, tuple(items))


def spine_view(faces: Faces, frame: Frame) -> View:
    """The book standing, its spine towards you: its front is on the right."""
    thick, high, wide = frame.thick, frame.board_height, min(frame.spine, frame.thick)
    start = (thick - wide) / 2
    items: list[Item] = []
    left, right = _profile(faces, "back", high), _profile(faces, "front", high)
    items += _silhouette(left, 0.0, -1.0, faces, "back", high)
    items += _silhouette(right, thick, 1.0, faces, "front", high)
    joint = faces.joint()
    items += strips(0.0, start, high, faces.ground("back"), 0.62, 0.4)
    items += strips(start + wide, thick, high, faces.ground("front"), 0.36, 0.5)
    items += strips(start, start + wide, high, faces.ground("spine"), 0.8, 0.6)
    seen = Box(-start, 0.0, thick - start, high)
    place = Place(start, 0.0, 1.0)
    painted = list(faces.painted("spine", wide, high))
    # The strips stand for the covering: the flat one would hide how the spine turns away.
    items += place.items(painted[_covering(painted) :])
    items += place.items(faces.closure("spine", seen))
    for x in (start, start + wide):
        items.append(Line(((x, 0.0), (x, high)), "fill", colour=written(lit(joint, 0.34)),
                          width=0.35))  # fmt: skip
    return View("Spine", thick, high, tuple(items), _most(left), _most(right))


def _covering(painted: list[Item]) -> int:
    return 1 if painted and isinstance(painted[0], Shape) else 0


def fore_edge(faces: Faces, frame: Frame) -> View:
    """The book standing, its fore-edge towards you: its front is on the left."""
    thick, high, board = frame.thick, frame.board_height, frame.covered
    left, right = _profile(faces, "front", high), _profile(faces, "back", high)
    items: list[Item] = [
        *_silhouette(left, 0.0, -1.0, faces, "front", high),
        *_silhouette(right, thick, 1.0, faces, "back", high),
    ]
    gap = Box(board * 0.6, 0.5, thick - board * 0.6, high - 0.5)
    items.append(Shape((gap.ring,), colour=written(lit(faces.ground("spine"), 0.18))))
    middle, wide = thick / 2, min(frame.block_edge, thick - 2 * board)
    block = Box(middle - wide / 2, frame.head, middle + wide / 2, high - frame.tail)
    items += page_edges(faces, "fore-edge", block, along="height")
    for at, on in ((0.0, "front"), (thick - board, "back")):
        ground = faces.ground("front" if on == "front" else "back")
        items += strips(at, at + board, high, ground, 0.8, 0.5)
    items += faces.closure("fore-edge", Box(0.0, 0.0, thick, high))
    return View("Fore-edge", thick, high, tuple(items), _most(left), _most(right))


def strips(
    start: float, end: float, height: float, colour: Colour, first: float, last: float
) -> Iterator[Item]:
    """A face that turns away: upright strips from the tone ``first`` to the tone ``last``."""
    if abs(end - start) < 1e-6:
        return
    left, right = min(start, end), max(start, end)
    tones = (first, last) if end > start else (last, first)
    for place in range(_STRIPS):
        x = left + (right - left) * place / _STRIPS
        tone = tones[0] + (tones[1] - tones[0]) * place / (_STRIPS - 1)
        # Every strip reaches to the end, so that no gap between two can show.
        yield Shape((Box(x, 0.0, right, height).ring,), colour=written(lit(colour, tone)))


def _groove(left: float, right: float, height: float, colour: Colour) -> Iterator[Item]:
    """The joint: down on the left, away from the light, and up into it on the right."""
    count = 12
    for place in range(count):
        x = left + (right - left) * place / count
        slope = math.sin(math.tau * (place + 0.5) / count)
        tone = FLAT - 0.34 * slope if slope > 0 else FLAT - 0.16 * slope
        yield Shape((Box(x, 0.0, right, height).ring,), colour=written(lit(colour, tone)))


def _profile(faces: Faces, on: Side, height: float) -> tuple[Point, ...]:
    model = faces.models.get(on)
    return model.profile(height).heights if model is not None else ()


def _most(profile: Iterable[Point]) -> float:
    return max((high for _, high in profile), default=0.0)


def _silhouette(
    profile: tuple[Point, ...], x: float, way: float, faces: Faces, on: Side, height: float
) -> Iterator[Item]:
    """The relief as it stands out beside the board."""
    if _most(profile) <= 0:
        return
    colour = faces.relief_colour(on)
    for share, tone in ((1.0, 0.5 if way > 0 else 0.72), (0.55, 0.42 if way > 0 else 0.8)):
        out = tuple((x + way * share * high, y) for y, high in profile)
        ring = ((x, profile[0][0]), *out, (x, profile[-1][0]))
        yield Shape((ring,), colour=written(lit(colour, tone)))
