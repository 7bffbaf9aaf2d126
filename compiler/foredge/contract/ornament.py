"""Lettering and patterns: what the finishing stage hands them, and what they give back.

An ornament lies on a flat face of the book. ``x`` runs away from the spine (on the spine
itself: from its left edge as you face it), ``y`` from head to tail.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Annotated, Any, Literal, Protocol

from msgspec import Meta

from foredge.contract.book import Book
from foredge.contract.measures import Part
from foredge.contract.options import PartOptions
from foredge.contract.plugin import PartPlugin
from foredge.contract.work import StageResult, Upstream
from foredge.dimension import AREA, LENGTH, TIME
from foredge.problem import Problem
from foredge.quantity import Origin, Quantity, leaf

Surface = Literal["front", "back", "spine", "paste-downs"]
"""Where an ornament lies; ``paste-downs`` are both of them."""

INTO_CASE = ("case.glue-hinge", "case.case-in")
"""Operations that put the paste-downs out of reach: an ornament on them is dry before these."""


class OrnamentOptions(PartOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What every ornament can be told; give the subclass ``tag="..."`` and an option ``on``."""

    id: (
        Annotated[
            str,
            Meta(
                pattern="^[a-z][a-z0-9-]*$",
                description="A name of its own, needed where two items share a use.",
            ),
        ]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Faces:
    """The flat faces of the book.

    The spine is ``spine_width`` by ``spine_length``. ``joint`` is what lies between the
    fold of a paste-down and the board's edge, on the paste-down.
    """

    board_width: Quantity
    board_height: Quantity
    spine_width: Quantity
    spine_length: Quantity
    joint: Quantity
    paste_down_width: Quantity
    paste_down_height: Quantity

    def size(self, surface: Surface) -> tuple[Quantity, Quantity]:
        """Width (along x) and height (along y) of one such face."""
        if surface == "spine":
            return self.spine_width, self.spine_length
        if surface == "paste-downs":
            return self.paste_down_width, self.paste_down_height
        return self.board_width, self.board_height


@dataclass(frozen=True, slots=True)
class OrnamentJob:
    """An ornament to be made.

    ``key`` is unique in the book (``lettering``, ``lettering-2``, or the item's own ``id``):
    quantities are named ``finishing.<key>...``, operations ``finishing.<verb>-<key>``.
    ``after`` are operations that must be done before it is begun: on front, back and spine
    the coats under it, on paste-downs the finished block.
    """

    book: Book
    part: Part[Any]
    upstream: Upstream
    key: str
    faces: Faces
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OrnamentResult:
    """What an ornament makes known.

    ``thickness`` is what it adds on one face, ``covers`` the area it hides on all its
    faces together. ``done`` is the operation after which it is dry enough for the next
    (empty where ``work`` holds an error), ``dry_before`` operations that must not begin
    before that, ``may_close`` how long after it faces may touch.
    """

    work: StageResult
    on: Surface
    thickness: Quantity
    covers: Quantity
    done: str
    may_close: Quantity
    dry_before: tuple[str, ...] = ()


_NOTHING = {
    dimension: leaf(0.0, dimension, "ornament.nothing", Origin("constant"), label="nothing")
    for dimension in (AREA, LENGTH, TIME)
}


def no_ornament(job: OrnamentJob, problems: Iterable[Problem]) -> OrnamentResult:
    """The result of an ornament that cannot be made; ``problems`` hold an error."""
    return OrnamentResult(
        StageResult(problems=tuple(problems)),
        job.part.options.on,
        thickness=_NOTHING[LENGTH],
        covers=_NOTHING[AREA],
        done="",
        may_close=_NOTHING[TIME],
    )


class Ornament(PartPlugin, Protocol):
    """Lettering or a pattern; kind ``embellishment``, stage ``finishing``."""

    @property
    def stage(self) -> str: ...

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Sizes, pieces, drawings and operations of one ornament."""
        ...


def ornament_keys(parts: Sequence[Part[Any]]) -> tuple[str, ...]:
    """A key for each of ``parts``: its ``id``, or its name, numbered where that is taken."""
    keys: list[str] = []
    said = [getattr(part.options, "id", None) for part in parts]
    taken = {name for name in said if name}
    for part, own in zip(parts, said, strict=True):
        key, place = own or part.plugin.name, 1
        while own is None and key in taken:
            place += 1
            key = f"{part.plugin.name}-{place}"
        taken.add(key)
        keys.append(key)
    return tuple(keys)


def faces_of(upstream: Upstream) -> Faces:
    """The faces of the cased book, out of what text-block and case made known."""
    return Faces(
        board_width=upstream.quantity("case.board.width"),
        board_height=upstream.quantity("case.board.height"),
        spine_width=upstream.quantity("case.spine.width"),
        spine_length=upstream.quantity("case.board.height"),
        joint=upstream.quantity("case.joint"),
        paste_down_width=upstream.quantity("case.paste_down.width"),
        paste_down_height=upstream.quantity("case.paste_down.height"),
    )


def ornament_job(
    book: Book, part: Part[Any], upstream: Upstream, key: str, coats: tuple[str, ...] = ()
) -> OrnamentJob:
    """The job of one ornament. ``coats`` are operations whose paint it lies on, if outside.

    On a paste-down it comes after the finished block instead; outside it never comes
    before the case is covered.
    """
    inside = getattr(part.options, "on", "") == "paste-downs"
    block, case = "text_block.block_ready", "case.covered"
    known = (upstream.fact(block if inside else case),)
    after = known if inside else (*known, *coats)
    return OrnamentJob(
        book, part, upstream, key, faces_of(upstream), tuple(one for one in after if one)
    )
