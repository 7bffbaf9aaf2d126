"""Colour: a thin stain on the clamped edges."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import EdgeJob, EdgeLook, Operation, StageResult, Stuff, cautions, say
from foredge_edges.bench import (
    COLOUR,
    ColourOptions,
    clamp,
    colour,
    dried,
    edges_of,
    mix,
    wetted,
)


class EdgeColourOptions(ColourOptions, frozen=True, kw_only=True, tag="colour"):
    """Stained edges."""


@dataclass(frozen=True, slots=True)
class Colour:
    """Thin colour, nearly dry on the sponge, so that it stays on the edge."""

    kind: str = "edge"
    name: str = "colour"
    title: str = "Coloured edges"
    options: type[EdgeColourOptions] = EdgeColourOptions

    def treat(self, job: EdgeJob) -> StageResult:
        """Clamp, smooth, stain, release."""
        edges, book = edges_of(job, self.name), job.book
        (mixed, paint), use = colour(edges)
        coats = job.part.options.coats
        coats = coats if coats is not None else book.table("paints", COLOUR, "coats")
        between = dried(edges, "next")
        operation = Operation(
            edges.op("colour"),
            f"Colour {edges.words}",
            (
                clamp(),
                say("Sand each edge smooth along the leaves; brush the dust off."),
                mix(mixed, paint),
                say(
                    "Wipe it on with a sponge that hardly drips, from the middle to the ends: "
                    "{coats} coats, {next} apart.",
                    coats=coats,
                    next=between,
                ),
                *edges.turns(),
                say("When it is dry, take the clamps off and flick the leaves apart."),
            ),
            book.practice("hand-edge") * edges.count,
            after=(job.trimmed,),
            wait=between * coats,
            waiting="clamped, each coat before the next",
            resources=("hands", "press"),
            cautions=("press-pinch", *cautions(book, "paints", COLOUR)),
            uses=(use,),
            wettings=wetted(edges),
            tools=("two boards", "clamps", "fine sandpaper", "sponge"),
        )
        seen = EdgeLook(edges.names, Stuff(job.part.options.colour or "", "oxblood"), "even")
        return StageResult(
            quantities=(edges.area, mixed, paint), operations=(operation,), looks=(seen,)
        )


PLUGIN = Colour()
