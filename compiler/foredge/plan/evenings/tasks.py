"""Operations as tasks of the scheduling engine: minutes, resources, lags, rounds of copies."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from foredge.contract import Book, Operation
from foredge.plan.evenings.done import Begun, ancestors
from foredge.plan.evenings.minutes import copies_of, hands_on, whole_minutes
from foredge.plan.schedule import Lag, Task

BENCH = "bench"
LIGHT = "daylight"
ORIGIN = "(first day)"

SPACE = "space"
"""Room to lie out and dry; counted only where the bench says how much there is."""

_RESTING = " rests"


@dataclass(frozen=True, slots=True)
class Round:
    """An operation on ``copies`` books at once; all of them where it is done in one round."""

    task: str
    operation: Operation
    copies: int
    minutes: int


@dataclass(frozen=True, slots=True)
class Soon:
    """A lag that keeps something from spoiling: the one that can be dropped, with a warning."""

    lag: Lag
    before: str
    after: Operation
    why: str


@dataclass(frozen=True, slots=True)
class Job:
    """What the engine is given. ``rounds`` by operation; ``soon`` are not among ``lags``."""

    tasks: tuple[Task, ...] = ()
    lags: tuple[Lag, ...] = ()
    soon: tuple[Soon, ...] = ()
    capacity: Mapping[str, int] = field(default_factory=dict)
    rounds: Mapping[str, tuple[Round, ...]] = field(default_factory=dict)


def capacities(book: Book, order: Sequence[Operation]) -> dict[str, int]:
    """How much there is of each thing that is occupied while something is done or dries."""
    bench = book.bench
    named = {name for operation in order for name in operation.resources}
    # Anything heavy will do for a weight, unless the maker counts them.
    named -= {"weights"} if bench.weights is None else set()
    named |= set() if bench.space is None else {SPACE}
    known = {
        "hands": 1,
        "press": round(bench.presses.value) if bench.presses is not None else 1,
        "clamps": round(bench.clamps.value) if bench.clamps is not None else 2,
        "weights": round(bench.weights.value) if bench.weights is not None else 0,
        SPACE: round(bench.space.value) if bench.space is not None else 0,
    }
    # Where there are no clamps at all, boards and weights do instead.
    return {name: known.get(name, 1) for name in sorted(named | {"hands"}) if known.get(name, 1)}


def _at_once(book: Book, operation: Operation, capacity: Mapping[str, int], longest: int) -> int:
    """How many copies press and sessions allow at once; ``longest`` session in minutes."""
    copies = copies_of(book)
    if operation.batch:
        return copies
    at_once = min([copies, *(max(1, capacity[name]) for name in _held(operation, capacity))])
    if operation.splits:
        return at_once
    return max(1, min(at_once, longest // hands_on(book, operation, 1)))


def _linked(operation: Operation, known: Mapping[str, Operation]) -> list[str]:
    """What it must follow soon, copy by copy: a batch is made once for all of them."""
    names = (soon.operation for soon in operation.soon_after)
    return [name for name in names if name in known and not known[name].batch]


def _rounds(
    book: Book,
    todo: Sequence[Operation],
    capacity: Mapping[str, int],
    longest: Mapping[bool, int],
) -> dict[str, tuple[Round, ...]]:
    """Every operation in as many rounds as press and sessions ask for.

    What must follow soon goes in the same rounds as what it follows: the first copies are
    pressed before the next are pasted.
    """
    known = {operation.id: operation for operation in todo}
    sizes = {one.id: _at_once(book, one, capacity, longest[one.outdoors]) for one in todo}
    links = [(one.id, name) for one in todo if not one.batch for name in _linked(one, known)]
    while any(sizes[one] != sizes[other] for one, other in links):
        for one, other in links:
            sizes[one] = sizes[other] = min(sizes[one], sizes[other])
    return {one.id: _in_rounds(book, one, sizes[one.id]) for one in todo}


def _in_rounds(book: Book, operation: Operation, at_once: int) -> tuple[Round, ...]:
    copies = copies_of(book)
    sizes = [min(at_once, copies - done) for done in range(0, copies, at_once)]
    return tuple(
        Round(
            operation.id + (f" ({place} of {len(sizes)})" if len(sizes) > 1 else ""),
            operation,
            size,
            hands_on(book, operation, size),
        )
        for place, size in enumerate(sizes, start=1)
    )


def _held(operation: Operation, capacity: Mapping[str, int]) -> list[str]:
    """What it occupies besides the hands, and goes on occupying while it rests."""
    held = [name for name in operation.resources if name in capacity and name != "hands"]
    lies_out = whole_minutes(operation.wait) > 0 and "press" not in operation.resources
    return [*held, SPACE] if lies_out and SPACE in capacity else held


def job(
    book: Book,
    order: Sequence[Operation],
    before: Mapping[str, set[str]],
    begun: Begun,
    longest: Mapping[bool, int],
) -> Job:
    """Tasks and lags of everything that is not over. ``longest`` session by "outdoors"."""
    todo = [operation for operation in order if operation.id not in begun.over]
    capacity = capacities(book, order)
    rounds = _rounds(book, todo, capacity, longest)
    known = {operation.id: operation for operation in order}
    tasks = [Task(ORIGIN, 0)]
    lags: list[Lag] = []
    for operation in todo:
        for one in rounds[operation.id]:
            more, rests = _tasks(one, capacity)
            tasks += more
            lags += rests
        lags += _in_turn(rounds[operation.id])
        lags += _after(operation, before[operation.id], rounds, known, begun)
    soon = tuple(soon for operation in todo for soon in _soon(operation, rounds, before))
    return Job(tuple(tasks), tuple(lags), soon, capacity, rounds)


def _tasks(one: Round, capacity: Mapping[str, int]) -> tuple[list[Task], list[Lag]]:
    """The work itself, and the rest in press or clamps that follows at once."""
    operation = one.operation
    held = {name: min(one.copies, capacity[name]) for name in _held(operation, capacity)}
    within = (BENCH, LIGHT) if operation.outdoors else (BENCH,)
    demand = {"hands": 1, **held}
    work = Task(one.task, one.minutes, demand, within, operation.splits, tuple(held))
    wait = whole_minutes(operation.wait)
    if not held or not wait:
        return [work], []
    rest = one.task + _RESTING
    return [work, Task(rest, wait, held)], [Lag(one.task, rest, 0, 0, from_finish=True)]


def _in_turn(rounds: Sequence[Round]) -> list[Lag]:
    return [Lag(one.task, other.task, 0, from_finish=True) for one, other in pairwise(rounds)]


def _after(
    operation: Operation,
    needs: set[str],
    rounds: Mapping[str, tuple[Round, ...]],
    known: Mapping[str, Operation],
    begun: Begun,
) -> list[Lag]:
    """What the first round waits for; the others follow it. What goes copy by copy waits for
    its own copies only."""
    own = rounds[operation.id]
    linked = _linked(operation, known)
    lags: list[Lag] = []
    for need in sorted(needs):
        wait = whole_minutes(known[need].wait)
        theirs = rounds.get(need, ())
        if need in linked and len(theirs) == len(own):
            pairs = zip(theirs, own, strict=True)
            lags += [Lag(one.task, other.task, wait, from_finish=True) for one, other in pairs]
        else:
            lags += [Lag(one.task, own[0].task, wait, from_finish=True) for one in theirs]
        if need in begun.finished and begun.finished[need] + wait > 0:
            lags.append(Lag(ORIGIN, own[0].task, begun.finished[need] + wait))
    return lags


def _soon(
    operation: Operation, rounds: Mapping[str, tuple[Round, ...]], before: Mapping[str, set[str]]
) -> list[Soon]:
    """Maximum lags after what is planned itself and comes before it in any case."""
    earlier = ancestors(frozenset({operation.id}), before) if operation.soon_after else set()
    own = rounds[operation.id]
    return [
        Soon(
            Lag(one.task, other.task, 0, whole_minutes(soon.within), from_finish=True),
            soon.operation,
            operation,
            soon.why,
        )
        for soon in operation.soon_after
        if soon.operation in earlier and soon.operation in rounds
        for one, other in _pairs(rounds[soon.operation], own)
    ]


def _pairs(theirs: Sequence[Round], own: Sequence[Round]) -> list[tuple[Round, Round]]:
    """Copy by copy where both go in the same rounds; from the first round of a batch else."""
    if len(theirs) == len(own):
        return list(zip(theirs, own, strict=True))
    return [(theirs[0], one) for one in own]
