"""The finished, closed book: its outer dimensions, and what a closure must reach round."""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import (
    AREA,
    Book,
    ClosureJob,
    ClosureResult,
    Quantity,
    Region,
    Relief,
    Upstream,
    known,
    maximum,
    total,
)
from foredge_stages.finishing.coats import Dry
from foredge_stages.finishing.terms import GEOMETRY, PRESSED, nothing


def height_of(upstream: Upstream, panel: str) -> Quantity | None:
    """How high the relief on ``panel`` stands; None where there is none."""
    found = known(upstream, f"sculpt.height.{panel}")
    return found if found is not None and (found.value > 0 or found.gates) else None


def films(dries: Sequence[Dry], panel: str, kind: str) -> tuple[Quantity, ...]:
    """What each coat adds to the highest part of a panel: its relief, or the plain face."""
    return tuple(
        dry.film
        for dry in dries
        if dry.film is not None and dry.coat is not None and Region(panel, kind) in dry.coat.regions
    )


def thickness(upstream: Upstream, adds: Sequence[Quantity], dries: Sequence[Dry]) -> Quantity:
    """The closed book with relief, patterns and coats; not yet named."""
    parts = [upstream.quantity("case.closed.thickness"), *adds]
    for panel in ("front", "back"):
        height = height_of(upstream, panel)
        parts += [height] if height is not None else []
        parts += films(dries, panel, "plain" if height is None else "relief")
    return total(parts)


def dimensions(upstream: Upstream, thick: Quantity) -> tuple[Quantity, Quantity, Quantity]:
    """``finishing.closed.height``, ``.width`` and ``.thickness``."""
    height = upstream.quantity("case.closed.height")
    wide = upstream.quantity("case.closed.width")
    spine = height_of(upstream, "spine")
    if spine is not None:
        wide = wide + spine
    return (
        height.named(
            "finishing.closed.height",
            label="height of the finished book",
            rule="board and cloth",
            source=GEOMETRY,
        ),
        wide.named(
            "finishing.closed.width",
            label="width of the finished book",
            rule="the closed case, and a relief on the spine",
            source=GEOMETRY,
        ),
        thick.named(
            "finishing.closed.thickness",
            label="thickness of the finished book",
            rule="the closed case, relief, patterns, coats and closure",
            source=GEOMETRY,
        ),
    )


def fasten(book: Book, upstream: Upstream, thick: Quantity, coated: str) -> ClosureResult | None:
    """The closure, where the spec has one."""
    if book.closure is None:
        return None
    find = upstream.quantity
    board_height = find("case.board.height")
    job = ClosureJob(
        book=book,
        part=book.closure,
        board_width=find("case.board.width"),
        board_height=board_height,
        board=find("case.board.thickness"),
        covering=(find("case.closed.height") - board_height) / 2,
        spine=find("case.spine.width"),
        joint=find("case.joint"),
        square_fore=find("case.square.fore_edge"),
        case_thickness=find("case.closed.thickness"),
        thickness=thick,
        height=find("case.closed.height"),
        width=find("case.closed.width"),
        front=_relief(upstream, "front"),
        back=_relief(upstream, "back"),
        spine_relief=_relief(upstream, "spine"),
        swell=_swell(upstream),
        boards_cut=upstream.fact("case.boards_cut"),
        covered=upstream.fact("case.covered"),
        cased_in=upstream.fact("case.cased_in"),
        pressed=PRESSED,
        sculpted=upstream.fact("sculpt.dry"),
        coated=coated,
    )
    result: ClosureResult = book.closure.plugin.fasten(job)
    return result


def _relief(upstream: Upstream, panel: str) -> Relief:
    height = height_of(upstream, panel)
    footprint = known(upstream, f"sculpt.footprint.{panel}")
    if height is None:
        return Relief(nothing(), nothing(AREA))
    return Relief(height, footprint if footprint is not None else nothing(AREA))


def _swell(upstream: Upstream) -> Quantity:
    """What pasted-in matter makes the fore-edge thicker than the block is anywhere else."""
    filled = known(upstream, "text_block.fore_edge_filled")
    if filled is None:
        return nothing()
    spine = upstream.quantity("text_block.block.spine")
    edge = upstream.quantity("text_block.block.fore_edge")
    return maximum(filled - maximum(spine, edge), nothing())
