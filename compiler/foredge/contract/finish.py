"""Finishes: what the finishing stage hands each coat, and what the coat gives back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal, Protocol

from msgspec import Meta

from foredge.contract.book import Book
from foredge.contract.look import Lies, Stuff
from foredge.contract.measures import Count, Duration, Part, Ratio, Volume, stock_name
from foredge.contract.options import PartOptions
from foredge.contract.ornament import ornament_keys
from foredge.contract.plugin import PartPlugin
from foredge.contract.surfaces import Left, Region, Surfaces, Target
from foredge.contract.work import StageResult
from foredge.problem import Path
from foredge.quantity import Quantity

CoatRole = Literal["seal", "ground", "colour", "leaf", "loose", "protect", "wax"]
"""What a coat is for: ``seal`` closes pores, ``loose`` sheds until something holds it down."""

_Targets = Annotated[
    Target | tuple[Target, ...],
    Meta(
        description="What it goes on: faces (the whole outside), front, back, spine, relief, "
        "edges (of the boards), lettering; one of them or a list. By its kind if left out."
    ),
]


class FinishOptions(PartOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What every finish can be told; give the subclass ``tag="..."``."""

    id: (
        Annotated[
            str,
            Meta(
                pattern="^[a-z][a-z0-9-]*$",
                description="A name of its own, needed where two items share a use.",
            ),
        ]
        | None
    ) = None
    on: _Targets | None = None
    leave: Annotated[
        tuple[Left, ...],
        Meta(description="What is masked and kept clean of it, such as joint or cloth."),
    ] = ()
    share: (
        Annotated[Ratio, Meta(description="How much of that area it covers; all if left out.")]
        | None
    ) = None
    coats: Annotated[Count, Meta(description="Coats; by its kind if left out.")] | None = None
    colour: Annotated[str, Meta(description="What the sheet calls its colour by.")] | None = None
    stock: (
        Annotated[str, stock_name("supply"), Meta(description="The bottle on the shelf.")] | None
    ) = None
    one_coat: (
        Annotated[Volume, Meta(description="What one coat took, where you measured it.")] | None
    ) = None
    next: (
        Annotated[Duration, Meta(description="Until the next coat, as the label has it.")] | None
    ) = None
    close: (
        Annotated[Duration, Meta(description="Until faces may touch, as the label has it.")] | None
    ) = None


@dataclass(frozen=True, slots=True)
class Coat:
    """A finish as the order of coats sees it; known from the spec and the tables alone.

    ``row`` is its row of the paints table; ``base`` is ``water`` or ``solvent``, ``gloss``
    ``matte``, ``satin`` or ``gloss``. ``needs_cover`` says what becomes of it when nothing
    goes over it, ``soluble`` whether water takes it off again when it is dry. ``lies`` and
    ``stuff`` say where it stays and what it looks like; ``metal`` that it shines.
    """

    key: str
    path: Path
    title: str
    row: str
    role: CoatRole
    base: str
    gloss: str
    regions: frozenset[Region]
    needs_cover: str = ""
    soluble: bool = False
    lies: Lies = "clear"
    stuff: Stuff = field(default_factory=Stuff)
    metal: bool = False


@dataclass(frozen=True, slots=True)
class FinishJob:
    """A finish to be put on.

    ``coat`` is what it described itself as. ``after`` are operations that must be done
    before; ``mask`` what is masked now, ``unmask`` whether the masks come off at its end.
    """

    book: Book
    part: Part[Any]
    coat: Coat
    surfaces: Surfaces
    after: tuple[str, ...]
    mask: tuple[str, ...] = ()
    unmask: bool = False


@dataclass(frozen=True, slots=True)
class FinishResult:
    """``done`` is the operation after which the next coat may go on, and ``waits`` how long it
    lies still then. ``film`` is what it adds to a face; ``may_close`` how long after it faces
    may touch, ``may_post`` how long until they may be packed tight."""

    work: StageResult
    done: str
    waits: Quantity
    film: Quantity
    may_close: Quantity
    may_post: Quantity


class Finish(PartPlugin, Protocol):
    """A coat, or several alike; kind ``finish``."""

    def describe(self, book: Book, part: Part[Any], key: str) -> Coat:
        """What the order of coats must know of it."""
        ...

    def apply(self, job: FinishJob) -> FinishResult:
        """Amounts, times and the work. The stage has seen to it that there is an area."""
        ...


def finish_keys(book: Book) -> tuple[str, ...]:
    """A key for each item under ``finishing``, none of them that of an embellishment."""
    keys = ornament_keys((*book.embellishment, *book.finishing))
    return keys[len(book.embellishment) :]


def coats_of(book: Book) -> tuple[Coat, ...]:
    """Every coat of the book, in the order they go on."""
    return tuple(
        part.plugin.describe(book, part, key)
        for part, key in zip(book.finishing, finish_keys(book), strict=True)
    )


def targets_of(options: FinishOptions, otherwise: Sequence[Target]) -> tuple[Target, ...]:
    """What the spec says the finish goes on, or ``otherwise``."""
    if options.on is None:
        return tuple(otherwise)
    return (options.on,) if isinstance(options.on, str) else options.on
