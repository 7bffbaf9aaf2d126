"""What the case reads of the block, and what the maker should think of before cutting."""

from __future__ import annotations

from foredge.contract import (
    Path,
    Problem,
    Quantity,
    ThreadFigures,
    cited,
    note,
)
from foredge_stages.text_block.linings import super_cloth
from foredge_stages.text_block.plan import Plan
from foredge_stages.text_block.terms import GEOMETRY, name, zero


def for_case(made: Plan) -> tuple[Quantity, ...]:
    """What lies in a joint, and the size of a paste-down."""
    ends, sewing, block = made.thread.ends, made.thread.sewing, made.block
    cloth = super_cloth(made.book, made.options)
    return (
        ends.lies_in_joint.named(
            name("joint.end_paper_cloth"),
            label="end-paper cloth in one joint",
            rule="the wing of a cloth joint that crosses to the board; none in paper end-papers",
            source=cited(ends.lies_in_joint, GEOMETRY),
        ),
        sewing.lies_in_joint.named(
            name("joint.tapes"),
            label="tapes in one joint",
            rule="tapes or a sewing strip are glued to the board; link stitch has none",
            source=cited(sewing.lies_in_joint, GEOMETRY),
        ),
        (zero() if sewing.replaces_super else cloth.thickness).named(
            name("joint.super"),
            label="super in one joint",
            rule="the strip that is sewn through takes its place"
            if sewing.replaces_super
            else f"the flange crosses to the board ({cloth.how})",
            source=cloth.source or "the maker's measurement",
        ),
        ends.leaves.named(
            name("fly_leaves"),
            label="free leaves of an end-paper, at each end",
            rule="its leaves less the paste-down",
            source=GEOMETRY,
        ),
        (1 * block.width).named(
            name("paste_down.width"),
            label="paste-down, width as it leaves the block",
            rule="end-papers are trimmed with the block",
            source=GEOMETRY,
        ),
        (1 * block.height).named(
            name("paste_down.height"),
            label="paste-down, height as it leaves the block",
            rule="end-papers are trimmed with the block",
            source=GEOMETRY,
        ),
    )


def problems(made: Plan) -> list[Problem]:
    """What the thread calls for."""
    thread = made.thread
    return [
        *thread_problems(thread.figures, thread.name, thread.sewing_part.path),
    ]


def thread_problems(thread: ThreadFigures, chosen: str | None, path: Path) -> list[Problem]:
    """A thread nobody has measured."""
    if not thread.assumed:
        return []
    which = "no thread is named" if chosen is None else f"'{chosen}' has no size and no diameter"
    return [
        note(
            path,
            f"{which}: linen 25/3, {thread.diameter.value:.2f} mm, is taken",
            "thread-assumed",
            consequence="Swell and spine are only guessed",
            remedy="Wind ten turns on a pencil, measure them, and give a tenth as diameter",
        )
    ]
