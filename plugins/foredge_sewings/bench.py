"""What the sewing structures share: stations checked, thread counted leg by leg, bench steps."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from foredge.contract import (
    Book,
    Operation,
    Path,
    Problem,
    Quantity,
    SewingJob,
    Text,
    Use,
    ceil,
    cited,
    error,
    floor,
    maximum,
    minimum,
    number,
    say,
    total,
    warning,
)

CUT_THREAD = "text-block.cut-thread"
PUNCH = "text-block.punch"
SEW = "text-block.sew"

CHOICE = "the maker's choice"

MOST_STATIONS = 60
"""More are an error anyway; the rest is not worked out."""

_COARSE_MM, _FINE_MM = 0.6, 0.45


@dataclass(frozen=True, slots=True)
class Leg:
    """One kind of stretch of the thread's path: ``each`` long, ``times`` over."""

    key: str
    label: str
    each: Quantity
    times: Quantity
    rule: str


@dataclass(frozen=True, slots=True)
class ThreadPlan:
    """The thread: its path, what is cut, needle lengths and joins."""

    path: Quantity
    length: Quantity
    needle: Quantity
    lengths: Quantity
    each_serves: Quantity
    quantities: tuple[Quantity, ...]


def mm(q: Quantity) -> str:
    """A length for a problem's text."""
    return f"{q.value:.1f}".removesuffix(".0") + " mm"


def named_stations(
    book: Book, places: list[Quantity], rule: str, source: str
) -> tuple[Quantity, ...]:
    """Stations from the head of the folded leaf, each rounded once and named."""
    return tuple(
        book.size(place).named(
            f"text_block.station.{number_}",
            label=f"station {number_}, from the head",
            rule=rule,
            source=source,
        )
        for number_, place in enumerate(places, start=1)
    )


def run_inside(stations: tuple[Quantity, ...]) -> Quantity:
    """Along one fold from the first station to the last, station by station."""
    steps = [after - before for before, after in pairwise(stations)]
    return total(steps)


def plan_thread(job: SewingJob, legs: list[Leg]) -> ThreadPlan:
    """Add the legs up; reserve, needle lengths and joins."""
    book = job.book
    parts = [
        (leg.each * leg.times).named(
            f"text_block.thread.{leg.key}", label=leg.label, rule=leg.rule, source="geometry"
        )
        for leg in legs
    ]
    path = total(parts).named(
        "text_block.thread.path",
        label="thread along its path",
        rule="every stretch the needle makes, station by station",
        source="geometry",
    )
    ends, join = book.default("thread-ends"), book.practice("thread-join")
    needle, lengths, joins = _needle_lengths(job, path + ends, join)
    reserve = book.default("thread-reserve")
    length = ((path + ends + joins * join) * (1 + reserve)).named(
        "text_block.thread.length",
        label="thread to have ready",
        rule="path, tails and joins, and the reserve",
        source=cited(reserve),
    )
    # Stations that do not fit are an error already; there is no path then to divide by.
    each = floor((needle - join) * job.gatherings / path) if path.value > 0 else number(1)
    serves = maximum(each, number(1)).named(
        "text_block.thread.gatherings_a_length",
        label="gatherings sewn with one needle length",
        rule="a needle length over the thread one gathering takes; join inside a gathering",
        source="geometry",
    )
    found = (*parts, path, needle, lengths, joins, length, serves)
    return ThreadPlan(path, length, needle, lengths, serves, found)


def _needle_lengths(
    job: SewingJob, thread: Quantity, join: Quantity
) -> tuple[Quantity, Quantity, Quantity]:
    """What is threaded at a time, how many such lengths ``thread`` takes, and their joins."""
    usual = job.book.default("needle-length")
    needle = usual.named(
        "text_block.thread.needle_length",
        label="length threaded at a time",
        rule="longer lengths tangle",
        source=cited(usual),
    )
    lengths = ceil(thread / (needle - join)).named(
        "text_block.thread.needle_lengths",
        label="needle lengths",
        rule="the path and its two tails, over a needle length less what a join uses up",
        source=cited(join),
    )
    joins = maximum(lengths - 1, number(0)).named(
        "text_block.thread.joins",
        label="joins",
        rule="one less than the needle lengths",
        source="geometry",
    )
    return needle, lengths, joins


