"""Which face of a board pulls harder, by what is glued to it.

A board curls round the face that has more layers on it, or wetter ones (E. Diehl, Bookbinding:
Its Background and Technique, 1946, on lining boards). The score is simple: one sheet of paper
over the whole board is 1, a covering has the weight its row of the cloth table gives it, and
each counts by the share of the board it lies on. The weights are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from foredge.contract import Build, Quantity, number, total
from foredge.contract.moisture import Balance, Layer

BOARDS = ("board-front", "board-back")


def balances(build: Build) -> tuple[Balance, ...]:
    """Front and back; nothing for a book without boards."""
    named = {one.name: one for one in build.whole.quantities}
    sides = [named.get(f"case.board.{side}") for side in ("width", "height")]
    if sides[0] is None or sides[1] is None:
        return ()
    area = sides[0] * sides[1]
    return tuple(_balance(build, board, area) for board in BOARDS)


def _balance(build: Build, board: str, area: Quantity) -> Balance:
    outside = tuple(_layers(build, board, "outside", area))
    inside = tuple(_layers(build, board, "inside", area))
    return Balance(board, outside, inside, _sum(outside), _sum(inside))


def _layers(build: Build, board: str, side: str, area: Quantity) -> Iterator[Layer]:
    for operation in build.order:
        for one in operation.wettings:
            if one.what != board or one.side != side or one.pull is None or one.area is None:
                continue
            yield Layer(one.layer, operation.id, one.pull * one.area / area)


def _sum(layers: tuple[Layer, ...]) -> Quantity:
    return total([layer.pull for layer in layers]) if layers else number(0)
