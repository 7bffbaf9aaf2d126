"""A piece that no item of its stock is large enough for, in the grain it must have."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from foredge.contract import Build, Piece, Problem, Severity, error, warning

SLACK_MM = 1e-6


@dataclass(frozen=True, slots=True)
class PieceLargerThanStock:
    """Nothing is cut from a sheet that is smaller than the piece."""

    kind: str = "rule"
    name: str = "piece-larger-than-stock"
    title: str = "A piece larger than what it is cut from"
    severity: Severity = Severity.ERROR
    consequence: str = "It cannot be cut in one piece"
    remedy: str = "Take a larger sheet or cloth, or make the book smaller"
    source: str = "geometry"

    def test(self, build: Build) -> Iterable[Problem]:
        """An error where even the small end of the band does not fit, else a warning."""
        for piece in build.whole.pieces:
            item: Any = build.book.stock.get(piece.stock or "")
            if getattr(item, "height", None) is None:
                continue  # tape and thread have no height; joins are another matter
            sides = (piece.width.value, piece.height.value)
            if _fits(piece, item, *sides):
                continue
            low = (build.band(piece.width).low, build.band(piece.height).low)
            tell = warning if _fits(piece, item, *low) else error
            yield tell(
                ("stock", str(piece.stock)),
                f"the {piece.title.lower()} is {sides[0]:.4g} by {sides[1]:.4g} mm, and "
                f"'{piece.stock}' is {item.width.value:.4g} by {item.height.value:.4g} mm"
                f"{_grain(piece, item)}",
                self.name,
                consequence=self.consequence,
                remedy=self.remedy,
                source=self.source,
                on_key=True,
            )


def _grain(piece: Piece, item: Any) -> str:
    if piece.grain == "any" or item.grain == "unknown":
        return ""
    return f" with its grain along the {item.grain}"


def _fits(piece: Piece, item: Any, width_mm: float, height_mm: float) -> bool:
    """Upright or turned, as far as the grain of both allows it."""
    free = piece.grain == "any" or item.grain == "unknown"
    long_mm: float = item.height.value + SLACK_MM
    broad_mm: float = item.width.value + SLACK_MM
    along: bool = piece.grain == item.grain
    upright, turned = free or along, free or not along
    return (upright and width_mm <= broad_mm and height_mm <= long_mm) or (
        turned and height_mm <= broad_mm and width_mm <= long_mm
    )


PLUGIN = PieceLargerThanStock()
