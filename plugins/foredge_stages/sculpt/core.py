"""The armature: foil to crumple, tape to wrap, glue points; and the work of it."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    AREA,
    VOLUME,
    Operation,
    Origin,
    Quantity,
    StageResult,
    Text,
    Use,
    ceil,
    cited,
    dry_in_room,
    leaf,
    maximum,
    number,
    rounded_up,
    say,
)
from foredge_stages.sculpt.armature import NO_MASS, Armature, mark_steps
from foredge_stages.sculpt.card_core import build_card
from foredge_stages.sculpt.reading import Relief

PER_AREA = leaf(10_000.0, AREA, "100 cm2", Origin("constant"))
FOIL_STEP_MM = 50.0
TAPE_STEP_MM = 100.0
"""Nobody tears foil or tape to the millimetre."""

PER_VOLUME = leaf(100_000.0, VOLUME, "100 cm3", Origin("constant"))


@dataclass(frozen=True, slots=True)
class _Amounts:
    """``foil_length`` is None where the core is of paper, which comes off no roll."""

    foil: Quantity
    foil_length: Quantity | None
    tape: Quantity
    tape_mass: Quantity
    points: Quantity
    points_mass: Quantity

    @property
    def taken(self) -> Quantity:
        """What of it is taken from the shelf: off the roll, or weighed."""
        return self.foil if self.foil_length is None else self.foil_length

    def named(self) -> tuple[Quantity, ...]:
        """All but the masses nobody asks for."""
        length = () if self.foil_length is None else (self.foil_length,)
        return (self.foil, *length, self.tape, self.points)


def build_armature(relief: Relief, after: tuple[str, ...], marked: bool) -> Armature:
    """Core and tape on a ground that is ready after ``after``; ``marked`` with the outline."""
    if not relief.made("core"):
        return Armature(StageResult(), (NO_MASS,), after)
    if relief.options.core.card is not None:
        return build_card(relief, after, () if marked else mark_steps(relief))
    amounts = _amounts(relief)
    fix, tape = _fix(relief, amounts, after, marked), _tape(relief, amounts)
    report = relief.report
    known = (report.core_volume, report.core_area, report.core_base, report.core_height)
    return Armature(
        StageResult(quantities=(*relief.called(*known), *amounts.named()), operations=(fix, tape)),
        (amounts.foil, amounts.tape_mass, amounts.points_mass),
        (tape.id,),
    )


def _amounts(relief: Relief) -> _Amounts:
    book, on, report = relief.book, relief.on, relief.report
    core, find = relief.options.core, relief.book.table
    paper = _is_paper(relief)
    noun = "paper" if paper else "foil"
    packed = core.packed if core.packed is not None else find("armature", core.foil, "packed")
    foil = (report.core_volume * packed).named(
        f"sculpt.foil.{on}",
        label=f"{noun} in the core, {on}",
        rule=f"volume of the core by how densely {noun} is crumpled",
        source=cited(packed, "the maker's choice"),
    )
    spare = 1 + book.practice("waste-foil")
    length = None if paper else _off_roll(relief, foil * spare)
    covered = report.core_area * find("armature", core.tape, "overlap")
    tape = rounded_up(covered * spare / find("armature", core.tape, "width"), TAPE_STEP_MM).named(
        f"sculpt.tape.{on}",
        label=f"tape, {on}",
        rule="the surface of the core, wrapped with an overlap, by the width of the tape",
        source=cited(find("armature", core.tape, "overlap")),
    )
    cores = number(len(relief.made("core")))
    glue = "glue-points"
    wanted = maximum(
        cores * find("armature", glue, "points_least"),
        report.core_base / find("armature", glue, "area_per_point"),
    )
    points = ceil(wanted).named(
        f"sculpt.glue_points.{on}",
        label=f"glue points, {on}",
        rule="two under each core at the least, more under a wide one",
        source=cited(find("armature", glue, "area_per_point")),
    )
    return _Amounts(
        foil,
        length,
        tape,
        covered * find("armature", core.tape, "grammage"),
        points,
        points * find("armature", glue, "gram_per_point"),
    )


def _is_paper(relief: Relief) -> bool:
    return relief.book.words("armature", relief.options.core.foil, "kind") == "paper"


def _off_roll(relief: Relief, foil: Quantity) -> Quantity:
    """The length of ``foil`` (a mass, with its spare)."""
    row, find = relief.options.core.foil, relief.book.table
    sheet = find("armature", row, "thickness") * find("armature", row, "density")
    return rounded_up(foil / (sheet * find("armature", row, "width")), FOIL_STEP_MM).named(
        f"sculpt.foil.{relief.on}.length",
        label=f"foil off the roll, {relief.on}",
        rule="its mass by thickness, width and density of the foil, and some spare",
        source=cited(find("armature", row, "thickness")),
    )


def _fix(relief: Relief, amounts: _Amounts, after: tuple[str, ...], marked: bool) -> Operation:
    book, report = relief.book, relief.report
    hot = relief.options.core.tack == "hot-glue"
    foil = book.words("armature", relief.options.core.foil, "title")
    return Operation(
        relief.op("fix-core"),
        f"Build the core on the {relief.where}",
        (
            *(() if marked else mark_steps(relief)),
            _take(amounts),
            say("Crumple it loosely, then squeeze it into shape part by part: {parts}.",
                parts=_names(relief)),
            _room_for_skin(relief),
            say("The bare core stands {height} high at its highest.", height=report.core_height),
            *_tack(amounts, hot),
            *(
                say("{name}: {note}", name=one.name, note=one.note)
                for one in relief.shaped
                if one.note
            ),
        ),
        book.practice("hand-set-up")
        + book.practice("hand-core") * report.core_volume / PER_VOLUME,
        after=after,
        wait=None if hot else dry_in_room(book, book.table("drying", "pva-joint", "next")),
        waiting="" if hot else "the glue under the core sets",
        cautions=("hot-glue",) if hot else ("pva",),
        uses=(
            Use(foil, amounts.taken, note=f"core on the {relief.where}"),
            Use("Hot glue" if hot else "White glue (PVA)", amounts.points_mass, note="core"),
        ),
        tools=("glue gun", "bowl of cold water", "scales") if hot else ("brush", "scales"),
    )  # fmt: skip


def _take(amounts: _Amounts) -> Text:
    if amounts.foil_length is None:
        return say("Tear up {mass} of newspaper: it goes into the core.", mass=amounts.foil)
    return say("Pull {length} of foil off the roll: {mass} go into the core.",
               length=amounts.foil_length, mass=amounts.foil)  # fmt: skip


def _tack(amounts: _Amounts, hot: bool) -> tuple[Text, ...]:
    if hot:
        return (
            say("Tack it down with {points} points of hot glue, at once, before a point skins.",
                points=amounts.points),
            say("The points only hold it still: the skin is what keeps it on the board."),
        )  # fmt: skip
    return (
        say("Glue it down at {points} points with white glue and weigh it down until it holds.",
            points=amounts.points),
    )  # fmt: skip


FELT_MM = 1.0
"""A skin thinner than that cannot be kept clear of with a rule: it is told in words."""


def _room_for_skin(relief: Relief) -> Text:
    skin = relief.figures.thickness
    if skin.value < FELT_MM:
        return say("Keep it just inside the outline drawn: the skin comes on top.")
    return say(
        "Keep it {skin} inside the outline and the heights drawn: the skin comes on top.", skin=skin
    )


def _lap(relief: Relief) -> Text:
    skin = relief.figures.thickness
    if skin.value < FELT_MM:
        return say("Let the lowest strips just catch the ground all round.")
    return say("Lead the lowest strips {lap} onto the ground all round.", lap=skin)


def _names(relief: Relief) -> str:
    return ", ".join(one.name for one in relief.made("core"))


def _tape(relief: Relief, amounts: _Amounts) -> Operation:
    book, report = relief.book, relief.report
    noun = "paper" if _is_paper(relief) else "foil"
    return Operation(
        relief.op("tape-core"),
        f"Tape the core on the {relief.where}",
        (
            say("Wrap it in short strips of tape, pulled tight, each over half of the last."),
            say(f"That takes {{tape}}; cover {{area}} until no {noun} shows.",
                tape=amounts.tape, area=report.core_area),
            _lap(relief),
            say("Press hollows back in with a blunt stick: the tape bridges them."),
            say("Nothing may rattle or give under a finger."),
        ),
        book.practice("hand-glue-face")
        + book.practice("hand-tape") * report.core_area / PER_AREA,
        after=(relief.op("fix-core"),),
        uses=(
            Use(
                book.words("armature", relief.options.core.tape, "title"),
                amounts.tape,
                note=f"core on the {relief.where}",
            ),
        ),
        tools=("scissors", "blunt stick"),
        splits=True,
    )  # fmt: skip
