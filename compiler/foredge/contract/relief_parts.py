"""Relief parts: their common options, what the sculpt stage hands them, what they return."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Annotated, Any, Literal, Protocol

from msgspec import Meta

from foredge.contract.book import Book
from foredge.contract.measures import Angle, LengthOrZero, Part
from foredge.contract.options import PartOptions
from foredge.contract.plugin import PartPlugin
from foredge.contract.solid_check import faults_of_solid, in_floats
from foredge.contract.solids import Made, Placed, ReliefShape, Solid
from foredge.dimension import LENGTH
from foredge.problem import Path, Problem, error
from foredge.quantity import Origin, Quantity, leaf, number

RELIEF_PART = "relief-part"
"""The kind of relief parts."""

FORM = "relief-form"
"""The rule of a solid that cannot be."""

NO_LIFT = leaf(0.0, LENGTH, "relief.lift", Origin("constant"), label="lift")

_MADE: dict[str, Made] = {"foil": "core", "none": "clay", "rigid": "rigid"}


class ReliefPartOptions(PartOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What every relief part can be told; give the subclass ``tag="..."``.

    ``x`` and ``y`` are measured from the panel's corner at the head, on the spine's side: x
    away from the spine, y towards the tail. (On the spine itself: from its left edge at the
    head, as you face it.)
    """

    name: Annotated[str, Meta(description="What the drawing calls it.")] | None = None
    x: (
        Annotated[
            LengthOrZero,
            Meta(
                description="How far it is from the panel's spine edge (on the spine: from its "
                "left edge). Left out: in the middle."
            ),
        ]
        | None
    ) = None
    y: (
        Annotated[
            LengthOrZero,
            Meta(description="How far it is from the panel's head. Left out: in the middle."),
        ]
        | None
    ) = None
    turn: (
        Annotated[
            Angle,
            Meta(description="How far it is turned from 'away from the spine' to 'to the tail'."),
        ]
        | None
    ) = None
    lift: (
        Annotated[
            LengthOrZero,
            Meta(description="How far above the board it stands, on another part."),
        ]
        | None
    ) = None
    core: Annotated[
        Literal["foil", "none", "rigid"],
        Meta(
            description="What is in it: crumpled foil under a skin of clay, none (it is clay "
            "right through), or rigid (a thing of its own that the clay rings)."
        ),
    ] = "foil"

    @property
    def made(self) -> Made:
        """``core`` in the words of a :class:`ReliefShape`."""
        return _MADE[self.core]


@dataclass(frozen=True, slots=True)
class Panel:
    """Where a relief stands: ``front``, ``back`` or ``spine``; ``width`` along x, ``height``
    along y."""

    name: str
    width: Quantity
    height: Quantity


@dataclass(frozen=True, slots=True)
class ReliefJob:
    """A part to be shaped. ``x`` and ``y`` are where it stands unless its options say so:
    the middle of the panel, or 0 for a part that another one (scatter) puts in its place."""

    book: Book
    part: Part[Any]
    panel: Panel
    x: Quantity
    y: Quantity


@dataclass(frozen=True, slots=True)
class ReliefPartResult:
    """``shape`` is None where ``problems`` hold an error. ``note`` is a remark for the sheet."""

    shape: ReliefShape | None
    problems: tuple[Problem, ...] = ()
    note: str = ""


class ReliefPart(PartPlugin, Protocol):
    """A form of the relief; kind ``relief-part``."""

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """Its solids, placed on the panel."""
        ...


def relief_job(book: Book, part: Part[Any], panel: Panel) -> ReliefJob:
    """The job of one part of a panel; without x and y of its own it stands in the middle."""
    return ReliefJob(book, part, panel, panel.width / 2, panel.height / 2)


def shape_part(job: ReliefJob, part: Part[Any] | None = None) -> ReliefPartResult:
    """What the part of ``job`` makes, or another ``part`` (a nested one) on the same panel."""
    job = job if part is None else replace(job, part=part)
    result: ReliefPartResult = job.part.plugin.shape(job)
    return result


def place_solids(
    job: ReliefJob,
    *solids: Solid[Quantity],
    x: Quantity | None = None,
    y: Quantity | None = None,
) -> ReliefPartResult:
    """The result of a part whose ``solids`` all stand at its own place, turned as it asks.

    ``x`` and ``y`` take the place of the middle of the panel for a part that says neither.
    A solid that cannot be is a problem of the rule ``relief-form``.
    """
    options: ReliefPartOptions = job.part.options
    at_x = options.x if options.x is not None else x if x is not None else job.x
    at_y = options.y if options.y is not None else y if y is not None else job.y
    turn = options.turn if options.turn is not None else number(0)
    lift = options.lift if options.lift is not None else NO_LIFT
    faults = [fault for solid in solids for fault in faults_of_solid(in_floats(solid))]
    if faults:
        title = job.part.plugin.title.lower()
        return refuse_part(
            *(error(job.part.path, f"this {title} cannot be made: {f}", FORM) for f in faults)
        )
    pieces = tuple(Placed(solid, at_x, at_y, turn, lift) for solid in solids)
    return ReliefPartResult(ReliefShape(pieces, options.made))


def refuse_part(*problems: Problem) -> ReliefPartResult:
    """The result of a part that cannot be made."""
    return ReliefPartResult(None, problems)


def option_path(job: ReliefJob, *keys: str | int) -> Path:
    """The place in the spec of an option of the job's part."""
    return (*job.part.path, *keys)
