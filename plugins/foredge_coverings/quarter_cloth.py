"""Quarter cloth: cloth over the spine and part of the boards, other stuff on the sides."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

from msgspec import Meta

import foredge.contract as fc

_BOARDS: tuple[fc.Side, ...] = ("front", "back")
VAUGHN = "Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, pp. 127, 130"


class QuarterClothOptions(fc.CoveringOptions, frozen=True, kw_only=True, tag="quarter-cloth"):
    """Cloth on the spine, paper or a second cloth on the sides."""

    sides: Annotated[
        str, fc.stock_name("sheet", "cloth"), Meta(description="What covers the sides.")
    ]
    reach: (
        Annotated[fc.Length, Meta(description="Cloth on each board; about a quarter if left out.")]
        | None
    ) = None
    lap: Annotated[fc.Length, Meta(description="Sides over the cloth.")] | None = None


@dataclass(frozen=True, slots=True)
class QuarterCloth:
    """The case is made up on the cloth strip; the sides go on when it is dry."""

    kind: str = "covering"
    name: str = "quarter-cloth"
    title: str = "Quarter cloth"
    options: type[QuarterClothOptions] = QuarterClothOptions

    def in_joint(self, book: fc.Book, part: fc.Part[Any]) -> fc.Quantity:
        """The cloth alone: the sides stop short of the joint."""
        return fc.covering_stock(book, part.options.material, part.options.backing).thickness

    def cover(self, job: fc.CoverJob) -> fc.CoverResult:
        """A strip over the spine, two sides, and their lap on the strip."""
        said, book, path = job.part.options, job.book, job.part.path
        cloth = fc.covering_stock(book, said.material, said.backing, (*path, "backing"))
        sides = fc.covering_stock(book, said.sides, "none", (*path, "sides"))
        over, clear = fc.turn_in(job, cloth), fc.corner(job, sides)
        usual = book.default("quarter-cloth-board") * job.board_width
        reach = book.size(usual if said.reach is None else said.reach).named(
            "case.cloth_reach",
            label="cloth on each board",
            rule="between a fourth and a third of the side",
            source=VAUGHN,
        )
        found = _reach_problems(job, reach)
        if reach.value >= job.board_width.value:
            return fc.CoverResult(fc.StageResult(problems=found), "case.cover")
        lap = book.size(book.default("side-lap") if said.lap is None else said.lap)
        height, width = job.board_height + 2 * over, 2 * reach + (job.spine + 2 * job.joint)
        bare = job.board_width - reach + lap
        strip = fc.covering_piece(cloth, "case.covering", "Cloth strip", width, height)
        side = fc.covering_piece(sides, "case.side", "Side", bare + over, height, copies=2)
        steps = (
            fc.say("Cut two sides {width} by {height}.", width=side.width, height=side.height),
            fc.say("Glue each side and lay it {lap} over the edge of the cloth.", lap=lap),
            *fc.turn_in_steps(said.corners, clear),
        )
        turning = (fc.say("Turn in head and tail, and press it into the joints."),)
        spine = {"verb": "cover-spine", "title": "Cover the spine", "adhesive": said.adhesive}
        made = fc.make_up(job, cloth, strip, over, turning, glued=reach, **spine)
        area, after = bare * job.board_height, (made.covered,)
        put_on = fc.glue_on_boards(
            job, sides, side, steps, area, after=after, title="Put on the sides"
        )
        mitred = (clear,) if said.corners == "mitred" else ()
        work = fc.StageResult(
            quantities=(reach, *mitred, fc.piece_mass(sides, side)),
            pieces=(side,),
            problems=(*sides.problems, *found),
            looks=_looks(job, cloth.stuff(book), sides.stuff(book), reach - lap),
        )
        return fc.CoverResult(made.work + put_on + work, "case.cover", made.prepared)


def _looks(
    job: fc.CoverJob, cloth: fc.Stuff, sides: fc.Stuff, shown: fc.Quantity
) -> tuple[fc.Look, ...]:
    """Cloth on the spine, the sides, and what they leave of the cloth beside the joint."""
    strip = fc.rectangle(0.0, 0.0, shown.value, job.board_height.value)
    found = [fc.whole_face("spine", cloth)]
    for face in _BOARDS:
        found += [
            fc.whole_face(face, sides),
            fc.Look(face, "covering", cloth, pieces=(strip,)),
        ]
    return tuple(found)


def _reach_problems(job: fc.CoverJob, reach: fc.Quantity) -> tuple[fc.Problem, ...]:
    """The strip must leave something for the sides; Vaughn's bounds are only advice."""
    path = (*job.part.path, "reach")
    share = reach.value / job.board_width.value
    said = f"the cloth takes {reach.value:.4g} mm of a board {job.board_width.value:.4g} mm wide"
    if share >= 1:
        remedy = "Use full-cloth, or less cloth"
        return (fc.error(path, said, "quarter-cloth-reach", remedy=remedy),)
    if not 0.24 <= share <= 0.34:
        why = "A fourth to a third of the side is usual"
        return (fc.note(path, said, "quarter-cloth-reach", remedy=why, source=VAUGHN),)
    return ()


PLUGIN = QuarterCloth()
