"""What edge treatments share: which edges, their area, colour, and clamping them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from msgspec import Meta

from foredge.contract import (
    Count,
    EdgeJob,
    PartOptions,
    Quantity,
    Text,
    Use,
    Wetting,
    cited,
    dry_in_room,
    listed,
    maximum,
    number,
    say,
    stock_name,
    total,
)

EdgeName = Literal["head", "tail", "fore-edge"]
ALL: tuple[EdgeName, ...] = ("tail", "fore-edge", "head")
"""In the order they are worked: head last, so that it is handled least."""

COLOUR = "edge-colour"


class EdgeOptions(PartOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What every edge treatment can be told; give the subclass ``tag="..."``."""

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
    edges: Annotated[
        tuple[EdgeName, ...],
        Meta(min_length=1, description="Which edges; all three if left out."),
    ] = ALL


class ColourOptions(EdgeOptions, frozen=True, kw_only=True):
    """What colour on edges can be told."""

    colour: Annotated[str, Meta(description="What the sheet calls its colour by.")] | None = None
    coats: Annotated[Count, Meta(description="Coats; by its kind if left out.")] | None = None
    stock: (
        Annotated[str, stock_name("supply"), Meta(description="The bottle on the shelf.")] | None
    ) = None


@dataclass(frozen=True, slots=True)
class Edges:
    """The edges one treatment is for, in working order. ``tag`` tells it from its like."""

    job: EdgeJob
    names: tuple[EdgeName, ...]
    tag: str
    area: Quantity

    def op(self, verb: str) -> str:
        """The id of an operation of it."""
        return f"text-block.{verb}-{self.tag}"

    def name(self, key: str) -> str:
        """The name of a quantity of it."""
        return f"text_block.edges.{self.tag}.{key}"

    @property
    def count(self) -> Quantity:
        """How many edges."""
        return number(len(self.names))

    @property
    def words(self) -> str:
        """``the edges``, ``the head``, ``tail and fore-edge``."""
        if len(self.names) == len(ALL):
            return "the edges"
        if len(self.names) == 1:
            return f"the {self.names[0]}"
        return listed(self.names)

    def turns(self) -> tuple[Text, ...]:
        """Which edge comes first and which last, where there are several."""
        if len(self.names) < 2:
            return ()
        return (say(f"{self.names[0].capitalize()} first and {self.names[-1]} last."),)


def edges_of(job: EdgeJob, plugin: str) -> Edges:
    """The edges that the spec names, and their area as planned."""
    options: Any = job.part.options
    names = tuple(edge for edge in ALL if edge in options.edges)
    tag = options.id or (
        f"{plugin}-edges" if len(names) == len(ALL) else "-".join((plugin, *names))
    )
    lengths = [length_of(job, edge) for edge in names]
    area = (total(lengths) * job.thickness).named(
        f"text_block.edges.{tag}.area",
        label=f"area, {plugin} edges",
        rule="length of the edges by the planned thickness of the block",
        source="geometry",
    )
    return Edges(job, names, tag, area)


def length_of(job: EdgeJob, edge: EdgeName) -> Quantity:
    """How long an edge is: the fore-edge as high as the leaf, the others as wide."""
    return job.height if edge == "fore-edge" else job.width


def colour(edges: Edges, share: Quantity | None = None) -> tuple[tuple[Quantity, ...], Use]:
    """What is mixed for all coats, with its spare, and what is used up of the paint."""
    book, options = edges.job.book, edges.job.part.options
    coverage, spare = book.table("paints", COLOUR, "coverage"), book.practice("waste-paint")
    coats = options.coats if options.coats is not None else book.table("paints", COLOUR, "coats")
    area = edges.area if share is None else edges.area * share
    least = book.default("paint-least")
    mixed = maximum(area * coverage * coats * (1 + spare), least).named(
        edges.name("mixed"),
        label="colour for the edges, mixed",
        rule="area by what a coat takes, by the coats, and the spare; no less than can be used",
        source=cited(coverage),
    )
    thinned = book.table("paints", COLOUR, "dilution")
    paint = (mixed / (1 + thinned)).named(
        edges.name("paint"),
        label="paint for the edges",
        rule="parts of water to one of paint",
        source=cited(thinned),
    )
    tint = f", {options.colour}" if options.colour else ""
    title = book.words("paints", COLOUR, "title")
    return (mixed, paint), Use(f"{title}{tint}", paint, options.stock, edges.words)


def mix(mixed: Quantity, paint: Quantity) -> Text:
    """The line that thins the colour."""
    return say("Thin {paint} of paint with {water} of water; body colour sticks the leaves.",
               paint=paint, water=mixed - paint)  # fmt: skip


def clamp() -> Text:
    """The line that shuts the block, so that nothing creeps in."""
    return say("Clamp the block hard between two boards, flush with the edge you work on.")


def dried(edges: Edges, figure: str) -> Quantity:
    """How long colour on an edge dries in the book's room."""
    return dry_in_room(edges.job.book, edges.job.book.table("drying", COLOUR, figure))


def wetted(edges: Edges) -> tuple[Wetting, ...]:
    """Water on the block's edges."""
    return (Wetting("block-edges", "edge", None, dried(edges, "cure")),)
