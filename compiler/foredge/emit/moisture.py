"""Water and balance as the sheets tell them: what is wetted, when it is dry, how it pulls."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from foredge.contract import Build, Quantity, WorkPlan, total
from foredge.contract.moisture import Balance, Layer, Ready, Wet
from foredge.emit.escape import escape
from foredge.emit.words import Words
from foredge.emit.work import step_numbers
from foredge.spec.words import listed

_WHAT = {
    "board-front": "front board",
    "board-back": "back board",
    "block-spine": "spine of the block",
    "block-edges": "edges of the block",
    "sewing-strip": "sewing strip",
}
_SIDE = {"inside": "inside", "outside": "outside", "both": "both sides", "edge": "edge"}
_READY = {
    "cover": "The boards may be covered",
    "paint": "The clay may be painted",
    "close": "The book may be closed",
    "post": "The book may be posted",
}


SMALL = 0.01
"""So that two layers against one count as one more."""


@dataclass(frozen=True, slots=True)
class MoistureRow:
    """One wetting, or several of a kind that follow each other. ``dry`` is a time.

    ``mass`` and ``wait`` are what ``water`` and ``dry`` were written from, for a page that says
    how a number was made; None where the water is not known.
    """

    steps: str
    what: str
    side: str
    water: str
    dry: str
    mass: Quantity | None
    wait: Quantity


@dataclass(frozen=True, slots=True)
class MoistureView:
    """The section: a table, sentences on when it is dry enough, sentences on the balance."""

    rows: tuple[MoistureRow, ...]
    ready: tuple[str, ...]
    balance: tuple[str, ...]


def moisture_view(build: Build) -> MoistureView:
    """Everything the section holds; empty where nothing is wetted."""
    return MoistureView(moisture_rows(build), ready_lines(build), balance_lines(build))


def moisture_rows(build: Build) -> tuple[MoistureRow, ...]:
    """The wettings in the order of work. Both boards alike are one row, coats in a run too."""
    words, numbers = Words(build), step_numbers(build)
    return tuple(_row(words, numbers, run) for run in _runs(build.plan.moisture.wettings))


def _runs(wettings: tuple[Wet, ...]) -> list[list[Wet]]:
    """Wettings told in one row: of one operation alike, or coats of unknown water on one side."""
    runs: list[list[Wet]] = []
    for one in wettings:
        if runs and _alike(runs[-1][-1], one):
            runs[-1].append(one)
        else:
            runs.append([one])
    return runs


def _alike(first: Wet, second: Wet) -> bool:
    if first.side != second.side or first.one_way != second.one_way:
        return False
    if first.water is None and second.water is None:
        return True
    return first.operation == second.operation and (first.water is None) == (second.water is None)


def _row(words: Words, numbers: dict[str, str], run: list[Wet]) -> MoistureRow:
    names = list(dict.fromkeys(_WHAT.get(one.what, one.what) for one in run))
    steps = list(dict.fromkeys(numbers[one.operation] for one in run))
    water = [one.water for one in run if one.water is not None]
    last = max(
        (one for one in run if one.operation == run[-1].operation),
        key=lambda one: one.dry_after.value,
    )
    mass = None if not water else water[0] if len(water) == 1 else total(water)
    return MoistureRow(
        steps=steps[0] if len(steps) == 1 else f"{steps[0]} to {steps[-1]}",
        what="both boards" if set(names) == _BOTH else escape(listed(names)),
        side=_SIDE[run[0].side] + (", dries from there only" if run[0].one_way else ""),
        water="little" if mass is None else words.number(mass),
        dry=_dry(words, last.operation, last.dry_after),
        mass=mass,
        wait=last.dry_after,
    )


_BOTH = {"front board", "back board"}


def _dry(words: Words, operation: str, wait: Quantity) -> str:
    """``24 h``, and where the work is dated, when that is."""
    day = _day(words, operation, wait)
    return words.time(wait) + (f", {day}" if day else "")


def _day(words: Words, operation: str, wait: Quantity) -> str:
    when = dry_at(words.build.plan.work, operation, wait)
    return "" if when is None else f"{when:%a} {when.day} {when:%b}"


def dry_at(work: WorkPlan | None, operation: str, wait: Quantity) -> datetime | None:
    """The moment ``wait`` after ``operation`` is over; None where the work has no dates."""
    step = work.step(operation) if work is not None and work.dated else None
    if work is None or step is None:
        return None
    return work.when(step.finish + round(wait.value / 60))


def ready_lines(build: Build) -> tuple[str, ...]:
    """When it is dry enough to cover, to paint, to close and to post."""
    words, numbers = Words(build), step_numbers(build)
    return tuple(_ready(words, numbers, one) for one in build.plan.moisture.ready)


def _ready(words: Words, numbers: dict[str, str], one: Ready) -> str:
    step = f"step {numbers[one.operation]}"
    if one.wait is None or one.wait.value <= 0:
        return f"{_READY[one.step]} after {step}."
    day = _day(words, one.operation, one.wait)
    when = f"at the earliest {words.time(one.wait)} after {step}" + (f" ({day})" if day else "")
    return f"{_READY[one.step]} {when}."


def balance_lines(build: Build) -> tuple[str, ...]:
    """What pulls on each board; once where both boards are alike."""
    if not build.plan.moisture.balance:
        return ()
    most = build.book.practice("pull-excess").value
    told = [(_WHAT[one.what], _pulls(one, most)) for one in build.plan.moisture.balance]
    told = [(board, text) for board, text in told if text]
    if len(told) == 2 and told[0][1] == told[1][1]:
        told = [("both boards", told[0][1])]
    return tuple(f"{board}: {text}" for board, text in told)


def _pulls(one: Balance, most: float) -> str:
    if not one.outside and not one.inside:
        return ""
    verdict = "near enough even"
    if one.excess >= most - SMALL:
        verdict = "the outside pulls more"
    elif one.excess <= SMALL - most:
        verdict = "the inside pulls more"
    outside = _face("outside", one.outside, one.pull_outside)
    return f"{outside}; {_face('inside', one.inside, one.pull_inside)}; {verdict}."


def _face(side: str, layers: tuple[Layer, ...], pull: Quantity) -> str:
    sums: dict[str, float] = {}
    for layer in layers:
        sums[layer.title] = sums.get(layer.title, 0.0) + layer.pull.value
    parts = [f"{escape(title)} {value:.1f}" for title, value in sums.items()]
    if len(sums) == 1:
        parts = [escape(title) for title in sums]
    return f"{side} {pull.value:.1f}" + (f" ({', '.join(parts)})" if parts else "")
