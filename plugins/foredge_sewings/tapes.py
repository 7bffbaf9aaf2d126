"""Sewing all along on tapes, with kettle stitches at both ends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    Count,
    Length,
    Operation,
    Origin,
    PartOptions,
    Path,
    Piece,
    Problem,
    Quantity,
    SewingJob,
    SewingResult,
    StageResult,
    Tape,
    choose,
    cited,
    cloth_figures,
    given,
    leaf,
    maximum,
    number,
    say,
    stock_name,
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
    mm,
    named_stations,
    needle,
    plan_thread,
    run_inside,
    station_problems,
)
from foredge_sewings.thread_path import ThreadPath, thread_path

TAPE = "text_block.tape"


class TapesOptions(PartOptions, frozen=True, kw_only=True, tag="tapes"):
    """Options of ``use: tapes``."""

    thread: Annotated[str, stock_name("thread"), Meta(description="The thread.")] | None = None
    tape: Annotated[str, stock_name("tape"), Meta(description="The tape on the shelf.")] | None = (
        None
    )
    count: (
        Annotated[Count, Meta(description="How many tapes; by the height if left out.")] | None
    ) = None
    width: Annotated[Length, Meta(description="Width of the tape.")] | None = None
    kettle: (
        Annotated[Length, Meta(description="Kettle stitch from the finished head and tail.")] | None
    ) = None
    outer: (
        Annotated[Length, Meta(description="Middle of the outer tapes from head and tail.")] | None
    ) = None
    lap: Annotated[Length, Meta(description="What of a tape lies on each board.")] | None = None


@dataclass(frozen=True, slots=True)
class _Layout:
    count: Quantity
    holes: Quantity
    width: Quantity
    stations: tuple[Quantity, ...]


class Tapes:
    """Sewing on flat tapes."""

    kind = "sewing"
    name = "tapes"
    title = "Sewing on tapes"
    options = TapesOptions

    def sew(self, job: SewingJob) -> SewingResult:
        """Two holes a tape and two kettles; thread by its path; the tapes as pieces."""
        layout = _layout(job)
        thread = plan_thread(job, _legs(job, layout))
        piece, lap, length = _tape(job, layout)
        figures = cloth_figures(job.book, job.part.options.tape, "sewing-tape")
        work = StageResult(
            quantities=(
                layout.count,
                layout.holes,
                layout.width,
                *layout.stations,
                hole(job),
                *thread.quantities,
                lap,
                length,
            ),
            pieces=(piece,),
            operations=(cut_thread(job, thread), _sew(job, layout, lap)),
            drawings=(thread_path(job, layout.stations, _path(layout)),),
            problems=tuple(_problems(job, layout)),
            facts=(("text_block.supported", "yes"), ("text_block.sewing", self.name)),
        )
        return SewingResult(
            work=work,
            stations=layout.stations,
            thread=thread.length,
            threads_in_fold=number(1),
            sewn=SEW,
            spine_layer=figures.thickness,
            lies_in_joint=figures.thickness,
        )


def _path(layout: _Layout) -> ThreadPath:
    """Over each tape outside, inside the fold between them; kettles at both ends."""
    over = frozenset(range(1, len(layout.stations) - 2, 2))
    return ThreadPath(
        "Sewing on tapes, the way of the thread",
        outside=over,
        over=over,
        words=("grey: the tapes",),
    )


def tape_count(job: SewingJob) -> Quantity:
    """Two tapes on a low book, three, four on a tall one."""
    chosen = job.part.options.count
    height = job.fold_height - job.trim_head - job.trim_tail
    two, four = job.book.default("tape-two-below"), job.book.default("tape-four-above")
    three_or_four = choose(height, four, number(4), number(3))
    by_height = choose(two, height, number(2), three_or_four)
    return (by_height if chosen is None else chosen).named(
        "text_block.tapes",
        label="tapes",
        rule="two below 200 mm, four above 300 mm, three between"
        if chosen is None
        else "as the spec says",
        source=cited(two) if chosen is None else CHOICE,
    )


def _width(job: SewingJob) -> Quantity:
    options = job.part.options
    item = job.book.stock.get(options.tape) if options.tape else None
    chosen = options.width
    if chosen is None and isinstance(item, Tape):
        chosen = item.width
    row = job.book.table("cloth", "sewing-tape", "width")
    # The row's range is what the trade sells, not an uncertainty of the tape in hand.
    usual = leaf(row.value, row.dimension, row.name or "", row.origin or Origin("table"))
    return (usual if chosen is None else chosen).named(
        "text_block.tape.width",
        label="tape, width",
        rule="as the spec says" if chosen is not None else "the usual tape",
        source=cited(row) if chosen is None else CHOICE,
    )


def _layout(job: SewingJob) -> _Layout:
    """Kettle, two holes a tape, kettle: the tapes share the spine between the kettles."""
    options, book = job.part.options, job.book
    many, width = tape_count(job), _width(job)
    kettle = book.default("kettle-end") if options.kettle is None else options.kettle
    first, last = job.trim_head + kettle, job.fold_height - job.trim_tail - kettle
    places = min(int(many.value), MOST_STATIONS // 2)
    share = given(last - first, many) / many
    outer = job.trim_head + options.outer if options.outer is not None else first + share / 2
    inner_last = job.fold_height - (outer - job.trim_head) - job.trim_tail
    between = given(inner_last - outer, many) / maximum(many - 1, number(1))
    half = (width + book.default("tape-hole-gap")) / 2
    places_at = [first]
    for index in range(places):
        middle = outer + between * number(index) if places > 1 else (first + last) / 2
        places_at += [middle - half, middle + half]
    places_at.append(last)
    rule = "kettles inside the finished leaf; each tape in the middle of an equal share between"
    if options.outer is not None:
        rule = "kettles inside the finished leaf; outer tapes as the spec says, the rest between"
    holes = (2 * many + 2).named(
        "text_block.stations",
        label="stations",
        rule="two holes for each tape, and two kettle stitches",
        source=cited(book.default("kettle-end")),
    )
    return _Layout(many, holes, width, named_stations(book, places_at, rule, cited(kettle, CHOICE)))


def _legs(job: SewingJob, layout: _Layout) -> list[Leg]:
    """Where the thread goes: along each fold and over each tape, up at the kettles."""
    book = job.book
    below = maximum(job.gatherings - 1, number(0))
    kettle = 2 * job.pitch + book.practice("thread-kettle") * job.thread_diameter
    over = book.practice("thread-tape-crossing")
    return [
        Leg("along_folds", "thread along the folds and over the tapes",
            run_inside(layout.stations), job.gatherings,
            "once from kettle to kettle in every gathering, inside the fold or over a tape"),
        Leg("crossings", "thread lost in crossing the tapes", over, job.gatherings * layout.count,
            "out and in again round each tape"),
        Leg("climbs", "thread from one gathering to the next", job.pitch, below,
            "up one gathering at the end of each"),
        Leg("kettles", "thread in the kettle stitches", kettle, below,
            "under the gathering below at the end of each, and the last knot"),
    ]  # fmt: skip


def _tape(job: SewingJob, layout: _Layout) -> tuple[Piece, Quantity, Quantity]:
    options, book = job.part.options, job.book
    usual = book.default("tape-lap-relief" if book.relief_on_board() else "tape-lap")
    lap = (usual if options.lap is None else options.lap).named(
        "text_block.tape.lap",
        label="tape on each board",
        rule="what is glued to the board when the block is cased in",
        source=cited(usual if options.lap is None else options.lap, CHOICE),
    )
    length = book.size_up(job.gatherings * job.pitch + 2 * lap).named(
        "text_block.tape.length",
        label="tape, length of each",
        rule="over all gatherings before pressing, and a lap on each board",
        source=cited(usual),
    )
    piece = Piece(
        name=TAPE,
        title="Sewing tape",
        count=layout.count,
        width=layout.width,
        height=length,
        grain="any",
        stock=options.tape,
        material=book.words("cloth", "sewing-tape", "title"),
    )
    return piece, lap, length


def _width_path(job: SewingJob) -> Path:
    """Where the width of the tape is said: beside the sewing, else on the shelf."""
    options: TapesOptions = job.part.options
    if options.width is None and options.tape is not None:
        return ("stock", options.tape, "width")
    return (*job.part.path, "width")


def _problems(job: SewingJob, layout: _Layout) -> list[Problem]:
    found = station_problems(job, layout.stations, (*job.part.path, "outer"))
    least = job.book.default("tape-least-width")
    if layout.width.value < least.value:
        found.append(
            warning(
                _width_path(job),
                f"the tape is {mm(layout.width)} wide",
                "tape-narrow",
                consequence="A narrow tape cuts into the fold and holds little glue",
                remedy=f"Take tape of {mm(least)} or wider",
                source=cited(least),
            )
        )
    return found


def _sew(job: SewingJob, layout: _Layout, lap: Quantity) -> Operation:
    first, last = layout.stations[0], layout.stations[-1]
    steps = (
        say(
            "Stretch the {tapes} tapes upright at the pairs of holes; leave {lap} below the "
            "first gathering.",
            tapes=layout.count, lap=lap,
        ),
        say("Thread a {needle}.", needle=needle(job, "straight")),
        say(
            "First gathering: in at the kettle, {first} from the head; out before each tape, over "
            "it and in again; out at the last kettle, {last}.",
            first=first, last=last,
        ),
        say("Lay the next gathering on, go in above and sew back; tie the two tails together."),
        say("From the third gathering on, catch the one below with a kettle stitch at each end."),
        say("Sew all {gatherings} gatherings so; finish with two kettle stitches.",
            gatherings=job.gatherings),
        say("The thread must not go through a tape: the tapes have to slide until glued."),
        *checks(),
    )  # fmt: skip
    return Operation(
        id=SEW,
        title="Sew the gatherings on tapes",
        steps=steps,
        hands_on=job.book.practice("hand-set-up") + job.book.practice("hand-sew") * job.gatherings,
        after=(CUT_THREAD,),
        cautions=("awl-needle",),
        pieces=(TAPE,),
        tools=("straight needle", "sewing frame or table edge with pins", "scissors"),
        splits=True,
    )


PLUGIN = Tapes()
