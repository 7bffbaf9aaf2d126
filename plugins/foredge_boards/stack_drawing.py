"""The layers of a board seen from the edge: order, coats, grain."""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import Drawing, Item, Label, Line, Shape
from foredge_boards.plies import Ply

WIDTH, STEP, BODY = 90.0, 9.0, 5.0
"""mm: length of a layer, distance of layers, height of a layer; not to scale."""


def stack_drawing(plies: Sequence[Ply]) -> Drawing:
    """Outside of the book at the top; a coated face is shaded."""
    items: list[Item] = [Label((10, 10), "outside of the book")]
    for at, ply in enumerate(plies):
        top = 15 + at * STEP
        box = ((10.0, top), (10 + WIDTH, top), (10 + WIDTH, top + BODY), (10.0, top + BODY))
        items.append(Line(box, "outline", closed=True))
        items += [_coat(top if outer else top + BODY - 1) for outer in _coats(ply)]
        items.append(Label((15 + WIDTH, top + BODY - 1), _words(at + 1, ply)))
    bottom = 15 + len(plies) * STEP + 4
    items.append(Label((10, bottom), "inside of the book"))
    return Drawing("case-board-stack", "Layers of a board", WIDTH + 110, bottom + 8, tuple(items))


def _coats(ply: Ply) -> list[bool]:
    return [outer for outer, coated in ((True, ply.outer), (False, ply.inner)) if coated]


def _coat(top: float) -> Shape:
    ring = ((10.0, top), (10 + WIDTH, top), (10 + WIDTH, top + 1), (10.0, top + 1))
    return Shape((ring,), shade=0.6)


def _words(at: int, ply: Ply) -> str:
    grain = "flutes" if ply.corrugated else "grain"
    return f"{at}  {ply.stock or ply.figures.row}, {grain} {'across' if ply.across else 'along'}"
