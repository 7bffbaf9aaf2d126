"""The schedule told evening by evening: what is done, what is left to dry, when it ends."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from foredge.contract import Build, Evening, Operation, Stretch, WorkPlan
from foredge.contract.work_plan import DAY
from foredge.display import duration
from foredge.emit.calendar_words import DAYS, clock_words, day_words, moment
from foredge.emit.escape import code, escape
from foredge.emit.work import step_numbers
from foredge.plan.cost.money import worked
from foredge.spec.words import listed


@dataclass(frozen=True, slots=True)
class EveningView:
    """A session, or some in a row in which nothing can be done (then ``idle``).

    ``steps`` are lines such as ``19:30 to 20:04: 1.1 Cut the layers``, ``resting`` lines such
    as ``1.2 Laminate the boards, until Thu 3 Dec, 20:44: under even weight``.
    """

    title: str
    idle: bool
    steps: tuple[str, ...] = ()
    resting: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WorkView:
    """``summary`` lines come first; there are no ``evenings`` without ``bench.sessions``."""

    summary: tuple[str, ...]
    evenings: tuple[EveningView, ...]


def evening_views(build: Build) -> WorkView | None:
    """The plan by evenings as plain rendered rows; None where there is nothing to plan."""
    plan = build.plan.work
    if plan is None:
        return None
    teller = _Teller(build, plan)
    if not plan.steps:
        return WorkView((*teller.without_evenings(), *teller.taken()), ())
    return WorkView((*teller.summary(), *teller.taken()), tuple(teller.evenings()))


class _Teller:
    def __init__(self, build: Build, plan: WorkPlan) -> None:
        self._build = build
        self._plan = plan
        self._numbers = step_numbers(build)
        self._operations = {operation.id: operation for operation in build.order}

    def without_evenings(self) -> list[str]:
        """What can be said of the time without a calendar."""
        chain = self._plan.chain
        if not chain.operations:
            return ["Everything is done."]
        whole, hands = duration(chain.minutes * 60.0), worked(chain.hands_on * 60.0)
        lines = [f"Work and waits take {whole} at the least, {hands} of it with your hands."]
        if not self._build.book.bench.sessions:
            example = code("sessions: ['Tue and Thu 19:30-21:30']")
            lines.append(
                f"Say when the bench is free, under {code('bench')}, such as {example}, and this "
                f"becomes a plan by sessions; {code('start')} gives it dates."
            )
        return lines

    def summary(self) -> list[str]:
        """First and last evening, closing, posting, and what can wait."""
        plan = self._plan
        busy = len(plan.evenings) - len(plan.idle)
        free = f", and {len(plan.idle)} between them with nothing to do" if plan.idle else ""
        lines = [
            f"{busy} {'session' if busy == 1 else 'sessions'} with work{free}.",
            f"First: {self._title(plan.evenings[0])}. "
            f"Last work done: {moment(plan, plan.finish, year=True)}.",
        ]
        if plan.close is not None:
            lines.append(f"May be closed from {moment(plan, plan.close, year=True)}.")
        if plan.post is not None:
            lines.append(f"May be posted from {moment(plan, plan.post, year=True)}.")
        lines.append(
            "No plan in these sessions ends earlier."
            if plan.proven
            else f"An earlier end may be possible: {code('plan: optimal')} looks further."
        )
        return [*lines, *self._slack()]

    def _slack(self) -> list[str]:
        loose = [step for step in self._plan.steps if not step.critical]
        if not loose:
            return ["Put any step off to a later session, and the end moves."]
        days = {one.operation: one.latest // DAY - one.start // DAY for one in loose}
        told = []
        for count in sorted(set(days.values())):
            numbers = [self._numbers[name] for name in days if days[name] == count]
            by = f"{count} {'day' if count == 1 else 'days'}" if count else "some hours"
            told.append(f"by {by} {listed(_runs(numbers))}")
        return [
            f"Each of these can be put off by itself without moving the end: {'; '.join(told)}."
        ]

    def taken(self) -> list[str]:
        """What was not named as done, but must be."""
        names = [self._numbers[name] for name in self._plan.taken_as_done if name in self._numbers]
        if not names:
            return []
        return [f"Taken as done, because a later step is: {listed(names)}."]

    def evenings(self) -> Iterator[EveningView]:
        """Every session; those without work run together."""
        for idle, group in groupby(self._plan.evenings, key=lambda one: not one.work):
            sessions = list(group)
            if idle:
                yield self._idle(sessions)
            else:
                for evening in sessions:
                    yield EveningView(
                        self._title(evening),
                        False,
                        (*map(self._step, evening.work), *self._breaks(evening)),
                        tuple(self._rest(name) for name in evening.resting),
                    )

    def _title(self, evening: Evening) -> str:
        begin, end = (clock_words(self._plan, at) for at in (evening.begin, evening.end))
        if self._plan.dated:
            day = day_words(self._plan, evening.begin, year=True)
            return f"Session {evening.number}, {day}, {begin} to {end}"
        when = self._plan.when(evening.begin)
        week = evening.begin // (7 * DAY) + 1
        return f"Session {evening.number} ({DAYS[when.weekday()]}, week {week}), {begin} to {end}"

    def _idle(self, sessions: list[Evening]) -> EveningView:
        if self._plan.dated:
            names = [day_words(self._plan, one.begin) for one in sessions]
        else:
            names = [f"session {one.number}" for one in sessions]
        told = listed(names)
        resting = tuple(self._rest(name) for name in sessions[-1].resting)
        return EveningView(told[0].upper() + told[1:], True, (), resting)

    def _step(self, stretch: Stretch) -> str:
        operation = self._operations[stretch.operation]
        begin, end = (clock_words(self._plan, at) for at in (stretch.begin, stretch.end))
        part = f" (part {stretch.part} of {stretch.parts})" if stretch.parts > 1 else ""
        out = ", outdoors" if operation.outdoors else ""
        measure = self._measure(operation) if stretch.part == stretch.parts else ""
        return f"{begin} to {end}: {self._named(operation)}{part}{out}{measure}"

    def _breaks(self, evening: Evening) -> Iterator[str]:
        """Where the work runs on for longer than the maker wants to."""
        longest = self._build.book.bench.longest
        if longest is None:
            return
        for begin, end in _without_break(evening.work):
            if (end - begin) * 60 > longest.value:
                told = " to ".join(clock_words(self._plan, at) for at in (begin, end))
                every = duration(longest.value)
                yield f"Break: the work runs on from {told}; rest your hands every {every}"

    def _measure(self, operation: Operation) -> str:
        gates = [gate.id for gate in self._build.whole.gates if gate.after == operation.id]
        return f"; then measure {listed(map(escape, gates))}" if gates else ""

    def _rest(self, name: str) -> str:
        operation, step = self._operations[name], self._plan.step(name)
        assert step is not None
        why = f": {escape(operation.waiting)}" if operation.waiting else ""
        return f"{self._named(operation)}, until {moment(self._plan, step.ready)}{why}"

    def _named(self, operation: Operation) -> str:
        return f"{self._numbers[operation.id]} {escape(operation.title)}"


def _without_break(work: Sequence[Stretch]) -> list[tuple[int, int]]:
    """Stretches of an evening joined where one follows the other at once."""
    joined: list[tuple[int, int]] = []
    for one in work:
        if joined and joined[-1][1] == one.begin:
            joined[-1] = (joined[-1][0], one.end)
        else:
            joined.append((one.begin, one.end))
    return joined


def _runs(numbers: Sequence[str]) -> list[str]:
    """``2.1 to 2.4`` for steps that follow one another in a part of the sheet."""
    runs: list[list[str]] = []
    for number in numbers:
        part, _, step = number.partition(".")
        if runs and runs[-1][-1] == f"{part}.{int(step) - 1}":
            runs[-1].append(number)
        else:
            runs.append([number])
    return [run[0] if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs]
