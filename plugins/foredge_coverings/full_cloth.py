"""Full cloth: one piece over boards and spine."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Book,
    CoveringOptions,
    CoverJob,
    CoverResult,
    Part,
    Quantity,
    StageResult,
    corner,
    covering_piece,
    covering_stock,
    make_up,
    turn_in,
    turn_in_steps,
    whole_face,
)


class FullClothOptions(CoveringOptions, frozen=True, kw_only=True, tag="full-cloth"):
    """One piece of cloth, leather or paper over the whole case."""


@dataclass(frozen=True, slots=True)
class FullCloth:
    """Boards and spine are laid on one piece, and its edges turned in."""

    kind: str = "covering"
    name: str = "full-cloth"
    title: str = "Full cloth"
    options: type[FullClothOptions] = FullClothOptions

    def in_joint(self, book: Book, part: Part[Any]) -> Quantity:
        """One layer of the covering, with its backing."""
        return covering_stock(book, part.options.material, part.options.backing).thickness

    def cover(self, job: CoverJob) -> CoverResult:
        """One piece: two boards, the distance between them, and a turn-in all round."""
        options: FullClothOptions = job.part.options
        path = (*job.part.path, "backing")
        cloth = covering_stock(job.book, options.material, options.backing, path)
        over, clear = turn_in(job, cloth), corner(job, cloth)
        piece = covering_piece(
            cloth,
            "case.covering",
            "Covering",
            2 * job.board_width + (job.spine + 2 * job.joint) + 2 * over,
            job.board_height + 2 * over,
        )
        made = make_up(
            job,
            cloth,
            piece,
            over,
            turn_in_steps(options.corners, clear),
            glued=job.board_width,
            adhesive=options.adhesive,
        )
        mitred = (clear,) if options.corners == "mitred" else ()
        seen = cloth.stuff(job.book)
        looks = tuple(whole_face(face, seen) for face in ("front", "back", "spine"))
        own = StageResult(quantities=mitred, looks=looks)
        return CoverResult(made.work + own, made.covered, made.prepared)


PLUGIN = FullCloth()
