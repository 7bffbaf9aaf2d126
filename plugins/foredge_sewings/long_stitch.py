"""Long stitch through a strip of cloth over the spine, whose flanges carry the block in its case.

The cover itself cannot be sewn through here: the case is made apart from the block. So the
gatherings are sewn to a strip that takes the place of tapes and super; the long stitches lie
on its outside, under the case.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    Count,
    Figures,
    Length,
    Operation,
    PartOptions,
    Problem,
    Quantity,
    SewingJob,
    SewingResult,
    StageResult,
    ceil,
    cited,
    cloth_figures,
    given,
    maximum,
    number,
    paper_figures,
    say,
    stock_name,
    table_row,
    total,
    warning,
)
from foredge_sewings.bench import (
    CHOICE,
    CUT_THREAD,
    MOST_STATIONS,
    SEW,
    Leg,
    checks,
    cut_thread,
    hole,
    named_stations,
    needle,
    plan_thread,
    station_problems,
)
from foredge_sewings.sewing_strip import STRIP, Strip, make_strip, sewing_strip
from foredge_sewings.stitch_drawings import piercing_template
from foredge_sewings.thread_path import ThreadPath, thread_path

LEAST_STATIONS = 4
"""With two there is no stitch on the outside at all."""


class LongStitchOptions(PartOptions, frozen=True, kw_only=True, tag="long-stitch"):
    """Options of ``use: long-stitch``."""

    thread: Annotated[str, stock_name("thread"), Meta(description="The thread.")] | None = None
    stations: (
        Annotated[
            Count,
            Meta(description="Number of stations, an even one; by the height if left out."),
        ]
        | None
    ) = None
    spacing: Annotated[Length, Meta(description="Greatest distance between stations.")] | None = (
        None
    )
    end_distance: (
        Annotated[Length, Meta(description="End station from the finished head and tail.")] | None
    ) = None
    cloth: (
        Annotated[str, stock_name("cloth"), Meta(description="The cloth of the strip.")] | None
    ) = None
    material: Annotated[
        str,
        table_row("cloth"),
        Meta(description="What the strip is, where no cloth is named."),
    ] = "linen"
    backing: (
        Annotated[str, stock_name("sheet"), Meta(description="The paper that stiffens it.")] | None
    ) = None
    flange: Annotated[Length, Meta(description="What of the strip lies on each board.")] | None = (
        None
    )


@dataclass(frozen=True, slots=True)
class _Layout:
    count: Quantity
    stations: tuple[Quantity, ...]
    strip: Strip
    cloth: Figures
    backing: Figures


class LongStitch:
    """Long stitch on a strip."""

    kind = "sewing"
    name = "long-stitch"
    title = "Long stitch"
    options = LongStitchOptions

    def sew(self, job: SewingJob) -> SewingResult:
        """Stations by pairs, the strip and its holes, thread by its path."""
        layout = _layout(job)
        thread = plan_thread(job, _legs(job, layout))
        strip = layout.strip
        work = StageResult(
            quantities=(
                layout.count, *layout.stations, hole(job), *thread.quantities, *strip.quantities,
            ),
            pieces=strip.pieces,
            operations=(cut_thread(job, thread), make_strip(job, strip), _sew(job, layout)),
            drawings=(
                *piercing_template(job, strip, layout.stations),
                thread_path(job, layout.stations, _path(layout)),
            ),
            problems=tuple(_problems(job, layout)),
            facts=(("text_block.supported", "yes"), ("text_block.sewing", self.name)),
        )  # fmt: skip
        return SewingResult(
            work=work,
            stations=layout.stations,
            thread=thread.length,
            threads_in_fold=number(1),
            sewn=SEW,
            spine_layer=layout.cloth.thickness + layout.backing.thickness,
            lies_in_joint=layout.cloth.thickness,
            replaces_super=True,
        )


def _layout(job: SewingJob) -> _Layout:
    """End stations inside the finished leaf, the others evenly between, an even number."""
    options, book = job.part.options, job.book
    end = book.default("station-end") if options.end_distance is None else options.end_distance
    first, last = job.trim_head + end, job.fold_height - job.trim_tail - end
    apart = book.default("long-stitch-pitch") if options.spacing is None else options.spacing
    wanted = ceil((last - first) / apart) + 1 if options.stations is None else options.stations
    how_many = maximum(2 * ceil(wanted / 2), number(LEAST_STATIONS)).named(
        "text_block.stations",
        label="stations",
        rule="an even number: the running stitch must end where it began, outside, to climb on",
        source=f"geometry; {cited(apart, CHOICE)}",
    )
    places = min(int(how_many.value), MOST_STATIONS)
    step = given(last - first, how_many) / (how_many - 1)
    at = [first + step * number(index) for index in range(places)]
    rule = "end stations inside the finished leaf, the rest evenly between them"
    cloth = cloth_figures(book, options.cloth, options.material)
    backing = paper_figures(book, options.backing, "kraft-wrapping")
    return _Layout(
        how_many,
        named_stations(book, at, rule, cited(end, CHOICE)),
        sewing_strip(job, end, cloth, backing),
        cloth,
        backing,
    )


def _path(layout: _Layout) -> ThreadPath:
    """Every second stretch lies outside the strip."""
    return ThreadPath(
        "Long stitch, the way of the thread",
        outside=frozenset(range(1, len(layout.stations) - 1, 2)),
    )


def _legs(job: SewingJob, layout: _Layout) -> list[Leg]:
    """Where the thread goes: inside, through, outside, through ... and up at the ends."""
    at, book = layout.stations, job.book
    below = maximum(job.gatherings - 1, number(0))
    kettle = 2 * job.pitch + book.practice("thread-kettle") * job.thread_diameter
    through = layout.cloth.thickness + layout.backing.thickness + job.folios * job.leaf_thickness
    stretches = [after - before for before, after in pairwise(at)]
    return [
        Leg("inside", "thread inside the folds", total(stretches[::2]), job.gatherings,
            "from the first station of each pair to the second"),
        Leg("outside", "long stitches outside the strip", total(stretches[1::2]), job.gatherings,
            "from each pair of stations to the next"),
        Leg("crossings", "thread through fold and strip", through,
            job.gatherings * layout.count, "once at every station of every gathering"),
        Leg("climbs", "thread from one gathering to the next", job.pitch, below,
            "up one gathering at the end of each"),
        Leg("kettles", "thread in the kettle stitches", kettle, below,
            "under the climb below at the end of each, and the last knot"),
    ]  # fmt: skip


def _problems(job: SewingJob, layout: _Layout) -> list[Problem]:
    found = station_problems(job, layout.stations, (*job.part.path, "end_distance"))
    wanted = job.part.options.stations
    if wanted is not None and wanted.value != layout.count.value:
        found.append(
            warning(
                (*job.part.path, "stations"),
                f"long stitch is sewn through an even number of stations, {LEAST_STATIONS} or "
                f"more; {layout.count.value:g} are taken in place of {wanted.value:g}",
                "long-stitch-stations",
                consequence="Otherwise every other gathering ends inside its fold, and the thread "
                "cannot climb to the next",
                remedy=f"Ask for {layout.count.value:g}",
                source="geometry",
            )
        )
    return found


def _sew(job: SewingJob, layout: _Layout) -> Operation:
    at, many = layout.stations, layout.count
    steps = (
        say("Thread a {needle}.", needle=needle(job, "straight")),
        say("Hold the first gathering against row 1, on the paper side of the strip."),
        say(
            "From outside in at station 1, {first} from the head; leave a tail outside.",
            first=at[0],
        ),
        say("Along the fold to station 2 and out; a long stitch outside to station 3 and in."),
        say("Go on so; you come out at station {many}, {last} from the head.",
            many=many, last=at[-1]),
        say("Next gathering to row 2: climb to it outside, go in at station {many}, sew back.",
            many=many),
        say("You come out beside the tail at station 1: tie the two together."),
        say("From the third on, slip under the climb of the row below before you go in: a kettle."),
        say("Sew all {gatherings} gatherings so, each in its own row; end with two kettles.",
            gatherings=job.gatherings),
        say("Pull every long stitch straight; none may stand off the strip."),
        *checks(),
    )  # fmt: skip
    return Operation(
        id=SEW,
        title="Sew the gatherings to the strip with long stitch",
        steps=steps,
        hands_on=job.book.practice("hand-set-up") + job.book.practice("hand-sew") * job.gatherings,
        after=(CUT_THREAD, STRIP),
        cautions=("awl-needle",),
        tools=("straight needle", "bone folder", "scissors"),
        splits=True,
    )


PLUGIN = LongStitch()
