"""The coats one after the other, with the waits that varnish asks for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from foredge.contract import (
    Book,
    Coat,
    FinishJob,
    FinishResult,
    Operation,
    Part,
    Quantity,
    StageResult,
    Surfaces,
    cited,
    dry_in_room,
    say,
)
from foredge_stages.finishing.masks import Mask

_THICK = frozenset({"texture-paint", "chalk-paint", "glitter"})
"""Rows that dry through as slowly as thick paint."""

_LETTERS = "paint-marker"
"""What lettering is taken for; whatever it is, it hardens as a thin coat does."""


@dataclass(frozen=True, slots=True)
class Step:
    """A coat that is planned: what it is, its place in the spec, its masks."""

    coat: Coat
    part: Part[Any]
    mask: Mask


@dataclass(frozen=True, slots=True)
class Dry:
    """Something that dries: how long until it may be closed and packed, and how long the work
    lies still between it and the next thing; a rest has no time of its own."""

    close: Quantity | None
    post: Quantity | None
    waits: Quantity
    coat: Coat | None = None
    film: Quantity | None = None


@dataclass(frozen=True, slots=True)
class Chain:
    """The work so far. ``last`` are the operations the next one comes after; ``soft`` rows of
    paint that have not hardened yet."""

    book: Book
    surfaces: Surfaces
    last: tuple[str, ...]
    work: StageResult
    dries: tuple[Dry, ...] = ()
    soft: tuple[str, ...] = ()

    def then(self, steps: Sequence[Step]) -> Chain:
        """The chain with these coats put on."""
        chain = self
        for step in steps:
            if step.coat.role in ("protect", "wax"):
                chain = chain.harden(step.coat)
            chain = chain.put(step)
        return chain

    def put(self, step: Step) -> Chain:
        """One finish more."""
        job = FinishJob(
            self.book,
            step.part,
            step.coat,
            self.surfaces,
            self.last,
            step.mask.put,
            step.mask.off,
        )
        made: FinishResult = step.part.plugin.apply(job)
        dry = Dry(made.may_close, made.may_post, made.waits, step.coat, made.film)
        family = self.book.words("paints", step.coat.row, "key")
        return replace(
            self,
            last=(made.done,),
            work=self.work + made.work,
            dries=(*self.dries, dry),
            soft=(*self.soft, step.coat.row) if family == "acrylic" else self.soft,
        )

    def harden(self, coat: Coat) -> Chain:
        """A rest before ``coat`` where paint under it is still soft.

        A spray that fixes what water would take off goes on at once.
        """
        fixes = coat.base == "solvent" and any(dry.coat and dry.coat.soluble for dry in self.dries)
        if not self.soft or fixes:
            return self
        thick = any(row in _THICK for row in self.soft)
        usual = self.book.table("drying", "acrylic-thick" if thick else "acrylic", "cure")
        wait = dry_in_room(self.book, usual).named(
            f"finishing.wait.{coat.key}",
            label=f"rest before {coat.title.lower()}",
            rule="paint gives off its water before it is shut in",
            source=cited(usual),
        )
        operation = Operation(
            f"finishing.harden-{coat.key}",
            f"Let the paint harden before the {coat.title.lower()}",
            (
                say("Stand the book where air gets round it, away from dust."),
                say("Press a fingernail into a thick place: a dent means longer."),
            ),
            self.book.practice("hand-measure"),
            after=self.last,
            wait=wait,
            waiting="the paint hardens",
        )
        rest = Dry(None, None, wait)
        return replace(
            self,
            last=(operation.id,),
            work=self.work + StageResult(quantities=(wait,), operations=(operation,)),
            dries=(*self.dries, rest),
            soft=(),
        )

    def lettered(
        self,
        work: StageResult,
        done: Sequence[str],
        dries: Sequence[Dry],
        covers: Mapping[str, Quantity],
    ) -> Chain:
        """The chain with lettering and patterns on it."""
        return replace(
            self,
            last=tuple(done) or self.last,
            work=self.work + work,
            dries=(*self.dries, *dries),
            soft=(*self.soft, *([_LETTERS] if done else [])),
            surfaces=self.surfaces.lettered(covers),
        )


def split(steps: Sequence[Step]) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """The coats that lie under lettering, and those that go over it.

    Colour comes before the letters, what protects comes after; so does what goes on letters.
    """
    last = max(
        (place + 1 for place, step in enumerate(steps) if step.coat.role not in ("protect", "wax")),
        default=0,
    )
    for place, step in enumerate(steps):
        if any(region.kind == "letters" for region in step.coat.regions):
            last = min(last, place)
    return tuple(steps[:last]), tuple(steps[last:])
