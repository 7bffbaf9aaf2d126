"""Sprinkled: drops of thin colour flicked on the clamped edges."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import EdgeJob, EdgeLook, Operation, StageResult, Stuff, cautions, say
from foredge_edges.bench import COLOUR, ColourOptions, clamp, colour, dried, edges_of, mix, wetted


class SprinkledOptions(ColourOptions, frozen=True, kw_only=True, tag="sprinkled"):
    """Sprinkled edges."""


@dataclass(frozen=True, slots=True)
class Sprinkled:
    """Forgiving: no drop shows where the next one falls."""

    kind: str = "edge"
    name: str = "sprinkled"
    title: str = "Sprinkled edges"
    options: type[SprinkledOptions] = SprinkledOptions

    def treat(self, job: EdgeJob) -> StageResult:
        """Clamp, sprinkle, release."""
        edges, book = edges_of(job, self.name), job.book
        (mixed, paint), use = colour(edges, book.practice("edge-sprinkle-share"))
        operation = Operation(
            edges.op("sprinkle"),
            f"Sprinkle {edges.words}",
            (
                clamp(),
                say("Cover boards and table; only the edge may be seen."),
                mix(mixed, paint),
                say("Knock a loaded toothbrush off on waste paper until the drops come fine."),
                say("Draw a knife back over it, two hands' breadths above the edge."),
                say("Stop while it still looks too little; let it dry before you turn the block."),
            ),
            book.practice("hand-edge") * edges.count,
            after=(job.trimmed,),
            wait=dried(edges, "next"),
            waiting="clamped, until the drops are dry",
            resources=("hands", "press"),
            cautions=("press-pinch", *cautions(book, "paints", COLOUR)),
            uses=(use,),
            wettings=wetted(edges),
            tools=("two boards", "clamps", "toothbrush", "blunt knife", "waste paper"),
        )
        seen = EdgeLook(edges.names, Stuff(job.part.options.colour or "", "tea"), "specks")
        return StageResult(
            quantities=(edges.area, mixed, paint), operations=(operation,), looks=(seen,)
        )


PLUGIN = Sprinkled()