def station_problems(job: SewingJob, stations: tuple[Quantity, ...], path: Path) -> list[Problem]:
    """Stations off the leaf (an error), too near a trimmed edge, or out of order."""
    book, found = job.book, []
    head = minimum(*stations) - job.trim_head
    tail = job.fold_height - job.trim_tail - maximum(*stations)
    ends = [("head", head), ("tail", tail)]
    if abs(head.value - tail.value) < 0.05:
        ends = [("head and tail", head)]
    for where, distance in ends:
        if distance.value <= 0:
            found.append(_off(path, where, distance))
        elif distance.value < book.default("station-least-edge").value:
            found.append(_near(path, where, distance, book.default("station-advised-edge")))
    apart = min((b.value - a.value for a, b in pairwise(stations)), default=1.0)
    if apart <= 0 or len(stations) >= MOST_STATIONS:
        found.append(
            error(
                path,
                f"the stations do not fit on a leaf of {mm(job.fold_height)}",
                "stations-do-not-fit",
                consequence="They would lie over each other",
                remedy="Take fewer stations or tapes, narrower tapes, or a taller leaf",
            )
        )
    return found


def _off(path: Path, where: str, distance: Quantity) -> Problem:
    return error(
        path,
        f"the end station at the {where} is {mm(-distance)} outside the finished leaf"
        if " " not in where
        else f"the end stations at {where} are {mm(-distance)} outside the finished leaf",
        "station-off-leaf",
        consequence="It is trimmed off with the edge, and the sewing comes undone",
        remedy="Move it inwards",
    )


def _near(path: Path, where: str, distance: Quantity, advised: Quantity) -> Problem:
    return warning(
        path,
        f"the end station is {mm(distance)} from the finished {where}",
        "station-near-edge",
        consequence="The thread tears out of the paper there",
        remedy=f"Keep at least {mm(advised)} from the trimmed edge",
        source=cited(advised),
    )


def thread_use(job: SewingJob, plan: ThreadPlan) -> Use:
    """The thread as material."""
    return Use("sewing thread", plan.length, job.thread, note="reserve included")


def cut_thread(job: SewingJob, plan: ThreadPlan) -> Operation:
    """Cut the needle lengths and choose the needle."""
    steps = [
        say("Thread {needle} at a time: longer tangles.", needle=plan.needle),
        say(
            "That is {lengths} lengths, reserve included; each serves about {serves} "
            f"gathering{'' if plan.each_serves.value == 1 else 's'}.",
            lengths=plan.lengths,
            serves=plan.each_serves,
        )
        if plan.lengths.value > 1
        else say("One such length is all, reserve included: it sews every gathering."),
    ]
    if not is_waxed(job):
        steps.append(say("Draw each length once over a lump of beeswax."))
    return Operation(
        id=CUT_THREAD,
        title="Cut the thread",
        steps=tuple(steps),
        hands_on=job.book.practice("hand-cut") * plan.lengths,
        after=(PUNCH,),
        uses=(thread_use(job, plan),),
        tools=("scissors", "rule") if is_waxed(job) else ("scissors", "rule", "beeswax"),
    )


def is_waxed(job: SewingJob) -> bool:
    """Whether the thread on the shelf is waxed already."""
    item = job.book.stock.get(job.thread) if job.thread else None
    return "waxed" in (getattr(item, "material", None) or "")


def needle(job: SewingJob, shape: str) -> str:
    """The needle by the thread: a little thicker than it, so that the hole lets it through."""
    d = job.thread_diameter.value
    size = "fine" if d < _FINE_MM else "medium" if d < _COARSE_MM else "stout"
    return f"{size} {shape} needle with a blunt point"


def hole(job: SewingJob) -> Quantity:
    """How wide to punch."""
    factor = job.book.default("hole-size")
    return (job.thread_diameter * factor).named(
        "text_block.hole",
        label="hole",
        rule="a little wider than the thread; a wide hole lets glue through",
        source=cited(factor),
    )


def checks() -> tuple[Text, ...]:
    """What is looked at while sewing goes on."""
    return (
        say("Pull the thread along the fold, never away from it: the paper tears."),
        say("After every fourth gathering measure head, middle and tail: all three the same."),
        say("Kettle stitches just snug: tight ones pinch head and tail, and cannot be undone."),
        say("Out of thread: join inside a gathering with a weaver's knot."),
    )
