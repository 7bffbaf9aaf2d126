"""The pattern at full size: panel, field, every piece in its place."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from foredge.contract import CheckBar, Drawing, Item, Label, Line, OrnamentJob, Point
from foredge_patterns.layout import Ring
from foredge_patterns.region import Region

MARGIN = 15.0
FOOT = 26.0
LEAST = 130.0
"""mm: the sheet round the panel, what the bar at its foot needs, and the narrowest sheet."""


def pattern_sheet(job: OrnamentJob, region: Region, title: str, rings: Iterable[Ring]) -> Drawing:
    """``rings`` are in the field's own millimetres; what lies over its edge is drawn too."""
    wide, high = region.panel_width.value, region.panel_height.value
    width = max(wide + 2 * MARGIN, LEAST)
    left, top = (width - wide) / 2, MARGIN
    x0, y0 = left + region.left.value, top + region.top.value
    items: list[Item] = [
        Line(_box(left, top, wide, high), "hidden", closed=True),
        Line(_box(x0, y0, region.width.value, region.height.value), "guide", closed=True),
    ]
    for ring in rings:
        items.append(Line(tuple((x0 + x, y0 + y) for x, y in ring), "outline", closed=True))
    words = "Head. Make two." if region.faces.value > 1 else "Head"
    unit: Literal["mm", "in"] = "in" if job.book.display == "imperial" else "mm"
    items += [
        Label((width / 2, MARGIN - 5), words, 3.5, anchor="middle"),
        Label((left - 3, top + high / 2), "Spine side", 3.5, -90.0, "middle"),
        Label((width / 2, top + high + 6), "Tail", 3.5, anchor="middle"),
        CheckBar(((width - 101.6) / 2, top + high + 10), unit),
    ]
    return Drawing(
        f"pattern-{job.key}", title, width, top + high + FOOT, tuple(items), true_scale=True
    )


def _box(x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)
