"""The search's view of a cutting task: whole-number sizes, one item for each piece to cut.

The kerf is taken out of the arithmetic: with every item and every panel grown by one kerf to the
right and downwards, cutting with a kerf is the same as cutting without.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from foredge.plan.cutting.model import Piece, Sheet
from foredge.plan.cutting.panels import Pane, clean, ways_round

_SCALES = (1, 10, 100, 1_000, 10_000, 100_000, 1_000_000)
_FINEST = 1_000_000_000  # for sizes that are not short decimals (a third of a sheet)


@dataclass(frozen=True, slots=True)
class Stock:
    """A sheet size: ``cost`` is what the search keeps small, ``ways`` the ways round its zones."""

    width: float
    height: float
    area: float
    cost: int
    count: int
    ways: tuple[Pane, ...]
    panels: tuple[list[tuple[float, float]], ...]


@dataclass(frozen=True, slots=True)
class Job:
    """Sizes in 1/``scale`` mm, kerf included. Items of one ``kind`` are interchangeable."""

    scale: int
    kerf: float
    stocks: tuple[Stock, ...]
    sides: list[tuple[tuple[float, float], ...]]
    area: list[float]
    kind: list[int]
    piece: list[int]
    least_side: float
    unit: int

    def fits(self, item: int, stock: Stock) -> bool:
        """Whether the item fits one of the sheet's clean panels."""
        return any(
            w <= width and h <= height
            for w, h in self.sides[item]
            for panels in stock.panels
            for width, height in panels
        )


def scale_of(values: Iterable[float]) -> int:
    """The smallest power of ten that makes every value whole."""
    lengths = list(values)
    for scale in _SCALES:
        if all(abs(v * scale - round(v * scale)) < 1e-9 * max(1.0, v * scale) for v in lengths):
            return scale
    return _FINEST


def make_job(
    sheets: Sequence[Sheet], pieces: Sequence[Piece], kerf: float
) -> tuple[Job, list[int]]:
    """The job, and for each piece how many of it fit no sheet at all."""
    scale = scale_of(_lengths(sheets, pieces, kerf))
    whole = scale != _FINEST
    gap = float(round(kerf * scale))
    wanted = sum(piece.count for piece in pieces)
    priced = all(sheet.price is not None for sheet in sheets)
    unit = max(2, wanted + 1)
    stocks = tuple(_stock(sheet, scale, gap, wanted, unit, priced) for sheet in sheets)
    job = Job(scale, gap, stocks, [], [], [], [], 0.0, unit)
    kinds: dict[tuple[tuple[float, float], ...], int] = {}
    homeless = [0] * len(pieces)
    for index, piece in enumerate(pieces):
        w, h = _units(piece.width, scale, whole) + gap, _units(piece.height, scale, whole) + gap
        sides = ((w, h), (h, w)) if piece.turn and w != h else ((w, h),)
        kind = kinds.setdefault(tuple(sorted(sides)), len(kinds))
        for _ in range(piece.count):
            job.sides.append(sides)
            job.area.append(w * h)
            job.kind.append(kind)
            job.piece.append(index)
        if piece.count and not any(s.count and job.fits(len(job.kind) - 1, s) for s in stocks):
            homeless[index] = piece.count
            for column in (job.sides, job.area, job.kind, job.piece):
                del column[len(column) - piece.count :]
    least = min((min(w, h) for sides in job.sides for w, h in sides), default=0.0)
    return Job(scale, gap, stocks, job.sides, job.area, job.kind, job.piece, least, unit), homeless


def _units(value: float, scale: int, whole: bool) -> float:
    """A piece's side in units; on the finest scale rounded down, so thirds still make a whole."""
    return float(round(value * scale)) if whole else float(int(value * scale))


def _stock(sheet: Sheet, scale: int, gap: float, wanted: int, unit: int, priced: bool) -> Stock:
    width, height = round(sheet.width * scale) + gap, round(sheet.height * scale) + gap
    real = round(sheet.width * scale) * round(sheet.height * scale)
    paid = round((sheet.price or 0.0) * 1_000_000) if priced else real
    zones = [
        (
            round(zone.x * scale) + gap,
            round(zone.y * scale) + gap,
            float(round((zone.x + zone.width) * scale)),
            float(round((zone.y + zone.height) * scale)),
        )
        for zone in sheet.keep_out
    ]
    ways = tuple(ways_round(width, height, zones, gap))
    panels = tuple([(pane.w, pane.h) for pane in clean(way)] for way in ways)
    # Each sheet adds one to a cost whose unit exceeds any sheet count: fewest sheets come second.
    cost = paid * unit + 1
    return Stock(width, height, float(real), cost, min(sheet.count, wanted), ways, panels)


def _lengths(sheets: Sequence[Sheet], pieces: Sequence[Piece], kerf: float) -> Iterable[float]:
    yield kerf
    for sheet in sheets:
        yield from (sheet.width, sheet.height)
        for zone in sheet.keep_out:
            yield from (zone.x, zone.y, zone.x + zone.width, zone.y + zone.height)
    for piece in pieces:
        yield from (piece.width, piece.height)
