"""What a relief weighs, how high it stands, and what that asks of the joint."""

from __future__ import annotations

import math
from dataclasses import dataclass

from foredge.contract import (
    LENGTH,
    RATIO,
    Origin,
    Quantity,
    cited,
    given,
    leaf,
    level_cuts,
    opaque,
    total,
)
from foredge_stages.sculpt.armature import Armature
from foredge_stages.sculpt.reading import Relief

GEOMETRY = "geometry"
LEVELS = 24
"""Level cuts that are searched for the point a cover lying open comes to rest on."""


@dataclass(frozen=True, slots=True)
class Weights:
    """Masses in g. ``wet`` is just after the last clay is on, ``dry`` for good.

    ``height`` is gate G3; ``put_on`` the volume of fresh clay that dries to the relief.
    """

    height: Quantity
    put_on: Quantity
    water: Quantity
    wet: Quantity
    dry: Quantity
    quantities: tuple[Quantity, ...]


def weigh(relief: Relief, armature: Armature) -> Weights:
    """Masses, height, moment, tilt and what is left free round it."""
    on, figures, report = relief.on, relief.figures, relief.report
    put_on = (report.skin_volume / figures.kept).named(
        f"sculpt.put_on.{on}",
        label=f"fresh clay on the {relief.where}",
        rule="the dry clay, larger by what it shrinks in all three directions",
        source=figures.source,
    )
    fresh = put_on * figures.wet_density
    water = (fresh * (1 - figures.solids)).named(
        f"sculpt.water.{on}",
        label=f"water in the clay, {on}",
        rule="what of the fresh clay does not stay",
        source=cited(figures.solids, "the maker's choice"),
    )
    clay = report.skin_volume * figures.dry_density
    others = total([*armature.masses, *_insets(relief), *_inclusions(relief)])
    wet = (fresh + others).named(
        f"sculpt.mass.{on}.wet",
        label=f"mass of the relief, wet, {on}",
        rule="fresh clay, core, tape and what is set in",
        source=GEOMETRY,
    )
    dry = (clay + others).named(
        f"sculpt.mass.{on}.dry",
        label=f"mass of the relief, dry, {on}",
        rule="dry clay, core, tape and what is set in",
        source=GEOMETRY,
    )
    height = height_of(relief)
    known = (height, put_on, water, wet, dry, *_free(relief))
    return Weights(height, put_on, water, wet, dry, known + _hinge(relief, height, dry))


def height_of(relief: Relief) -> Quantity:
    """The height of the relief above its ground: gate G3."""
    book, on = relief.book, relief.on
    row = book.practice("relief-spread")
    modelled = relief.report.height * row
    return book.measured(modelled, "G3", f"relief.{on}", f"height of the relief, {on}").named(
        f"sculpt.height.{on}",
        label=f"height of the relief, {on}",
        rule="its highest point above the ground it stands on, dry",
        source=cited(row),
    )


def _insets(relief: Relief) -> list[Quantity]:
    if not relief.made("rigid"):
        return []
    said = relief.options.inset_density
    density = said if said is not None else relief.book.practice("inset-density")
    return [relief.report.rigid_volume * density]


def _inclusions(relief: Relief) -> list[Quantity]:
    return [one.mass for one in relief.options.inclusions if one.mass is not None]


def _free(relief: Relief) -> tuple[Quantity, ...]:
    """What is left flat between the relief and each edge of its panel: for closures, fingers."""
    points = [point for ring in relief.report.footprint for point in ring]
    if not points:
        return ()
    xs, ys = [x for x, _ in points], [y for _, y in points]
    panel, base = relief.panel, relief.report.footprint_area
    left = "left_edge" if relief.on == "spine" else "joint"
    right = "right_edge" if relief.on == "spine" else "fore_edge"
    gaps = {
        left: _at(relief, min(xs), base),
        right: panel.width - _at(relief, max(xs), base),
        "head": _at(relief, min(ys), base),
        "tail": panel.height - _at(relief, max(ys), base),
    }
    return tuple(
        gap.named(
            f"sculpt.free.{relief.on}.{edge}",
            label=f"free at the {edge.replace('_', '-')}, {relief.on}",
            rule="from the outline of the relief to the edge of its panel",
            source=GEOMETRY,
        )
        for edge, gap in gaps.items()
    )


