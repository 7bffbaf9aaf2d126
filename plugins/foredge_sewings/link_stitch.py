"""Link stitch: every station climbs to the gathering below; nothing but thread holds the block."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    LENGTH,
    Count,
    Length,
    Operation,
    Origin,
    PartOptions,
    Quantity,
    SewingJob,
    SewingResult,
    StageResult,
    ceil,
    cited,
    count,
    given,
    leaf,
    maximum,
    number,
    say,
    stock_name,
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
    run_inside,
    station_problems,
)
from foredge_sewings.thread_path import ThreadPath, thread_path


class LinkStitchOptions(PartOptions, frozen=True, kw_only=True, tag="link-stitch"):
    """Options of ``use: link-stitch``."""

    thread: Annotated[str, stock_name("thread"), Meta(description="The thread.")] | None = None
    stations: (
        Annotated[Count, Meta(description="Number of stations, the two end ones included.")] | None
    ) = None
    end_distance: (
        Annotated[Length, Meta(description="End station from the finished head and tail.")] | None
    ) = None
    tail_distance: (
        Annotated[Length, Meta(description="End station from the tail, where it differs.")] | None
    ) = None
    spacing: Annotated[Length, Meta(description="Greatest distance between stations.")] | None = (
        None
    )


class LinkStitch:
    """Unsupported link sewing."""

    kind = "sewing"
    name = "link-stitch"
    title = "Link stitch"
    options = LinkStitchOptions

    def sew(self, job: SewingJob) -> SewingResult:
        """Stations evenly spaced between the end ones; thread by its path."""
        stations, how_many = self._stations(job)
        thread = plan_thread(job, _legs(job, stations))
        punched = hole(job)
        work = StageResult(
            quantities=(how_many, *stations, punched, *thread.quantities),
            operations=(cut_thread(job, thread), _sew(job, stations)),
            drawings=(thread_path(job, stations, _PATH),),
            problems=tuple(station_problems(job, stations, (*job.part.path, "end_distance"))),
            facts=(("text_block.supported", "no"), ("text_block.sewing", self.name)),
        )
        none = leaf(0.0, LENGTH, "no tape", Origin("constant"))
        return SewingResult(
            work=work,
            stations=stations,
            thread=thread.length,
            threads_in_fold=number(1),
            sewn=SEW,
            spine_layer=none,
            lies_in_joint=none,
        )

    def _stations(self, job: SewingJob) -> tuple[tuple[Quantity, ...], Quantity]:
        options, book = job.part.options, job.book
        end = book.default("station-end") if options.end_distance is None else options.end_distance
        tail = end if options.tail_distance is None else options.tail_distance
        first, last = job.trim_head + end, job.fold_height - job.trim_tail - tail
        apart = book.default("link-pitch") if options.spacing is None else options.spacing
        wanted = options.stations
        if wanted is None:
            wanted = maximum(ceil((last - first) / apart) + 1, number(2))
        how_many = maximum(wanted, number(2)).named(
            "text_block.stations",
            label="stations",
            rule="as the spec says"
            if options.stations is not None
            else "so many that none is further from the next than the spacing",
            source=cited(apart, CHOICE),
        )
        places = min(int(how_many.value), MOST_STATIONS)
        step = given(last - first, how_many) / (how_many - 1)
        at = [first + step * number(index) for index in range(places)]
        rule = "end stations inside the finished leaf, the rest evenly between them"
        return named_stations(book, at, rule, cited(end, CHOICE)), how_many


_PATH = ThreadPath(
    "Link stitch, the way of the thread",
    linked=True,
    words=("at each inner station it slips behind the gathering before",),
)


def _legs(job: SewingJob, stations: tuple[Quantity, ...]) -> list[Leg]:
    """Where the thread goes: along each fold, down and up at each link, up at the kettles."""
    rounds = job.book.practice("thread-kettle") * job.thread_diameter
    below = maximum(job.gatherings - 1, number(0))
    inner = number(max(len(stations) - 2, 0))
    inner = given(inner, count(len(stations), "stations", Origin("constant")))
    drop = 2 * job.pitch + rounds
    return [
        Leg("along_folds", "thread along the folds", run_inside(stations), job.gatherings,
            "once along every fold, from the first station to the last"),
        Leg("links", "thread in the links", drop, below * inner,
            "at every inner station down to the gathering below, round its thread and up again"),
        Leg("climbs", "thread from one gathering to the next", job.pitch, below,
            "up one gathering at the end of each"),
        Leg("kettles", "thread in the kettle stitches", drop, below,
            "under the gathering below at the end of each, and the last knot"),
    ]  # fmt: skip


def _sew(job: SewingJob, stations: tuple[Quantity, ...]) -> Operation:
    first, last = stations[0], stations[-1]
    steps = (
        say(
            "Take a {needle}; it has to pass behind the stitches below.",
            needle=needle(job, "curved"),
        ),
        say(
            "First gathering: in at {first} from the head, along the fold, out and in again at "
            "every station, out at {last}.",
            first=first, last=last,
        ),
        say("Lay the next gathering on, climb to it and go in at its end station."),
        say(
            "At each inner station come out, slip behind the stitch of the gathering below, and "
            "go in again at the same hole."
        ),
        say("At each end pass under the gathering below: a kettle stitch. Climb on."),
        say("Sew all {gatherings} gatherings so; finish with two kettle stitches.",
            gatherings=job.gatherings),
        *checks(),
    )  # fmt: skip
    return Operation(
        id=SEW,
        title="Sew the gatherings with link stitch",
        steps=steps,
        hands_on=job.book.practice("hand-set-up") + job.book.practice("hand-sew") * job.gatherings,
        after=(CUT_THREAD,),
        cautions=("awl-needle",),
        tools=("curved needle", "bone folder", "scissors"),
        splits=True,
    )


PLUGIN = LinkStitch()
