"""The pattern at full size: panel, field, every piece in its place."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from foredge.contract import CheckBar, Drawing, Item, Label, Line, OrnamentJob, Point, Role, corners
from foredge_patterns.layout import Ring
from foredge_patterns.region import Region

MARGIN = 15.0
FOOT = 26.0
LEAST = 130.0
"""mm: the sheet round the panel, what the bar at its foot needs, and the narrowest sheet."""


def pattern_sheet(job: OrnamentJob, region: Region, title: str, rings: Iterable[Ring]) -> Drawing:
    """``rings`` are in the field's own millimetres; what lies over its edge is drawn too.

    It is drawn as one faces the panel: the spine is at the left, on the back at the right.
    The sheet of the paste-downs is the back one's; the front one's is its other side.
    """
    wide, high = region.panel_width.value, region.panel_height.value
    width = max(wide + 2 * MARGIN, LEAST)
    left, top = (width - wide) / 2, MARGIN
    x0, y0 = left + region.left.value, top + region.top.value
    turned = job.part.options.on == "back"

    def drawn(ring: Iterable[Point], role: Role) -> Line:
        points = ((width - x if turned else x, y) for x, y in ring)
        return Line(tuple(points), role, closed=True)

    items: list[Item] = [
        drawn(corners(left, top, wide, high), "hidden"),
        drawn(corners(x0, y0, region.width.value, region.height.value), "guide"),
    ]
    items += [drawn(((x0 + x, y0 + y) for x, y in ring), "outline") for ring in rings]
    both = "Head. Print two; turn one over for the front board."
    words = both if region.faces.value > 1 else "Head"
    spine = (left + wide + 3, 90.0) if turned else (left - 3, -90.0)
    unit: Literal["mm", "in"] = "in" if job.book.display == "imperial" else "mm"
    items += [
        Label((width / 2, MARGIN - 5), words, 3.5, anchor="middle"),
        Label((spine[0], top + high / 2), "Spine side", 3.5, spine[1], "middle"),
        Label((width / 2, top + high + 6), "Tail", 3.5, anchor="middle"),
        CheckBar(((width - 101.6) / 2, top + high + 10), unit),
    ]
    return Drawing(
        f"pattern-{job.key}",
        title,
        width,
        top + high + FOOT,
        tuple(items),
        true_scale=True,
        sizes=(region.width, region.height),
    )
