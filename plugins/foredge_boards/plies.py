"""The layers of a laminated board: what they are, how they lie, what is wrong with the stack."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract import (
    Book,
    Figures,
    Path,
    Problem,
    Quantity,
    board_figures,
    coated_sides,
    crush,
    number,
    stock_name,
    warning,
)

LAMINATING = "Book_Arts-L, March 2006, on laminating boards"
COATED = "Designloft, 'Experimenting with chipboard', 2010"


class Layer(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """One layer of a board."""

    stock: Annotated[str, stock_name("board", "sheet"), Meta(description="The card on the shelf.")]
    grain: Annotated[
        Literal["along", "across"],
        Meta(description="Grain (of corrugated board the flutes) along the spine, or across it."),
    ] = "along"
    coated: (
        Annotated[
            Literal["outside", "inside"],
            Meta(description="Where the coated face looks; paired coat to coat if left out."),
        ]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Ply:
    """A layer, outermost first. ``outer`` and ``inner`` say whether that face is coated."""

    stock: str | None
    figures: Figures
    across: bool
    outer: bool
    inner: bool
    corrugated: bool
    pressed: Quantity

    @property
    def same(self) -> tuple[str | None, str, bool]:
        """What two plies share that are cut as one kind of piece."""
        return self.stock, self.figures.row, self.across


def plies_of(book: Book, layers: Sequence[Layer], row: str) -> tuple[Ply, ...]:
    """The layers as listed, from the outside of the book inwards."""
    return tuple(_ply(book, layer, row, at, len(layers)) for at, layer in enumerate(layers))


def repeated(book: Book, card: str | None, row: str, count: int) -> tuple[Ply, ...]:
    """``count`` layers of one card, paired coat to coat."""
    plies = []
    for at in range(count):
        ply = _plain(book, card, row)
        plies.append(_faced(ply, coated_sides(book, card, ply.figures.row), None, at, count))
    return tuple(plies)


def _ply(book: Book, layer: Layer, row: str, at: int, count: int) -> Ply:
    ply = replace(_plain(book, layer.stock, row), across=layer.grain == "across")
    sides = coated_sides(book, layer.stock, ply.figures.row)
    return _faced(ply, sides, layer.coated, at, count)


def _plain(book: Book, stock: str | None, row: str) -> Ply:
    figures = board_figures(book, stock, row)
    lost = crush(book, figures.row)
    pressed = figures.thickness if lost is None else figures.thickness * (1 - lost)
    return Ply(stock, figures, False, False, False, lost is not None, pressed)


def _faced(ply: Ply, sides: int, asked: str | None, at: int, count: int) -> Ply:
    """Which faces are coated; unasked, layers are paired coat to coat, bare sides out."""
    if sides != 1:
        return replace(ply, outer=sides == 2, inner=sides == 2)
    inside = asked == "inside" if asked else at % 2 == 0 and (at < count - 1 or count == 1)
    return replace(ply, outer=not inside, inner=inside)


def stack_thickness(book: Book, plies: Sequence[Ply]) -> Quantity:
    """Pressed layers and the glue between them, with the spread of hand-laminated board."""
    whole = plies[0].pressed
    if len({ply.same for ply in plies}) == 1:
        whole = number(len(plies)) * whole
    else:
        for ply in plies[1:]:
            whole = whole + ply.pressed
    whole = whole + number(len(plies) - 1) * book.practice("glue-film")
    return whole * (1 + book.practice("board-spread"))


def stack_problems(path: Path, plies: Sequence[Ply]) -> Iterator[Problem]:
    """What makes a stack pull, twist or come apart."""
    mirrored = [a.same == b.same for a, b in zip(plies, reversed(plies), strict=True)]
    if not all(mirrored):
        yield warning(
            path,
            f"the {len(plies)} layers are not the same from both sides",
            "board-not-symmetric",
            consequence="The board pulls towards its thinner side",
            remedy="Order them A-B-A, the same card at the same depth from each face",
            source=LAMINATING,
        )
    if len(plies) % 2 == 0 and len({ply.across for ply in plies}) == 2:
        yield warning(
            path,
            f"the grain crosses in a stack of {len(plies)} layers, an even number",
            "board-cross-grain-even",
            consequence="The board twists like a saddle",
            remedy="All layers along the spine, or an odd number with the middle one across",
            source=LAMINATING,
        )
    yield from _coat_problems(path, plies)


def _coat_problems(path: Path, plies: Sequence[Ply]) -> Iterator[Problem]:
    unpaired = sum(above.inner != below.outer for above, below in pairwise(plies))
    if unpaired:
        yield warning(
            path,
            f"in {unpaired} of {len(plies) - 1} joins a coated face meets a bare one",
            "board-coat-unpaired",
            consequence="Glue wets only the bare side, and the board warps however it is pressed",
            remedy="Take an even number of layers and pair them coat to coat, or scuff the coat",
            source=COATED,
        )
    if len(plies) > 1 and (plies[0].outer or plies[-1].inner):
        yield warning(
            (*path, 0 if plies[0].outer else len(plies) - 1),
            "a coated face lies on the outside of the board",
            "board-coat-outward",
            consequence="Covering and paste-down do not hold on it",
            remedy="Turn the layer so that its bare side looks out, or scuff the coat",
            source=COATED,
        )
