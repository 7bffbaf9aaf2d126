"""What a stage or a part returns: everything the plan and the emitters need, as data."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, fields
from typing import Literal

from foredge.contract.look import Seen
from foredge.contract.text import Text
from foredge.drawing.model import Drawing
from foredge.problem import Problem
from foredge.quantity import Quantity

PieceGrain = Literal["width", "height", "any"]


@dataclass(frozen=True, slots=True)
class Piece:
    """A rectangle to cut. Its sizes are final: rounded once, here, as recorded steps.

    ``name`` is a stable key (``case.board``); ``count`` whole copies of ``width`` by
    ``height``. ``grain`` says which of its sides the grain must run along. ``stock`` names
    the stock item it is cut from (None: the maker chooses; ``material`` says what). A
    ``blank`` is cut before its gate and trimmed to ``trimmed_to`` afterwards. ``shape``
    says what a rectangle does not ("corners mitred"). ``over_crease``: an old crease may run
    through it. ``offset`` is what is cut off the sheet first, at the side that lies across its
    height, so that an old crease becomes its fold. ``kinds`` of stock would do where the
    maker chooses.
    """

    name: str
    title: str
    count: Quantity
    width: Quantity
    height: Quantity
    grain: PieceGrain
    stock: str | None = None
    material: str = ""
    blank: bool = False
    trimmed_to: str = ""
    shape: str = ""
    over_crease: bool = False
    offset: Quantity | None = None
    kinds: tuple[Literal["sheet", "board", "cloth"], ...] = ()


@dataclass(frozen=True, slots=True)
class Use:
    """So much of a material: an area of paste, a length of thread, a mass of glue.

    Sheets that are cut into pieces are counted by the pieces, not here. ``amount`` has the
    allowance in it and is for one book. ``from_off_cuts``: off-cuts of the text block do.
    """

    material: str
    amount: Quantity
    stock: str | None = None
    note: str = ""
    from_off_cuts: bool = False


@dataclass(frozen=True, slots=True)
class Reading:
    """One box of a gate: ``key`` under ``measured:``, and the quantity it makes firm."""

    key: str
    label: str
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class Gate:
    """A measurement the maker takes before going on.

    ``after`` is the operation at whose end it is taken; ``how`` says how to measure.
    """

    id: str
    title: str
    after: str
    readings: tuple[Reading, ...]
    how: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Wetting:
    """Water brought to something: for the moisture ledger.

    ``what`` is a part of the book (``board-front``), ``side`` one of ``inside``,
    ``outside``, ``both``, ``edge``; ``water`` a mass; ``dry_after`` a time. Where it glues
    something on, ``layer`` says what, ``area`` how large it is on one board, and ``pull`` how
    hard it pulls the board as it dries: one sheet of paper pasted on is 1. ``one_way``: what
    is wet lies between two things that take no water, and dries from its free face only.
    """

    what: str
    side: Literal["inside", "outside", "both", "edge"]
    water: Quantity | None
    dry_after: Quantity
    layer: str = ""
    area: Quantity | None = None
    pull: Quantity | None = None
    one_way: bool = False


@dataclass(frozen=True, slots=True)
class SoonAfter:
    """Begin no later than ``within`` (a time) after ``operation`` is finished, where it occurs.

    ``why`` says what spoils otherwise ("the clay keeps no longer").
    """

    operation: str
    within: Quantity
    why: str


@dataclass(frozen=True, slots=True)
class Operation:
    """One thing done at the bench.

    ``id`` is ``<stage>.<verb-noun>``. ``after`` names operations that must come before and
    must exist; ``after_any`` and ``before_any`` order it where the other occurs at all.
    ``stops_for`` names gates whose readings must be taken before the first step.
    ``hands_on`` is time at the bench, ``wait`` the time nothing may be done to the work
    afterwards, ``waiting`` what happens in it. ``resources`` are ``hands``, ``press``,
    ``weights`` ... ``cautions`` are ids of the cautions table, ``pieces`` names of pieces
    cut in it. ``tools`` are what must lie ready. ``splits``: it may be stopped at the end of
    a session and gone on with in the next (sewing may, gluing may not). ``soon_after``: what
    it must follow before that spoils. ``rescue`` says what the maker can still do when it was
    left out and the work has gone on. ``batch``: done once for all copies made together, in
    about the same time (mixing a clay, testing a sheet).
    """

    id: str
    title: str
    steps: tuple[Text, ...]
    hands_on: Quantity
    after: tuple[str, ...] = ()
    after_any: tuple[str, ...] = ()
    before_any: tuple[str, ...] = ()
    wait: Quantity | None = None
    waiting: str = ""
    stops_for: tuple[str, ...] = ()
    resources: tuple[str, ...] = ("hands",)
    cautions: tuple[str, ...] = ()
    pieces: tuple[str, ...] = ()
    uses: tuple[Use, ...] = ()
    wettings: tuple[Wetting, ...] = ()
    tools: tuple[str, ...] = ()
    outdoors: bool = False
    splits: bool = False
    soon_after: tuple[SoonAfter, ...] = ()
    rescue: str = ""
    batch: bool = False

    @property
    def stage(self) -> str:
        """The stage it belongs to: the part of its id before the dot."""
        return self.id.partition(".")[0]


@dataclass(frozen=True, slots=True)
class StageResult:
    """What a stage, or a part of one, makes known. Add two to merge them.

    ``quantities`` are named; their names start with the stage's own prefix. ``facts`` are
    words other stages may ask for (``text_block.end_papers`` -> ``cloth-jointed``). ``looks``
    are what the picture of the finished book shows of it, from below.
    """

    quantities: tuple[Quantity, ...] = ()
    pieces: tuple[Piece, ...] = ()
    uses: tuple[Use, ...] = ()
    operations: tuple[Operation, ...] = ()
    gates: tuple[Gate, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    problems: tuple[Problem, ...] = ()
    facts: tuple[tuple[str, str], ...] = ()
    looks: tuple[Seen, ...] = ()

    def __add__(self, other: StageResult) -> StageResult:
        return StageResult(
            *(getattr(self, name) + getattr(other, name) for name in (f.name for f in fields(self)))
        )

    def quantity(self, name: str) -> Quantity:
        """The quantity called ``name``; raises KeyError when there is none."""
        for quantity in self.quantities:
            if quantity.name == name:
                return quantity
        raise KeyError(name)


def merge(results: Iterable[StageResult]) -> StageResult:
    """All ``results`` as one, in order."""
    whole = StageResult()
    for result in results:
        whole = whole + result
    return whole


@dataclass(frozen=True, slots=True)
class Upstream:
    """The results of the stages a stage needs, by stage name."""

    results: tuple[tuple[str, StageResult], ...] = field(default=())

    def quantity(self, name: str) -> Quantity:
        """The quantity called ``name``; raises KeyError naming the stages asked."""
        for _, result in self.results:
            for quantity in result.quantities:
                if quantity.name == name:
                    return quantity
        stages = ", ".join(stage for stage, _ in self.results) or "no stage"
        raise KeyError(
            f"no quantity {name!r} in {stages}; does the stage need the one that makes it?"
        )

    def fact(self, name: str, default: str = "") -> str:
        """The word a stage left under ``name``."""
        for _, result in self.results:
            for key, word in result.facts:
                if key == name:
                    return word
        return default
