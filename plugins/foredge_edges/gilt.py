"""Gilt: metal leaf on smooth, sized edges, burnished through paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    EdgeJob,
    EdgeLook,
    Operation,
    Problem,
    Quantity,
    StageResult,
    Stuff,
    Use,
    cautions,
    ceil,
    choose,
    cited,
    dry_in_room,
    floor,
    listed,
    maximum,
    number,
    say,
    table_row,
    total,
    warning,
)
from foredge_edges.bench import EdgeOptions, Edges, clamp, edges_of, length_of, wetted

SIZE = "leaf-size"


class GiltOptions(EdgeOptions, frozen=True, kw_only=True, tag="gilt"):
    """Edges with metal leaf."""

    leaf: Annotated[
        str, table_row("leaf"), Meta(description="Row of the leaf table, by its metal and size.")
    ] = "gold"


@dataclass(frozen=True, slots=True)
class Gilt:
    """Leaf lies only on an edge as smooth as glass."""

    kind: str = "edge"
    name: str = "gilt"
    title: str = "Gilt edges"
    options: type[GiltOptions] = GiltOptions

    def treat(self, job: EdgeJob) -> StageResult:
        """Clamp, scrape, size, lay, burnish."""
        edges, book = edges_of(job, self.name), job.book
        size, leaves = _size(edges), _leaves(edges)
        row = job.part.options.leaf
        operation = Operation(
            edges.op("gild"),
            f"Gild {edges.words}",
            (
                clamp(),
                say("Scrape and sand each edge until it shines; wipe every grain of dust off."),
                say("Close windows and doors: a breath lifts the leaf."),
                say("Brush {size} of size on in all, one thin coat, and let it turn tacky.",
                    size=size),
                say("Cut strips a little wider than the edge; leaves to cut up: {leaves}.",
                    leaves=leaves),
                say("Lay strip by strip, each {lap} over the last; press with cotton wool.",
                    lap=book.table("leaf", row, "lap")),
                say("When the size is hard, burnish through thin paper, along the leaves."),
                say("Take the clamps off and flick the leaves apart."),
            ),
            book.practice("hand-edge") * edges.count + leaves * book.practice("hand-leaf"),
            after=(job.trimmed,),
            wait=dry_in_room(book, book.table("drying", SIZE, "next")),
            waiting="clamped, until the size is hard",
            resources=("hands", "press"),
            cautions=("press-pinch", "blade", *cautions(book, "paints", SIZE)),
            uses=(
                Use(book.words("paints", SIZE, "title"), size, note=edges.words),
                Use(book.words("leaf", row, "title"), leaves, note=f"leaves, {edges.words}"),
            ),
            wettings=wetted(edges),
            tools=("two boards", "clamps", "scraper", "fine sandpaper", "soft brush",
                   "cotton wool", "burnisher"),
        )  # fmt: skip
        return StageResult(
            quantities=(edges.area, size, leaves),
            operations=(operation,),
            looks=(EdgeLook(edges.names, Stuff(row=row), "metal"),),
            problems=_rough(job, edges),
        )


def _size(edges: Edges) -> Quantity:
    book = edges.job.book
    coverage = book.table("paints", SIZE, "coverage")
    return (edges.area * coverage * (1 + book.practice("waste-paint"))).named(
        edges.name("size"),
        label="size for the edges",
        rule="area by what a coat takes, and the spare",
        source=cited(coverage),
    )


def _leaves(edges: Edges) -> Quantity:
    """Leaves by the strips one gives: as many as fit side by side, or several to a width."""
    job, book, row = edges.job, edges.job.book, edges.job.part.options.leaf
    side, lap = book.table("leaf", row, "side"), book.table("leaf", row, "lap")
    wide = job.thickness + 2 * book.default("edge-leaf-over")
    shown = side - lap
    strips = total([ceil(length_of(job, edge) / shown) for edge in edges.names])
    from_one = maximum(floor(side / wide), number(1))
    across = choose(wide, side, ceil(wide / shown), number(1))
    return ceil(strips * across / from_one * (1 + book.table("leaf", row, "waste"))).named(
        edges.name("leaves"),
        label="leaves of metal for the edges",
        rule="strips along each edge, lapped, by the strips a leaf gives, and what is lost",
        source=cited(side),
    )


def _rough(job: EdgeJob, edges: Edges) -> tuple[Problem, ...]:
    rough = [edge for edge in edges.names if edge not in job.cut]
    if not rough:
        return ()
    return (
        warning(
            job.part.path,
            f"metal leaf is to go on {listed(rough)}, which nothing trims",
            "edge-uneven",
            consequence="Leaf breaks over every step between the leaves and falls in between",
            remedy="Trim these edges, or colour them instead",
            source="common practice",
        ),
    )


PLUGIN = Gilt()
