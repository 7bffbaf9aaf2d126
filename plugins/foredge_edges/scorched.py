"""Scorched: edges browned by a flame, only where the spec says that the flame is accepted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    EdgeJob,
    EdgeLook,
    Operation,
    Problem,
    StageResult,
    Stuff,
    Text,
    error,
    listed,
    say,
    warning,
)
from foredge_edges.bench import EdgeOptions, Edges, edges_of

SEWN = "text-block.sew"
BEFORE = ("text-block.square-block", "text-block.glue-spine")
"""No glue, lining or paint is near the block when it meets the flame."""


class ScorchedOptions(EdgeOptions, frozen=True, kw_only=True, tag="scorched"):
    """Scorched edges."""

    flame: (
        Annotated[
            Literal["accepted"],
            Meta(description="Write accepted to say that you will work with an open flame."),
        ]
        | None
    ) = None
    burner: (
        Annotated[
            Literal["candle", "torch"],
            Meta(description="What gives the flame; any small one if left out."),
        ]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Scorched:
    """Outdoors, clamped, with water at hand; then the char comes off."""

    kind: str = "edge"
    name: str = "scorched"
    title: str = "Scorched edges"
    options: type[ScorchedOptions] = ScorchedOptions

    def treat(self, job: EdgeJob) -> StageResult:
        """Scorch after sewing, before any glue; brush once more when all else is done."""
        if job.part.options.flame is None:
            return StageResult(problems=(_refused(job),))
        edges = edges_of(job, self.name)
        return StageResult(
            quantities=(edges.area,),
            operations=(_scorch(edges), _brush(edges)),
            looks=(EdgeLook(edges.names, Stuff(row="scorched"), "burnt"),),
            problems=_cut_off(job, edges),
        )


def _scorch(edges: Edges) -> Operation:
    book = edges.job.book
    return Operation(
        edges.op("scorch"),
        f"Scorch {edges.words}",
        (
            say("Choose bare ground out of the wind."),
            say("Fold tapes, cloth and end-papers well back: synthetic cloth melts on the skin."),
            say("Clamp the block hard between bare boards, only the edge free."),
            *_burner(edges),
            say("Blow out or pinch off every glow at once with a wet cloth. One edge at a time."),
            say("Brush the char off out there, along the leaves, until the brush stays clean."),
            say("Look between the leaves for glow before it comes indoors."),
        ),
        book.practice("hand-scorch") * edges.count + book.practice("hand-set-up"),
        after=(SEWN,),
        before_any=BEFORE,
        wait=book.default("scorch-watch"),
        waiting="watched, away from the house, until it is cold through",
        resources=("hands", "clamps"),
        cautions=("flame", *(("candle",) if _lit(edges) else ()), "press-pinch"),
        tools=(_FLAMES[_lit(edges)], "bucket of water", "extinguisher", "two bare boards", "clamps",
               "wet cotton cloth", "stiff brush"),
        outdoors=True,
    )  # fmt: skip


_FLAMES = {
    "": "small flame",
    "candle": "candle in a heavy holder",
    "torch": "small gas torch",
}


def _lit(edges: Edges) -> str:
    return edges.job.part.options.burner or ""


def _burner(edges: Edges) -> tuple[Text, ...]:
    """How the edge and the flame meet."""
    if _lit(edges) != "candle":
        flame = "the torch's smallest flame" if _lit(edges) else "a small flame"
        return (say(f"Pass {flame} along the edge without stopping; brown is enough."),)
    return (
        say("Stand the candle on bare ground and lead the edge past beside its tip, not over it."),
        say("Soot means too low in the flame: hold the edge further off; brown is enough."),
        say("Put the candle out before you turn to the brush."),
    )


def _brush(edges: Edges) -> Operation:
    return Operation(
        edges.op("brush"),
        f"Brush {edges.words} once more",
        (
            say("Fan the leaves and brush off what pressing has loosened."),
            say("Wipe the block; char must not come near paste or the paste-downs."),
        ),
        edges.job.book.practice("hand-measure"),
        after=(edges.job.trimmed, edges.op("scorch")),
        tools=("soft brush", "dry cloth"),
    )


def _refused(job: EdgeJob) -> Problem:
    return error(
        job.part.path,
        "scorched edges are worked with an open flame, and the spec does not accept it",
        "flame-not-accepted",
        consequence="Paper lights at about 220 to 250 degC, and a loose sheet carries the fire",
        remedy="Stain them brown with {use: colour}, or {use: sprinkled}, which no flame touches; "
        "or add flame: accepted",
        source="Gothic Nomad, on coffee-aged paper and burnt edges",
    )


def _cut_off(job: EdgeJob, edges: Edges) -> tuple[Problem, ...]:
    lost = [edge for edge in edges.names if edge in job.cut]
    if not lost:
        return ()
    return (
        warning(
            job.part.path,
            f"{listed(lost)} of the block are trimmed after the scorching",
            "scorch-cut-off",
            consequence="The knife takes the brown off again",
            remedy="Trim nothing (trim: none), scorch only the edges that are not trimmed, or "
            "stain the trimmed ones brown",
            source="geometry",
        ),
    )


PLUGIN = Scorched()
