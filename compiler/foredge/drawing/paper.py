"""The paper one prints on, and what of it is free for drawings."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.drawing.tiling import Room

MARGIN = 10.0
"""mm: more than the 5 mm or so that a printer leaves white (common practice)."""

HEAD = 15.0
FOOT = 12.0
"""mm within the margins for the titles above and the check bars below."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A size of paper in mm, upright."""

    name: str
    title: str
    width: float
    height: float

    def size(self, *, level: bool) -> tuple[float, float]:
        """Width and height, with the long side level or upright."""
        return (self.height, self.width) if level else (self.width, self.height)

    def room(self, *, level: bool) -> Room:
        """What is left for drawings."""
        width, height = self.size(level=level)
        return Room(width - 2 * MARGIN, height - 2 * MARGIN - HEAD - FOOT)


PAPERS: dict[str, Paper] = {
    # ISO 216:2007, table 1.
    "a4": Paper("a4", "A4", 210.0, 297.0),
    # ASME Y14.1-2020, size A: 8.5 by 11 in.
    "letter": Paper("letter", "Letter", 8.5 * 25.4, 11 * 25.4),
}
