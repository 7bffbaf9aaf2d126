"""The work in time, as a drawing: a row a step, a bar where it is in hand, grey where it rests.

Fits a sheet of A4 laid across. A long book takes several.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from foredge.contract import Build, Drawing, Label, Line, Shape, TimedStep, WorkPlan
from foredge.contract.work_plan import DAY
from foredge.drawing.model import Item, Role
from foredge.drawing.textbox import text_width
from foredge.emit.calendar_words import DAYS, MONTHS
from foredge.emit.escape import one_line
from foredge.emit.work import step_numbers

WIDTH = 277.0
"""Of an A4 sheet laid across, without its margins, mm."""

EDGE = 3.0
"""Left free at every side, mm."""

LEFT, TOP, ROW = 92.0, 21.0, 5.0
MOST_ROWS = 30
FOOT = 12.0
LETTERS = 2.8
LEAST_BAR = 0.6
"""Narrowest bar that still shows in print, mm."""

GAP = 1.5
_THIN: Role = "dimension"


def timeline_drawings(build: Build) -> tuple[Drawing, ...]:
    """The timeline of the schedule; none where nothing is scheduled."""
    plan = build.plan.work
    if plan is None or not plan.steps:
        return ()
    steps = sorted(plan.steps, key=lambda step: (step.start, step.finish))
    sheets = -(-len(steps) // MOST_ROWS)
    size = -(-len(steps) // sheets)
    pages = [steps[at : at + size] for at in range(0, len(steps), size)]
    return tuple(_page(build, plan, page, at, len(pages)) for at, page in enumerate(pages, start=1))


def _page(build: Build, plan: WorkPlan, steps: Sequence[TimedStep], at: int, of: int) -> Drawing:
    scale = _Scale.over(steps)
    height = TOP + ROW * len(steps) + FOOT
    foot = TOP + ROW * len(steps)
    items: list[Item] = [Label((EDGE, 7.0), "The work in time", 4.5)]
    if of > 1:
        items.append(Label((WIDTH - EDGE, 7.0), f"sheet {at} of {of}", LETTERS, anchor="end"))
    items += _stripes(len(steps))
    items += _days(plan, scale, foot)
    items += _rows(build, steps, scale)
    items += _legend(foot)
    name = "schedule-timeline" + (f"-{at}" if of > 1 else "")
    title = "The work in time" + (f", sheet {at} of {of}" if of > 1 else "")
    return Drawing(name, title, WIDTH, height, tuple(items))


@dataclass(frozen=True, slots=True)
class _Scale:
    """Minutes on the sheet; ``first`` and ``last`` are whole days."""

    first: int
    last: int

    @classmethod
    def over(cls, steps: Sequence[TimedStep]) -> _Scale:
        first = min(step.start for step in steps) // DAY
        last = -(-max(step.ready for step in steps) // DAY)
        return cls(first * DAY, max(last, first + 1) * DAY)

    def x(self, minute: int) -> float:
        """Where ``minute`` lies, mm."""
        share = (minute - self.first) / (self.last - self.first)
        return LEFT + (WIDTH - EDGE - LEFT) * share

    @property
    def days(self) -> int:
        """Days on the sheet."""
        return (self.last - self.first) // DAY


def _stripes(rows: int) -> Iterator[Item]:
    """Every second row a little darker, so that the eye keeps to it."""
    for row in range(0, rows, 2):
        yield _block(EDGE, WIDTH - EDGE, TOP + row * ROW, TOP + (row + 1) * ROW, 0.05)


def _days(plan: WorkPlan, scale: _Scale, foot: float) -> Iterator[Item]:
    """A line where a week begins, a tick for every other day as long as there is room."""
    room = (WIDTH - EDGE - LEFT) / scale.days
    free = LEFT  # where the next date may begin
    for day in range(scale.days + 1):
        minute = scale.first + day * DAY
        x = scale.x(minute)
        monday = plan.when(minute).weekday() == 0
        if monday or room >= 1.0:
            yield Line(((x, TOP - (3.0 if monday else 1.5)), (x, foot if monday else TOP)), _THIN)
        words = _date(plan, minute)
        width = text_width(words, LETTERS)
        if x >= free and x + width <= WIDTH - EDGE and (monday or day == 0 or room >= width + GAP):
            yield Label((x, TOP - 4.0), words, LETTERS)
            free = x + width + GAP


def _date(plan: WorkPlan, minute: int) -> str:
    when = plan.when(minute)
    if not plan.dated:
        return f"{DAYS[when.weekday()]} {minute // (7 * DAY) + 1}"
    return f"{DAYS[when.weekday()]} {when.day} {MONTHS[when.month - 1]}"


def _rows(build: Build, steps: Sequence[TimedStep], scale: _Scale) -> Iterator[Item]:
    numbers = step_numbers(build)
    titles = {operation.id: operation.title for operation in build.order}
    for row, step in enumerate(steps):
        top = TOP + row * ROW
        words = one_line(f"{numbers[step.operation]}  {titles[step.operation]}")
        room = LEFT - EDGE - 3.0
        yield Label((EDGE + 1.0, top + ROW * 0.68), _fitted(words, room, LETTERS), LETTERS)
        if step.ready > step.finish:
            yield _bar(scale.x(step.finish), scale.x(step.ready), top, 0.3, 0.3)
        for stretch in step.stretches:
            begin, end = scale.x(stretch.begin), scale.x(stretch.end)
            tall = 0.12 if step.critical else 0.26
            yield _bar(begin, max(end, begin + LEAST_BAR), top, tall, 1.0)


def _bar(left: float, right: float, top: float, inset: float, shade: float) -> Shape:
    """A bar in its row; ``inset`` is left free above and below, in rows."""
    return _block(left, right, top + ROW * inset, top + ROW * (1 - inset), shade)


def _block(left: float, right: float, upper: float, lower: float, shade: float) -> Shape:
    ring = ((left, upper), (right, upper), (right, lower), (left, lower))
    return Shape((ring,), "fill", shade)


def _legend(foot: float) -> Iterator[Item]:
    y = foot + FOOT - 4.0
    x = EDGE
    told = (
        (0.12, 1.0, "in hand; put it off, and the end moves"),
        (0.26, 1.0, "in hand; can wait"),
        (0.3, 0.3, "dries or rests"),
    )
    for inset, shade, words in told:
        yield _bar(x, x + (LEAST_BAR * 2 if shade == 1.0 else 6.0), y - ROW * 0.68, inset, shade)
        yield Label((x + 8.0, y), words, LETTERS)
        x += 8.0 + text_width(words, LETTERS) + 6.0


def _fitted(words: str, room: float, size: float) -> str:
    """``words``, cut short with an ellipsis where they are wider than ``room``."""
    if text_width(words, size) <= room:
        return words
    while words and text_width(words + "…", size) > room:
        words = words[:-1]
    return words.rstrip() + "…"
