"""The stage ``sculpt``: reliefs on boards and spine, from the armature to the dried clay."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from foredge.contract import (
    INTO_CASE,
    LENGTH,
    Book,
    Gate,
    Operation,
    Options,
    Origin,
    Quantity,
    Raised,
    Reading,
    Side,
    SkinResult,
    StageResult,
    Upstream,
    leaf,
    maximum,
    merge,
    panel_of,
    reliefs_of,
    say,
    total,
)
from foredge_stages.sculpt.after import COVERS, fit_covering, press_board, tie_shut
from foredge_stages.sculpt.begun import Begun, begin
from foredge_stages.sculpt.clay import mix_clay
from foredge_stages.sculpt.drawings import plan, sections
from foredge_stages.sculpt.layers import check_dry, lay_skin
from foredge_stages.sculpt.reading import PANELS, WORDS, read_reliefs
from foredge_stages.sculpt.sanding import sand

BEFORE = {"bare-board": COVERS, "covered-case": INTO_CASE, "finished-book": ()}
"""What must not begin before the clay is dry, by what the relief is made on."""

_FACES: dict[str, Side] = {"front": "front", "back": "back", "spine": "spine"}
_NONE = Origin("constant", text="0 mm")


class SculptOptions(Options, frozen=True, kw_only=True):
    """The stage reads its reliefs from the list ``embellishment``."""


@dataclass(frozen=True, slots=True)
class SculptStage:
    """Every item of ``embellishment`` whose plugin belongs to this stage.

    Facts: ``sculpt.dry`` is the operation after which all clay is dry through,
    ``sculpt.made_on`` what the first relief is made on, and the same with a panel's name.
    """

    kind: str = "stage"
    name: str = "sculpt"
    title: str = "Relief"
    section: str = "embellishment"
    prefix: str = "sculpt"
    needs: tuple[str, ...] = ("text-block", "case")
    options: type[SculptOptions] = SculptOptions

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        """Solids, masses, recipe and the work of every relief."""
        if not _known(upstream):
            return StageResult()
        reliefs, problems = read_reliefs(book, upstream)
        if problems and len(reliefs) < len(reliefs_of(book)):
            return _flat(upstream, ()) + StageResult(problems=tuple(problems))
        made = [begin(relief) for relief in reliefs]
        clay = mix_clay(made)
        parts = [_one(one, clay.of[one.relief.on]) for one in made]
        return merge(
            (
                _flat(upstream, made),
                clay.work,
                *parts,
                _closing(book, made),
                StageResult(problems=tuple(problems)),
            )
        )


def _known(upstream: Upstream) -> bool:
    """Whether the stages before this one got far enough for a relief to stand on."""
    names = {q.name for _, result in upstream.results for q in result.quantities}
    needed = {"case.board.width", "case.board.height", "case.mass", "case.joint"}
    return needed | {"text_block.mass", "text_block.offcuts.mass"} <= names


def _one(made: Begun, mixed: SkinResult) -> StageResult:
    """The work on one panel, from its ground to the dry test."""
    relief, weights = made.relief, made.weights
    skin = lay_skin(relief, weights, made.armature, mixed)
    last: tuple[str, ...] = (skin.operations[-1].id,)
    tied = tie_shut(relief, last)
    last = tuple(one.id for one in tied.operations) or last
    sanded = sand(relief, last)
    last = tuple(one.id for one in sanded.operations) or last
    dry = check_dry(relief, last, BEFORE[relief.made_on])
    report = relief.report
    known = relief.called(report.skin_volume, report.surface, report.base_area)
    return merge(
        (
            made.ground.work,
            made.armature.work,
            StageResult(quantities=known),
            skin,
            tied,
            sanded,
            StageResult(
                quantities=weights.quantities,
                operations=(dry,),
                drawings=(plan(relief), sections(relief)),
                looks=(Raised(_FACES[relief.on], relief.shapes, relief.skin),),
            ),
            fit_covering(relief, dry.id, weights.height),
            press_board(relief, dry.id, weights.height),
        )
    )


def _flat(upstream: Upstream, made: Sequence[Begun]) -> StageResult:
    """Height, painted surface and footprint of every panel; 0 mm high where it is bare."""
    by_panel = {one.relief.on: one for one in made}
    found: list[Quantity] = []
    for on in PANELS:
        panel = panel_of(upstream.quantity, on)
        whole, one = panel.width * panel.height, by_panel.get(on)
        surface = whole
        if one is None:
            found.append(
                (1 * leaf(0.0, LENGTH, "no relief", _NONE)).named(
                    f"sculpt.height.{on}",
                    label=f"height of the relief, {on}",
                    rule="there is none",
                    source="geometry",
                )
            )
        else:
            report = one.relief.report
            surface = report.surface + maximum(whole - report.base_area, 0 * whole)
            found.append(
                (1 * report.footprint_area).named(
                    f"sculpt.footprint.{on}",
                    label=f"outline of the relief from above, {on}",
                    rule="the shadow it throws on the panel",
                    source="geometry",
                )
            )
        found.append(
            surface.named(
                f"sculpt.surface.{on}",
                label=f"surface to be painted, {on}",
                rule="the relief, and the flat ground round it",
                source="geometry",
            )
        )
    return StageResult(quantities=tuple(found))


def _closing(book: Book, made: Sequence[Begun]) -> StageResult:
    """Gate G3, and what only all reliefs together say."""
    if not made:
        return StageResult()
    dry = [one.relief.op("check-dry") for one in made]
    gather = _gather(book, dry) if len(dry) > 1 else ()
    last = gather[0].id if gather else dry[0]
    mass = total([one.weights.dry for one in made]).named(
        "sculpt.mass.dry",
        label="mass of all reliefs, dry",
        rule="the sum over the panels",
        source="geometry",
    )
    readings = tuple(
        Reading(
            f"relief.{one.relief.on}",
            f"height of the relief, {WORDS[one.relief.on]}",
            one.weights.height,
        )
        for one in made
    )
    gate = Gate(
        "G3",
        "Height of the relief",
        last,
        readings,
        (
            say("Lay a rule on edge over the highest point, level with the ground."),
            say("Measure from the bare ground beside the relief up to the rule."),
        ),
    )
    facts = [("sculpt.dry", last), ("sculpt.made_on", made[0].relief.made_on)]
    facts += [(f"sculpt.made_on.{one.relief.on}", one.relief.made_on) for one in made]
    return StageResult(quantities=(mass,), operations=gather, gates=(gate,), facts=tuple(facts))


def _gather(book: Book, dry: Sequence[str]) -> tuple[Operation, ...]:
    """With several reliefs, the place where all of them are measured."""
    return (
        Operation(
            "sculpt.measure-reliefs",
            "Measure all reliefs",
            (say("All clay is dry through: measure every relief now."),),
            book.practice("hand-measure"),
            after=tuple(dry),
            tools=("rule", "caliper"),
        ),
    )


PLUGIN = SculptStage()
