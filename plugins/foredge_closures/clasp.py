"""``clasp``: bought, chosen and fitted when the finished book can be measured."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    ClosureJob,
    ClosureResult,
    Length,
    PartOptions,
    Problem,
    Quantity,
    StageResult,
    Stuff,
    Text,
    Use,
    cited,
    note,
    number,
    say,
    warning,
)
from foredge_closures import bench
from foredge_closures.seen import over_fore_edge
from foredge_closures.sheet import Mark, board_sheet, off_board


class ClaspOptions(PartOptions, frozen=True, kw_only=True, tag="clasp"):
    """Options of ``use: clasp``."""

    count: Annotated[Literal[1, 2], Meta(description="One, or two at a quarter.")] = 1
    plate_width: Annotated[Length, Meta(description="Plate, from the fore-edge inwards.")]
    plate_height: Annotated[Length, Meta(description="Plate, along the fore-edge.")]
    pin: Annotated[Length, Meta(description="How deep its pins go.")] | None = None
    reach: (
        Annotated[Length, Meta(description="From plate to plate, of the clasp in hand.")] | None
    ) = None
    over_relief: Annotated[bool, Meta(description="It crosses the relief.")] = False


class Clasp:
    """A metal clasp over the fore-edge."""

    kind = "closure"
    name = "clasp"
    title = "Clasp"
    options = ClaspOptions

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """The reach it must have; plates on both boards; nothing before the book is done."""
        said, book = job.part.options, job.book
        ease = book.practice("clasp-ease")
        thick = (job.thickness if said.over_relief else job.case_thickness) + job.swell
        reach = bench.named(
            "reach", thick + ease, "reach of the clasp",
            "the closed book where it crosses, and a little ease", f"geometry; {cited(ease)}",
        )  # fmt: skip
        places = [job.board_height * share for share in ((0.5,), (0.25, 0.75))[said.count - 1]]
        wide, high = said.plate_width, said.plate_height
        marks = [Mark("plate", wide / 2, head, wide, high) for head in places]
        fit = bench.fit_closure(
            job, "Fit the clasp", _steps(job.book.size(reach)), after=(job.cased_in,),
            hazards=("awl-needle", "hammer", "small-parts"),
            tools=("awl or fine drill", "pliers", "small hammer", "rule"),
        )  # fmt: skip
        clasps = Use("clasp with two plates", number(said.count))
        problems = (*_problems(job, reach, ease), *off_board(job, marks))
        return ClosureResult(
            StageResult(
                quantities=(reach,),
                uses=(clasps,),
                operations=(bench.with_bought(fit, clasps),),
                drawings=tuple(board_sheet(job, side, "outside", marks) for side in _SIDES),
                problems=problems,
                looks=over_fore_edge(
                    job,
                    Stuff(row="brass", texture="metal"),
                    wide,
                    high.value,
                    [place.value for place in places],
                ),
            ),
            2 * book.default("clasp-plate"),
            bench.FIT,
        )


def _steps(reach: Quantity) -> tuple[Text, ...]:
    return (
        say("Measure the closed book where the clasp goes over; it should come to {reach}.",
            reach=reach),
        say("Only now choose the clasp, or bend its strap to that reach."),
        say("Lay the templates on the outsides; mark the plates flush with the fore-edge."),
        say("Put the catch on the front first: bore for its pins, a drop of glue, tap them in."),
        say("Close the clasp, hold its hinge plate on the back board, mark and pin it."),
        say("It must close without a push, and the boards stay flat."),
    )  # fmt: skip


_SIDES: tuple[Literal["front", "back"], ...] = ("front", "back")


def _problems(job: ClosureJob, reach: Quantity, ease: Quantity) -> list[Problem]:
    said, found = job.part.options, list[Problem]()
    through = job.board + job.covering
    if said.pin is not None and said.pin.value >= through.value:
        found.append(
            warning(
                (*job.part.path, "pin"),
                f"pins {bench.mm(said.pin)} long come through a board of {bench.mm(through)} with "
                "its covering",
                "clasp-pin-through",
                consequence="They stick out of the paste-down and tear the leaf before it",
                remedy="Nip them shorter, or take a thicker board",
                source="geometry",
            )
        )
    return [*found, *_reach_problems(job, reach, ease)]


def _reach_problems(job: ClosureJob, reach: Quantity, ease: Quantity) -> list[Problem]:
    has = job.part.options.reach
    if has is None or (reach - ease).value <= has.value <= (reach + 2 * ease).value:
        return []
    path = (*job.part.path, "reach")
    text = f"the clasp reaches {bench.mm(has)}, the closed book needs {bench.mm(reach)}"
    if has.value < reach.value:
        short = "It will not close, or springs the cover"
        remedy = "Take a longer clasp, or move it clear of the relief"
        return [warning(path, text, "clasp-short", consequence=short, remedy=remedy,
                        source="geometry")]  # fmt: skip
    remedy = "Pad under the catch, or bend the strap"
    return [note(path, text, "clasp-loose", consequence="The book gapes behind it", remedy=remedy,
                 source=cited(ease))]  # fmt: skip


PLUGIN = Clasp()
