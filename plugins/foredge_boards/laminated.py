"""Boards laminated from packaging card, with or without a corrugated core."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated, Any

from msgspec import Meta

from foredge.contract import (
    BoardsJob,
    BoardsResult,
    Book,
    Length,
    Origin,
    Part,
    PartOptions,
    Piece,
    Problem,
    Quantity,
    StageResult,
    ceil,
    count,
    error,
    given,
    number,
    stock_name,
    table_row,
    total,
)
from foredge_boards.lamination import cure, cut_layers, laminate, wrap_edges
from foredge_boards.plies import Layer, Ply, plies_of, repeated, stack_problems, stack_thickness
from foredge_boards.stack_drawing import stack_drawing


class LaminatedOptions(PartOptions, frozen=True, kw_only=True, tag="laminated"):
    """Layers of card, glued on both meeting faces and cured under weight."""

    layers: Annotated[
        tuple[Layer, ...], Meta(description="The layers, from the outside of the book inwards.")
    ] = ()
    card: (
        Annotated[
            str,
            stock_name("board", "sheet"),
            Meta(description="One card for every layer, instead of layers."),
        ]
        | None
    ) = None
    thickness: (
        Annotated[
            Length, Meta(description="How thick the board is to be; sets the count of layers.")
        ]
        | None
    ) = None
    material: Annotated[
        str, table_row("board"), Meta(description="Row of the board table for card without one.")
    ] = "carton"
    adhesive: Annotated[
        str, table_row("adhesives"), Meta(description="What the layers are glued with.")
    ] = "pva"
    edge_wrap: (
        Annotated[Length, Meta(description="Lap of the paper round the edge of a corrugated core.")]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Laminated:
    """Blanks are cut and laminated first; the board is trimmed to size once it is measured."""

    kind: str = "boards"
    name: str = "laminated"
    title: str = "Laminated board"
    options: type[LaminatedOptions] = LaminatedOptions

    def thickness(self, book: Book, part: Part[Any]) -> Quantity:
        """Pressed layers and their glue, controlled by the count of layers."""
        plies, layers = _plies(book, part.options)
        return given(stack_thickness(book, plies), layers)

    def make(self, job: BoardsJob) -> BoardsResult:
        """Blanks of every layer, laminating, curing; edges wrapped where the core is open."""
        book, options = job.book, job.part.options
        plies, layers = _plies(book, options)
        blanks = _blanks(job, plies)
        after = (
            cut_layers(job, plies, blanks),
            laminate(job, plies, blanks, options.adhesive),
            cure(job, plies),
        )
        work = StageResult(
            quantities=(layers, _mass(job, plies)),
            pieces=(*_boards(job), *blanks),
            operations=after,
            drawings=(stack_drawing(plies),),
            problems=(
                *_option_problems(job.part, plies),
                *stack_problems((*job.part.path, "layers" if options.layers else "use"), plies),
            ),
        )
        if not any(ply.corrugated for ply in plies):
            return BoardsResult(work, ready=after[-1].id)
        lap = options.edge_wrap if options.edge_wrap is not None else book.default("edge-wrap-lap")
        wrapping = wrap_edges(job, book.size(lap), options.adhesive)
        return BoardsResult(work + wrapping, after[-1].id, dressed=wrapping.operations[-1].id)


def _plies(book: Book, options: LaminatedOptions) -> tuple[tuple[Ply, ...], Quantity]:
    """The stack, and how many layers it has, with what decided that."""
    if options.layers:
        plies = plies_of(book, options.layers, options.material)
        origin = Origin("spec", ("case", "boards", "layers"), f"{len(plies)} layers")
        return plies, _counted(count(len(plies), "case.layers", origin))
    target = options.thickness if options.thickness is not None else book.default("board-thickness")
    one = repeated(book, options.card, options.material, 1)[0].pressed
    wanted = ceil(target / one)
    plies = repeated(book, options.card, options.material, max(1, int(wanted.value)))
    # Once it is cut the count stays, however thick the card turns out: hence not `wanted` itself.
    decided = count(len(plies), "layers cut", Origin("default", text="target over card"))
    return plies, _counted(given(decided, target, one))


def _counted(layers: Quantity) -> Quantity:
    return layers.named(
        "case.layers",
        label="layers in one board",
        rule="the thickness wanted over one card, or as listed",
        source="geometry",
    )


def _option_problems(part: Part[Any], plies: Sequence[Ply]) -> list[Problem]:
    options: LaminatedOptions = part.options
    found = []
    if options.layers and (options.card is not None or options.thickness is not None):
        extra = "card" if options.card is not None else "thickness"
        found.append(
            error(
                (*part.path, extra),
                f"the boards name both layers and {extra}",
                "boards-twice-said",
                remedy=f"Keep layers and take {extra} out, or the other way round",
                on_key=True,
            )
        )
    if len(plies) == 1:
        found.append(
            error(
                (*part.path, "layers" if options.layers else "use"),
                f"one layer of {plies[0].figures.thickness.value:.3g} mm is no laminated board",
                "board-single-layer",
                remedy="Write use: bought for a single layer, or ask for more thickness",
            )
        )
    return found


_BLANK = "cut before the gates: the high end of the estimate and a trim allowance"


def _blanks(job: BoardsJob, plies: Sequence[Ply]) -> tuple[Piece, ...]:
    """Layers as blanks, one kind of piece for each card and direction of the grain."""
    width = _blank_size(job, job.width, "case.layer.width", "layer blank, width")
    height = _blank_size(job, job.height, "case.layer.height", "layer blank, height")
    kinds = Counter(ply.same for ply in plies)
    pieces = []
    for at, (kind, times) in enumerate(kinds.items(), 1):
        suffix = "" if len(kinds) == 1 else f".{at}"
        pieces.append(_layer(job, kind, "layer" + suffix, 2 * times, width, height))
        if job.spine is not None:
            strip = _blank_size(job, job.spine, "case.spine_layer.width", "spine blank, width")
            pieces.append(_layer(job, kind, "spine_layer" + suffix, times, strip, height))
    return tuple(pieces)


def _blank_size(job: BoardsJob, size: Quantity, name: str, label: str) -> Quantity:
    blank = job.book.blank(size, job.book.default("blank-trim"))
    return blank.named(name, label=label, rule=_BLANK, source="common practice")


def _layer(
    job: BoardsJob,
    kind: tuple[str | None, str, bool],
    name: str,
    times: int,
    width: Quantity,
    height: Quantity,
) -> Piece:
    stock, row, across = kind
    board = name.startswith("layer")
    return Piece(
        f"case.{name}",
        f"{'Board' if board else 'Spine'} layer, {stock or row}",
        number(times),
        width,
        height,
        "width" if across else "height",
        stock=stock,
        material="" if stock else job.book.words("board", row, "title").lower(),
        blank=True,
        trimmed_to="case.board" if board else "case.spine",
    )


def _boards(job: BoardsJob) -> tuple[Piece, ...]:
    """What is trimmed out of the laminate."""
    made = "the laminated board"
    board = Piece("case.board", "Board", number(2), job.width, job.height, "height", material=made)
    if job.spine is None:
        return (board,)
    spine = Piece(
        "case.spine", "Spine piece", number(1), job.spine, job.height, "height", material=made
    )
    return board, spine


def _mass(job: BoardsJob, plies: Sequence[Ply]) -> Quantity:
    """Card and dried glue of both boards."""
    table = job.book.table
    adhesive = job.part.options.adhesive
    dried = table("adhesives", adhesive, "spread") * (1 - table("adhesives", adhesive, "water"))
    card = total([ply.figures.grammage for ply in plies])
    sheet = card + number(2 * (len(plies) - 1)) * dried
    return (number(2) * job.width * job.height * sheet).named(
        "case.boards.mass",
        label="mass of both boards",
        rule="layers and dried glue, by area",
        source="geometry",
    )


PLUGIN = Laminated()
