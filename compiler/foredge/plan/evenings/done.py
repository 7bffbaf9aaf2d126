"""What is finished already: what need not be planned, and what it makes too late."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from difflib import get_close_matches

from foredge.contract import Book, Operation, Path, Problem, error, note, warning
from foredge.contract.work_plan import DAY
from foredge.plan.evenings.bench_calendar import LONGEST


@dataclass(frozen=True, slots=True)
class Begun:
    """``done`` are named by the spec, ``taken`` come before one of them and are not named.

    ``finished`` is when a done operation was, in minutes from the first day (it may be
    negative), where the spec says so; a day without a clock counts to its end.
    """

    done: frozenset[str] = frozenset()
    taken: tuple[str, ...] = ()
    finished: Mapping[str, int] = field(default_factory=dict)

    @property
    def over(self) -> frozenset[str]:
        """Everything that is not planned any more."""
        return self.done | frozenset(self.taken)

    @property
    def now(self) -> int:
        """What is finished later than the first day puts the rest off: minute 0, or the last."""
        return max([0, *self.finished.values()])


def begun(
    book: Book, order: Sequence[Operation], before: Mapping[str, set[str]], start: date | None
) -> Begun:
    """What ``book.done`` says of the operations of ``order``."""
    known = {operation.id for operation in order}
    done = frozenset(name for name in book.done if name in known)
    earlier = ancestors(done, before) - done
    taken = tuple(operation.id for operation in order if operation.id in earlier)
    finished: dict[str, int] = {}
    if start is not None:
        for name, text in book.done.items():
            if name in known and text:
                finished[name] = _minute(text, start)
    return Begun(done, taken, finished)


def ancestors(names: frozenset[str], before: Mapping[str, set[str]]) -> set[str]:
    """Everything that must come before one of ``names``."""
    seen: set[str] = set()
    queue = list(names)
    while queue:
        for need in before.get(queue.pop(), ()):
            if need not in seen:
                seen.add(need)
                queue.append(need)
    return seen


def _minute(text: str, start: date, *, whole_day: bool = True) -> int:
    """Minutes from the first day; a day without a clock counts to its end, or ``whole_day``
    false: to its beginning."""
    when = datetime.fromisoformat(text)
    minute = (when.date() - start).days * DAY + when.hour * 60 + when.minute
    return minute + DAY if whole_day and len(text) <= len("2026-12-01") else minute


def done_path(book: Book, name: str) -> Path:
    """Where ``done`` names an operation."""
    return ("done", list(book.done).index(name))


def unknown_names(book: Book, order: Sequence[Operation]) -> list[Problem]:
    """A warning for each name under ``done`` that is no operation of this book."""
    known = {operation.id: operation.title for operation in order}
    return [
        warning(
            done_path(book, name),
            f"there is no operation '{name}' in this book",
            "done-unknown",
            remedy=_near(name, known),
        )
        for name in book.done
        if name not in known
    ]


def _near(name: str, known: Mapping[str, str]) -> str:
    """Operations whose title on the sheet is ``name``, else those whose name is like it."""
    said = name.casefold()
    near = [one for one, title in known.items() if title.casefold() == said][:3]
    near = near or get_close_matches(name, known, n=3)
    hint = f"Near: {', '.join(near)}" if near else "Leave it out"
    return hint if near else f"{hint}, or add the part it belongs to"


def too_late(
    book: Book, order: Sequence[Operation], before: Mapping[str, set[str]], begun: Begun
) -> list[Problem]:
    """What should have come before something that is done, and what can still be done about it.

    Only what may well have been left out is told, that is, what has a rescue; that the sewn
    block has been punched needs no saying.
    """
    problems: list[Problem] = []
    left = {one.id: one for one in order if one.id in begun.taken and one.rescue}
    for later in sorted(begun.done, key=list(book.done).index):
        for name in [name for name in left if name in ancestors(frozenset({later}), before)]:
            problems.append(_missed(book, left.pop(name), later))
    return problems


def _missed(book: Book, missed: Operation, later: str) -> Problem:
    return warning(
        done_path(book, later),
        f"'{later}' is done, and '{missed.id}', which comes before it, is not",
        "done-out-of-order",
        consequence="It is too late for it now, and it is not planned",
        remedy=f"If it was done, name it under done; if it was left out: {missed.rescue}",
        source="common practice",
    )


def misdated(
    book: Book, before: Mapping[str, set[str]], begun: Begun, start: date | None
) -> list[Problem]:
    """Dates that are likely slips: years after the first day, or against the order of work."""
    if start is None:
        return []
    problems: list[Problem] = []
    for name, minute in begun.finished.items():
        path = (*done_path(book, name), "at")
        if minute > LONGEST * DAY:
            text = (
                f"'{name}' is said to be done on {book.done[name][:10]}, more than two years after "
                f"the bench's first day, {start}"
            )
            problems.append(error(path, text, "done-misdated", remedy="Look at the year"))
        needs = ancestors(frozenset({name}), before) & begun.finished.keys()
        begins = {need: _minute(book.done[need], start, whole_day=False) for need in needs}
        last = max(sorted(needs), key=lambda need: begins[need], default=name)
        if last != name and begins[last] > minute:
            text = (
                f"'{name}' is said to be done on {book.done[name]}, and '{last}', which comes "
                f"before it, only on {book.done[last]}"
            )
            problems.append(warning(path, text, "done-misdated", remedy="Look at both dates"))
    return problems


def undated(book: Book, start: date | None) -> list[Problem]:
    """Times under ``done`` count from the bench's first day; without it they say nothing."""
    dated = [name for name, text in book.done.items() if text]
    if start is not None or not dated:
        return []
    text = "the bench has no first day, so waits after what is done are taken as over"
    remedy = "Add start: YYYY-MM-DD to the bench"
    return [note(done_path(book, dated[0]), text, "done-without-start", remedy=remedy)]
