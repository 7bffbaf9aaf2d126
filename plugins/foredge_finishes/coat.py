"""What all finishes share: what they go on, amounts, times, masks, and the operation."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass, replace
from typing import Any, ClassVar

from foredge.contract import (
    AREA,
    Book,
    Coat,
    CoatRole,
    FinishJob,
    FinishOptions,
    FinishResult,
    Lies,
    Operation,
    Origin,
    Part,
    Quantity,
    StageResult,
    Stuff,
    Target,
    Text,
    Use,
    Wetting,
    cautions,
    leaf,
    lettered_panels,
    listed,
    regions_of,
    relief_panels,
    say,
    targets_of,
)
from foredge_finishes.figures import Amounts, Times, amounts, times

PVA = "pva"
SEEN = 500.0
"""mm3: half a millilitre, the least that is told."""

_PATCH = leaf(10_000.0, AREA, "100 cm2", Origin("constant"), label="100 cm²")


@dataclass(frozen=True, slots=True)
class Put:
    """One finish on one book: everything its sentences may speak of. ``raised``: on a relief."""

    job: FinishJob
    options: Any
    where: str
    raised: bool
    amounts: Amounts
    times: Times


class PaintedFinish(ABC):
    """A finish that is brushed, wiped or sprayed on; a subclass says how.

    Where the spec does not say what it goes on, that is the whole outside; the relief alone
    where ``relief_first`` and there is one, or where it ``follows`` coats that lie nowhere else.
    """

    kind: ClassVar[str] = "finish"
    name: ClassVar[str]
    title: ClassVar[str]
    options: ClassVar[type[FinishOptions]]
    role: ClassVar[CoatRole] = "colour"
    row: ClassVar[str]
    verb: ClassVar[str]
    relief_first: ClassVar[bool] = False
    follows: ClassVar[bool] = False
    outdoors: ClassVar[bool] = False
    needs_cover: ClassVar[str] = ""
    tools: ClassVar[tuple[str, ...]]
    lies: ClassVar[Lies] = "clear"
    shows: ClassVar[str] = ""
    metal: ClassVar[bool] = False
    material: ClassVar[str] = ""

    def material_of(self, put: Put) -> str:
        """What it is bought as; the title of its row where the subclass does not say."""
        return self.material or put.job.book.words("paints", put.job.coat.row, "title")

    def row_of(self, options: Any) -> str:
        """Its row of the paints table."""
        return self.row

    @abstractmethod
    def steps(self, put: Put) -> tuple[Text, ...]:
        """How it is put on, after masking and before the masks come off."""

    def more_uses(self, put: Put) -> tuple[Use, ...]:
        """What it uses up beside paint."""
        return ()

    def more_quantities(self, put: Put) -> tuple[Quantity, ...]:
        """What it computes beside amounts of paint."""
        return ()

    def more_time(self, put: Put) -> Quantity | None:
        """Time at the bench beside putting the coats on."""
        return None

    def describe(self, book: Book, part: Part[Any], key: str) -> Coat:
        """What the order of coats must know of it."""
        options, row = part.options, self.row_of(part.options)
        return Coat(
            key=key,
            path=part.path,
            title=self.title,
            row=row,
            role=self.role,
            base=book.words("paints", row, "base"),
            gloss=book.words("paints", row, "gloss"),
            regions=regions_of(book, self._targets(book, part), options.leave),
            needs_cover=self.needs_cover_of(options),
            lies=self.lies,
            stuff=self.stuff_of(options),
            metal=self.metal,
        )

    def stuff_of(self, options: Any) -> Stuff:
        """What it looks like: the colour the spec names, else what it usually ``shows``."""
        return Stuff(options.colour or "", self.shows)

    def needs_cover_of(self, options: Any) -> str:
        """What becomes of it when nothing goes over it; empty where it may stay bare."""
        return self.needs_cover

    def _targets(self, book: Book, part: Part[Any]) -> tuple[Target, ...]:
        usual: tuple[Target, ...] = ("faces",)
        if self.relief_first and relief_panels(book):
            usual = ("relief",)
        elif self.follows and _on_relief_alone(book, part):
            usual = ("relief", "lettering") if lettered_panels(book) else ("relief",)
        return targets_of(part.options, usual)

    def apply(self, job: FinishJob) -> FinishResult:
        """Amounts, times and one operation with all coats of it."""
        options, book = job.part.options, job.book
        patch = job.surfaces.patch(job.coat.regions)
        row = job.coat.row
        found = amounts(book, job.coat.key, self._called(job), row, options, patch)
        where = where_of(self._targets(book, job.part))
        raised = patch.raised is not None
        put = Put(job, options, where, raised, found, times(book, row, options))
        operation = self._operation(put)
        work = StageResult(
            quantities=(*found.quantities, *self.more_quantities(put)), operations=(operation,)
        )
        assert operation.wait is not None
        close, post = put.times.close, put.times.post
        return FinishResult(work, operation.id, operation.wait, found.film, close, post)

    def _called(self, job: FinishJob) -> str:
        """Its title, with its key where the title alone would not tell it apart."""
        return self.title if job.coat.key == self.name else f"{self.title} ({job.coat.key})"

    def _operation(self, put: Put) -> Operation:
        book, job = put.job.book, put.job
        hands = book.practice("hand-set-up") + put.amounts.coats * (
            put.amounts.area / _PATCH * book.practice("hand-coat")
        )
        more = self.more_time(put)
        several = put.amounts.coats.value > 1
        return Operation(
            f"finishing.{job.coat.key}",
            f"{self.verb} {put.where}{_coloured(put.options)}",
            (*_masked(job), *self.steps(put), *_unmasked(job)),
            hands if more is None else hands + more,
            after=job.after,
            wait=put.times.next * put.amounts.coats,
            waiting="every coat dries before the next" if several else "the coat dries",
            cautions=cautions(book, "paints", job.coat.row),
            uses=(_use(self, put), *self.more_uses(put)),
            wettings=_wettings(put),
            tools=(*self.tools, *(("masking tape",) if job.mask else ())),
            outdoors=self.outdoors,
        )


def _on_relief_alone(book: Book, part: Part[Any]) -> bool:
    """Whether there are coats before ``part``, and all of them lie on reliefs.

    Those that follow others themselves do not count.
    """
    place = [one.path for one in book.finishing].index(part.path)
    before = [
        one.plugin.describe(book, one, one.plugin.name).regions
        for one in book.finishing[:place]
        if not getattr(one.plugin, "follows", False)
    ]
    return bool(before) and all(r.kind != "plain" for regions in before for r in regions)


def where_of(targets: tuple[Target, ...]) -> str:
    """``the relief``, ``the front and the board edges``."""
    words = {"faces": "the cover", "edges": "the board edges"}
    named = [words.get(target, f"the {target}") for target in dict.fromkeys(targets)]
    return named[0] if len(named) == 1 else f"{', '.join(named[:-1])} and {named[-1]}"


def _coloured(options: FinishOptions) -> str:
    return f", {options.colour}" if options.colour else ""


def brushed(put: Put, how: str) -> Text:
    """``how`` with its coats: ``Brush on 2 coats, 1 h apart, 12 ml each.``"""
    made = put.amounts
    if made.coat.value < SEEN:  # a drop: nobody measures it
        if made.coats.value > 1:
            return say(f"{how} {{coats}} coats, {{next}} apart.",
                       coats=made.coats, next=put.times.next)  # fmt: skip
        return say(f"{how} one coat.")
    if made.coats.value > 1:
        return say(
            f"{how} {{coats}} coats, {{next}} apart, {{coat}} each.",
            coats=made.coats,
            next=put.times.next,
            coat=made.coat,
        )
    return say(f"{how} one coat of {{coat}}.", coat=made.coat)


def thinned(put: Put, what: str) -> tuple[Text, ...]:
    """The line that mixes ``what`` with water; none where it is used as it comes."""
    made = put.amounts
    if made.water is None:
        return ()
    mix = say(f"Mix {{paint}} of {what} with {{water}} of water.", paint=made.paint,
              water=made.water)  # fmt: skip
    return (mix,)


def _masked(job: FinishJob) -> tuple[Text, ...]:
    if not job.mask:
        return ()
    return (say("Mask {what} with low-tack tape and paper.", what=_left(job.mask)),)


def _unmasked(job: FinishJob) -> tuple[Text, ...]:
    return (say("Take the tape off slowly, folded back on itself."),) if job.unmask else ()


def _left(names: tuple[str, ...]) -> str:
    return listed(_LEFT.get(name, f"the {name}") for name in names)


_LEFT = {
    "paste-downs": "the paste-downs",
    "joint": "both joints",
    "cloth": "the cloth round the relief",
    "edges": "the board edges",
}


def _use(finish: PaintedFinish, put: Put) -> Use:
    book, row = put.job.book, put.job.coat.row
    note = f"{finish.title.lower()} of {put.where}"
    if book.words("paints", row, "key") == PVA and put.amounts.water is not None:
        # The glue of the case and the sealer are one bottle: told in one unit, by mass.
        glue = put.amounts.paint * book.table("adhesives", PVA, "density")
        return Use(book.words("adhesives", PVA, "title"), glue, put.options.stock, note)
    material = f"{finish.material_of(put)}{_coloured(put.options)}"
    return Use(material, put.amounts.paint, put.options.stock, note)


def _wettings(put: Put) -> tuple[Wetting, ...]:
    """Water on the outside of the boards; how much of it the paint holds no row says."""
    if put.job.coat.base != "water":
        return ()
    lettered = lettered_panels(put.job.book)
    faces = sorted(
        {
            region.face
            for region in put.job.coat.regions
            if region.kind != "letters" or region.face in lettered
        }
    )
    return tuple(
        Wetting(f"board-{face}", "outside", None, put.times.close)
        for face in faces
        if face in ("front", "back")
    )


def soluble(coat: Coat) -> Coat:
    """``coat``, as one that water takes off again."""
    return replace(coat, soluble=True)
