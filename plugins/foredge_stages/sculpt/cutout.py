"""The cut-out of the pressing board, at full size: its board, the relief, the line to cut."""

from __future__ import annotations

from foredge.contract import (
    Drawing,
    Item,
    Label,
    Line,
    Measured,
    Quantity,
    ReliefShape,
    Rings,
    outline_of,
    show_length,
    signed_area,
)
from foredge_stages.sculpt.reading import Relief
from foredge_stages.sculpt.sheets import LEFT, TOP, board, moved

SEEN = "sculpt-{on}-cut-out"

SLIVER_MM2 = 150.0
"""An island in the window smaller than that presses nothing and is not worth its cutting."""


def cut_out(relief: Relief, clear: Quantity) -> Drawing:
    """The outline of the relief, and ``clear`` outside it the line to cut."""
    panel = relief.panel
    cut = _without_slivers(cleared(relief, clear))
    items: list[Item] = [*board(panel)]
    items += [Line(ring, "hidden", closed=True) for ring in moved(relief.report.footprint)]
    items += [Line(ring, "cut", closed=True) for ring in moved(cut)]
    items.append(_head(relief))
    items.append(
        Measured(
            (LEFT, TOP),
            (LEFT + panel.width.value, TOP),
            show_length(panel.width, relief.book.display),
            12.0,
        )
    )
    return Drawing(
        SEEN.format(on=relief.on),
        f"Pressing board for the {relief.where}: cut along the full line, "
        f"{show_length(clear, relief.book.display)} outside the relief",
        panel.width.value + 2 * LEFT,
        panel.height.value + 2 * TOP,
        tuple(items),
        true_scale=True,
        sizes=(panel.width, panel.height),
    )


def _head(relief: Relief) -> Label:
    return Label((LEFT + relief.panel.width.value / 2, TOP - 3), "HEAD", 4.0, anchor="middle")


def _without_slivers(rings: Rings) -> Rings:
    """The window without islands too small to glue down; they run against its outline."""
    areas = [signed_area(ring) for ring in rings]
    outer = max(areas, key=abs, default=0.0)
    return tuple(
        ring
        for ring, area in zip(rings, areas, strict=True)
        if area * outer > 0 or abs(area) >= SLIVER_MM2
    )


def cleared(relief: Relief, clear: Quantity) -> Rings:
    """The outline of everything, ``clear`` further out."""
    pieces = tuple(piece for shape in relief.shapes for piece in shape.pieces)
    return outline_of(ReliefShape(pieces, "core"), relief.skin + clear)
