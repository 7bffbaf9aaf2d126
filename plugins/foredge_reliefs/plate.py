"""A plate: a flat piece of any outline with a bevelled edge: leaves, gears, plaques."""

from __future__ import annotations

from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    RELIEF_PART,
    Length,
    LengthOrZero,
    Problem,
    ReliefJob,
    ReliefPartOptions,
    ReliefPartResult,
    Slab,
    error,
    faults_of_polygon,
    inset,
    option_path,
    place_solids,
    refuse_part,
)

PlatePoint = tuple[LengthOrZero, LengthOrZero]
RULE = "relief-outline"


class PlateOptions(ReliefPartOptions, frozen=True, kw_only=True, tag="plate"):
    """A plate."""

    points: Annotated[
        tuple[PlatePoint, ...],
        Meta(
            min_length=3,
            max_length=300,
            description="x and y of its corners in order, on the panel (or from the place that "
            "x and y say).",
        ),
    ]
    thickness: Annotated[Length, Meta(description="Of the bare plate.")]
    bevel: (
        Annotated[
            LengthOrZero,
            Meta(description="How much is cut off its upper edge at 45 degrees. Left out: none."),
        ]
        | None
    ) = None


class Plate:
    """A plate on the panel; without x and y its corners are the panel's own."""

    kind = RELIEF_PART
    name = "plate"
    title = "Plate"
    options = PlateOptions

    def shape(self, job: ReliefJob) -> ReliefPartResult:
        """A prism with a bevelled edge."""
        options: PlateOptions = job.part.options
        problems = _problems(job, options)
        if problems:
            return refuse_part(*problems)
        none = 0 * options.thickness
        bevel = options.bevel if options.bevel is not None else none
        return place_solids(job, Slab(options.points, options.thickness, bevel), x=none, y=none)


def _problems(job: ReliefJob, options: PlateOptions) -> list[Problem]:
    """What is wrong with the outline, or with the bevel on it."""
    corners = [(x.value, y.value) for x, y in options.points]
    faults = [
        error(
            option_path(job, "points"),
            f"the plate's outline is not a plain one: {fault}",
            RULE,
            remedy="Give the corners in the order in which you would cut round them",
        )
        for fault in faults_of_polygon(corners)
    ]
    bevel = options.bevel.value if options.bevel is not None else 0.0
    if faults or not bevel:
        return faults
    thickness = options.thickness.value
    if bevel > thickness:
        text = f"the bevel of {bevel:g} mm is deeper than the plate's {thickness:g} mm"
        remedy = "Make the bevel smaller, or the plate thicker"
        return [error(option_path(job, "bevel"), text, "relief-bevel", remedy=remedy)]
    if inset(corners, bevel) is None:
        text = f"the outline is too narrow for a bevel of {bevel:g} mm all round"
        remedy = "Make the bevel smaller, or leave out the shortest sides"
        return [error(option_path(job, "bevel"), text, "relief-bevel", remedy=remedy)]
    return []


PLUGIN = Plate()