def _at(relief: Relief, mm: float, decided_by: Quantity) -> Quantity:
    """A place read from the outline of the solids, and what that outline rests on."""
    origin = Origin("constant", text="read from the outline")
    return given(leaf(mm, LENGTH, f"sculpt.{relief.on}.outline", origin), decided_by)


def _hinge(relief: Relief, height: Quantity, dry: Quantity) -> tuple[Quantity, ...]:
    """Cover mass, its moment about the joint, and the tilt of a cover that lies open."""
    if relief.on == "spine":
        return ()
    find, on = relief.upstream.quantity, relief.on
    joint = find("case.joint")
    bare = (find("case.mass") / 2).named(
        f"sculpt.cover.{on}.bare",
        label=f"mass of the {on} cover without its relief",
        rule="half the case",
        source=GEOMETRY,
    )
    cover = (bare + dry).named(
        f"sculpt.cover.{on}",
        label=f"mass of the {on} cover",
        rule="half the case and the dry relief",
        source=GEOMETRY,
    )
    share = (dry / find("text_block.mass")).named(
        f"sculpt.share.{on}",
        label=f"mass of the relief by that of the block, {on}",
        rule="a cover heavy for its block tears its hinge first",
        source=cited(relief.book.practice("relief-mass-block")),
    )
    pull = bare * (relief.panel.width / 2 + joint)
    moment = (pull + dry * (_centre_x(relief, dry) + joint)).named(
        f"sculpt.moment.{on}",
        label=f"moment about the joint, {on} cover held level",
        rule="cover and relief, each by the distance of its centre from the fold of the joint",
        source=GEOMETRY,
    )
    times = (moment / pull).named(
        f"sculpt.moment.{on}.times",
        label=f"pull on the joint by that of the bare {on} cover",
        rule="what the relief adds to what the joint carries",
        source=GEOMETRY,
    )
    return (bare, cover, share, moment, times, *_tilt(relief, height, joint))


def _centre_x(relief: Relief, dry: Quantity) -> Quantity:
    """How far the relief's centre of mass is from the spine edge of its board."""
    report, figures = relief.report, relief.figures
    clay = report.skin_volume * figures.dry_density
    rest = dry - clay
    core = report.core_centre if relief.made("core") else report.rigid_centre
    return (clay * report.skin_centre.x + rest * core.x) / dry


def _tilt(relief: Relief, height: Quantity, joint: Quantity) -> tuple[Quantity, ...]:
    """The angle at which a cover laid open on the table comes to rest on its relief."""
    levels = relief.report.height.value
    cuts = level_cuts(
        relief.shapes, relief.skin, [levels * (step + 0.5) / LEVELS for step in range(LEVELS)]
    )
    steepest = max(
        (
            (cut.height_mm / max(x + joint.value, 1.0), x, cut.height_mm)
            for cut in cuts
            for ring in cut.rings
            for x, _ in ring
        ),
        default=None,
    )
    if steepest is None:
        return ()
    lever = (_at(relief, steepest[1], relief.report.height) + joint).named(
        f"sculpt.rest.{relief.on}",
        label=f"where the open {relief.on} cover rests, from the joint",
        rule="the point of the relief that stands highest for its distance from the joint",
        source=GEOMETRY,
    )
    share = leaf(steepest[2] / levels, RATIO, "level of the contour", Origin("constant"))
    tilt = opaque(degrees, (height * share / lever,), RATIO).named(
        f"sculpt.tilt.{relief.on}",
        label=f"tilt of the {relief.on} cover laid open on a table, degrees",
        rule="the angle whose tangent is height over distance",
        source=GEOMETRY,
    )
    return lever, tilt


def degrees(slope: float) -> float:
    """The angle of a slope, in degrees."""
    return math.degrees(math.atan(slope))
