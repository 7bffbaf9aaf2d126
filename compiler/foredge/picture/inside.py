"""The opened cover, with its end-papers; and the edges of the leaves."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal

from foredge.contract import Inside, Item, Line, Shape
from foredge.picture.colours import FLAT, colour_of, lit, written
from foredge.picture.edges import edge_look, page_edges, stuff
from foredge.picture.face import Faces
from foredge.picture.frame import Frame
from foredge.picture.place import Box, Place, Ring
from foredge.picture.texture import textured
from foredge.picture.views import View, strips

_LEANS = 4.5
"""mm of the opened block's edges that are seen from above, at most."""


def opened(faces: Faces, frame: Frame) -> View:
    """The cover laid open to the left: its inside, the hinge, and the first leaf."""
    board, joint, high = frame.board_width, frame.joint, frame.board_height
    fold = board + joint
    lean = min(_LEANS, 0.35 * frame.block_edge)
    width = fold + max(board, frame.block_width + lean + 1.0)
    items: list[Item] = [
        *_board(faces, "front", Box(0.0, 0.0, board, high)),
        *_board(faces, "back", Box(fold + joint * 0.4, 0.0, width, high)),
        *strips(board - 0.5, fold + joint * 0.4, high, faces.joint(), 0.42, 0.3),
        *_block(faces, frame, fold, lean),
        *_end_paper(faces, frame, fold),
        *_hinge(faces, frame, fold),
    ]
    return View("Cover opened", width, high, tuple(items))


def _board(faces: Faces, on: Literal["front", "back"], box: Box) -> Iterator[Item]:
    """The turned-in covering round the paste-down."""
    colour = colour_of(faces.covering(on))
    yield Shape((box.ring,), colour=written(lit(colour, FLAT * 0.94)))
    yield from textured(faces.covering(on).texture, colour, box.ring, faces.error)
    yield Line(box.ring, "fill", True, written(lit(colour, 0.5)), 0.5)


def _end_paper(faces: Faces, frame: Frame, fold: float) -> Iterator[Item]:
    """The paste-down and the fly-leaf, one folio, and the pattern on the paste-down."""
    paper = stuff(faces, "end-paper", "end-paper")
    colour = colour_of(paper)
    wide, high = min(frame.paste_width, fold - 2.0), min(frame.paste_height, frame.board_height)
    top = frame.head + (frame.block_height - high) / 2
    left = Box(fold - wide, top, fold, top + high)
    leaf = Box(fold, frame.head, fold + frame.block_width, frame.board_height - frame.tail)
    yield Line(_moved(leaf.ring, 0.4), "fill", True, written(lit(colour, 0.3)), 0.5)
    for box in (left, leaf):
        yield Shape((box.ring,), colour=written(colour))
    edge = written(lit(colour, 0.55))
    yield from (Line(box.ring, "fill", True, edge, 0.25) for box in (left, leaf))
    place = Place(fold - wide, top, 1.0, mirror=wide)
    for look in faces.looks("paste-down", "pattern"):
        seen = Box(0.0, 0.0, wide, high)
        tinted = written(colour_of(look.stuff))
        dark = written(lit(colour_of(look.stuff), 0.36))
        for piece in look.pieces:
            rings = tuple(cut for ring in piece if len(cut := seen.cut(ring)) > 2)
            if rings:
                lines = (Line(ring, "fill", True, dark, 0.35) for ring in rings)
                yield from place.items((Shape(rings, colour=tinted), *lines))


def _hinge(faces: Faces, frame: Frame, fold: float) -> Iterator[Item]:
    """The fold: shaded on both sides, covered by cloth where the end-papers have some."""
    paper = colour_of(stuff(faces, "end-paper", "end-paper"))
    top, foot = frame.head, frame.board_height - frame.tail
    cloth = next((one.stuff for one in faces.build.whole.looks
                  if isinstance(one, Inside) and one.what == "joint"), None)  # fmt: skip
    reach = max(frame.joint * 1.5, 10.0)
    if cloth is not None:
        box = Box(fold - reach, top, fold + reach * 0.8, foot)
        paper = colour_of(cloth)
        yield Shape((box.ring,), colour=written(paper))
        yield from textured(cloth.texture, paper, box.ring, faces.error)
    count = 8
    for place in range(count):
        near = 1 - place / count
        left, right = fold - frame.joint * 0.9 * near, fold + frame.joint * 0.7 * near
        tone = FLAT - 0.3 * math.pow((place + 1) / count, 1.5)
        box = Box(left, top, right, foot)
        yield Shape((box.ring,), colour=written(lit(paper, tone)))
    yield Line(((fold, top), (fold, foot)), "fill", colour=written(lit(paper, 0.2)), width=0.35)


def _block(faces: Faces, frame: Frame, fold: float, lean: float) -> Iterator[Item]:
    """The edges of the leaves under the first one: the fore-edge, and tail or head."""
    right = fold + frame.block_width
    top, foot = frame.head, frame.board_height - frame.tail
    ends = "head" if edge_look(faces, "head") and not edge_look(faces, "tail") else "tail"
    deep = min(lean, 0.8 * (frame.tail if ends == "tail" else frame.head))
    if deep > 0.4:
        box = (
            Box(fold + 1.0, foot - 0.2, right + lean * 0.7, foot + deep)
            if ends == "tail"
            else Box(fold + 1.0, top - deep, right + lean * 0.7, top + 0.2)
        )
        yield from page_edges(faces, ends, box, along="width")
    yield from page_edges(faces, "fore-edge", Box(right - 0.2, top, right + lean, foot), "height")


def _moved(ring: Ring, by: float) -> Ring:
    return tuple((x + by, y + by) for x, y in ring)
