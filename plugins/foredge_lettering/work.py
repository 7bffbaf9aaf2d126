"""Printing, tracing, painting and protecting the letters, with what they use."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    RATIO,
    Operation,
    Origin,
    OrnamentJob,
    Part,
    Quantity,
    StageResult,
    Text,
    Use,
    cautions,
    cited,
    dry_in_room,
    leaf,
    maximum,
    number,
    say,
)
from foredge_lettering.fit import Fit
from foredge_lettering.place import Place
from foredge_lettering.setting import Setting
from foredge_lettering.tools import ToolFigures

_VARNISH = "varnish-matte"
_TOP_COATS = frozenset({"brush-varnish", "spray-varnish", "wax"})
"""Finishes that the whole book gets last, letters and all."""


@dataclass(frozen=True, slots=True)
class Amounts:
    """``line``: how far the tool travels; ``covers``: the area that is painted; ``thickness``
    of the dry letters."""

    line: Quantity
    covers: Quantity
    paint: Quantity
    thickness: Quantity

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """All of them are named."""
        return self.line, self.covers, self.paint, self.thickness


def amounts(
    job: OrnamentJob, fit: Fit, setting: Setting, tool: ToolFigures, citation: str
) -> Amounts:
    """Length, area, paint and thickness of letters set to their height."""
    name, book = f"finishing.{job.key}", job.book
    line = (fit.height * _ratio(setting.length, f"{name}.line_by_height", citation)).named(
        f"{name}.line",
        label="outline of the letters" if setting.filled else "line of the letters",
        rule="the sum of all their lines",
        source=citation,
    )
    if setting.filled:
        share = _ratio(setting.area, f"{name}.area_by_height", citation)
        area = fit.height * fit.height * share
    else:
        area = line * tool.stroke
    covers = area.named(
        f"{name}.area",
        label="area of the letters",
        rule="inside their outlines" if setting.filled else "their line by its width",
        source=citation,
    )
    coverage = book.table("paints", tool.paint, "coverage")
    wet = covers * coverage
    thickness = coverage * tool.coats * book.practice("paint-dry-share")
    rule = "area by what a coat takes, by the coats, and the spare"
    if tool.raised and not setting.filled:
        wet = line * tool.stroke * tool.stroke * number(math.pi / 8)
        thickness = tool.stroke * tool.coats / 2
        rule = "a half-round bead as wide as the nozzle's line, and the spare"
    paint = (wet * tool.coats * (1 + book.practice("waste-paint"))).named(
        f"{name}.paint", label="paint for the letters", rule=rule, source=cited(coverage)
    )
    high = thickness.named(
        f"{name}.thickness",
        label="thickness of the letters",
        rule="a half-round bead" if tool.raised else "what is left of the coats when dry",
        source="geometry" if tool.raised else cited(book.practice("paint-dry-share")),
    )
    return Amounts(line, covers, paint, high)


def _ratio(value: float, name: str, citation: str) -> Quantity:
    label = name.rpartition(".")[2].replace("_", " ")
    return leaf(value, RATIO, name, Origin("constant", citation=citation), label=label)


def _goes_over(part: Part[Any]) -> bool:
    """Whether a coat lies on the letters anyway: their own varnish would come between."""
    return part.plugin.name in _TOP_COATS or "lettering" in (
        getattr(part.options, "on", None) or ()
    )


def operations(
    job: OrnamentJob, place: Place, fit: Fit, setting: Setting, tool: ToolFigures, made: Amounts
) -> tuple[StageResult, str, Quantity]:
    """The work, the operation after which it is done, and how long until faces may touch."""
    book = job.book
    work = [_print(job, place, fit), _transfer(job, place, setting)]
    work.append(_letter(job, fit, setting, tool, made))
    close = book.table("paints", tool.paint, "close")
    covered = any(_goes_over(part) for part in book.finishing)
    protect = job.part.options.protect or ("" if covered else _VARNISH)
    if protect:
        work.append(_protect(job, place, protect))
        close = maximum(close, book.table("paints", protect, "close"))
    return StageResult(operations=tuple(work)), work[-1].id, close


def _id(job: OrnamentJob, verb: str) -> str:
    return f"finishing.{verb}-{job.key}"


def _name(job: OrnamentJob) -> str:
    return "spine title" if job.part.options.on == "spine" else f"{job.part.options.on} lettering"


def _print(job: OrnamentJob, place: Place, fit: Fit) -> Operation:
    mirrored = job.part.options.transfer == "rub-down"
    which = "mirrored trace sheet" if mirrored else "trace sheet"
    name = f"trace-{job.key}{'-mirrored' if mirrored else ''}"
    sizes = (place.panel_width, place.panel_height, fit.height, place.left, place.top)
    return Operation(
        _id(job, "print"),
        f"Print the tracing for the {_name(job)}",
        (
            say("Print the {which} ({name}) at 100 %, without fitting it to the page.",
                which=which, name=name),
            say("Hold a ruler against the bar: it must measure as it says."),
            say("Hold the sheet to the {panel}: {width} by {height}. The corners must meet.",
                panel=_panel(job), width=place.panel_width, height=place.panel_height),
        ),
        job.book.practice("hand-set-up"),
        after=job.after,
        stops_for=tuple(sorted(frozenset[str]().union(*(size.gates for size in sizes)))),
        tools=("printer", "rule"),
        batch=True,
    )  # fmt: skip


def _panel(job: OrnamentJob) -> str:
    return "spine" if job.part.options.on == "spine" else f"{job.part.options.on} board"


_TRANSFER: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "rub-down": (
        (
            "Go over the letters on the mirrored sheet with a soft pencil, on the printed side.",
            "Lay the sheet face down, its panel on the edges of the {panel}; tape one side.",
            "Rub the back of the sheet firmly with the bone folder, letter by letter.",
            "Lift a corner and look before the tape comes off.",
        ),
        ("soft pencil", "masking tape", "bone folder"),
    ),
    "carbon": (
        (
            "Lay the sheet face up, its panel on the edges of the {panel}; tape one side.",
            "Slip transfer paper under it, dark side down.",
            "Go over every line with a hard point.",
            "Lift a corner and look before the tape comes off.",
        ),
        ("transfer paper", "hard pencil", "masking tape"),
    ),
    "chalk": (
        (
            "Rub chalk over the back of the sheet behind the letters; shake the dust off.",
            "Lay the sheet face up, its panel on the edges of the {panel}; tape one side.",
            "Go over every line with a hard point.",
            "Lift a corner and look before the tape comes off.",
        ),
        ("chalk", "hard pencil", "masking tape"),
    ),
}  # fmt: skip


def _transfer(job: OrnamentJob, place: Place, setting: Setting) -> Operation:
    lines, tools = _TRANSFER[job.part.options.transfer]
    steps: list[Text] = [
        say(line, panel=_panel(job)) if "{panel}" in line else say(line) for line in lines
    ]
    if job.part.options.on == "spine" and place.runs != "across":
        way = "top" if place.runs == "down" else "bottom"
        steps.insert(0, say("The title reads from the {way} of the spine.", way=way))
    return Operation(
        _id(job, "trace"),
        f"Trace the {_name(job)}",
        tuple(steps),
        job.book.practice("hand-set-up")
        + number(setting.letters) * job.book.practice("hand-trace"),
        after=(_id(job, "print"), *job.after),
        tools=tools,
    )


def _letter(
    job: OrnamentJob, fit: Fit, setting: Setting, tool: ToolFigures, made: Amounts
) -> Operation:
    book, options = job.book, job.part.options
    title = book.words("paints", tool.paint, "title")
    drying = dry_in_room(book, book.table("paints", tool.paint, "next"))
    name = options.tool.replace("-", " ")
    steps = [
        say("Draw the longest word on scrap first: capitals {height}, line {stroke}.",
            height=fit.height, stroke=tool.stroke),
        say("Letter with the {tool}: {line} of line in all.", tool=name, line=made.line),
    ]  # fmt: skip
    if setting.filled:
        steps[1] = say(
            "Draw the outlines with the {tool}, then fill them: {area}.",
            tool=name,
            area=made.covers,
        )
    if tool.raised:
        steps.append(say("Keep the nozzle just above the work and let the bead fall into place."))
    if tool.coats.value > 1:
        steps.append(say("Give {coats} coats, {next} apart.", coats=tool.coats, next=drying))
    steps.append(say("Start at the top left and keep the hand off what is wet."))
    return Operation(
        _id(job, "letter"),
        f"Paint the {_name(job)}",
        tuple(steps),
        number(setting.letters) * tool.coats * book.practice("hand-letter"),
        after=(_id(job, "trace"),),
        wait=drying * tool.coats,
        waiting="the letters dry, coat by coat" if tool.coats.value > 1 else "the letters dry",
        cautions=cautions(book, "paints", tool.paint),
        uses=(Use(_coloured(title, options.colour), made.paint, note=_name(job)),),
        tools=(name, "scrap card", "damp cotton bud"),
    )


def _coloured(title: str, colour: str | None) -> str:
    return f"{title}, {colour}" if colour else title


def _protect(job: OrnamentJob, place: Place, paint: str) -> Operation:
    book = job.book
    area = place.width * place.height
    coverage = book.table("paints", paint, "coverage")
    title = book.words("paints", paint, "title")
    amount = area * coverage * (1 + book.practice("waste-paint"))
    return Operation(
        _id(job, "protect"),
        f"Protect the {_name(job)}",
        (
            say("Rub off what is left of the tracing."),
            say("Brush one thin coat over the letters, without going back into it: {what}.",
                what=title[:1].lower() + title[1:] if title[1:2].islower() else title),
        ),
        book.practice("hand-set-up"),
        after=(_id(job, "letter"),),
        wait=dry_in_room(book, book.table("paints", paint, "next")),
        waiting="the coat dries",
        cautions=cautions(book, "paints", paint),
        uses=(Use(title, amount, note=f"over the {_name(job)}"),),
        tools=("soft brush", "eraser"),
    )  # fmt: skip
