"""A stock item size by size, its spoiled places as rectangles, and what one sheet gives."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from foredge.contract.flat import Crease, KeepOut, Size
from foredge.contract.money import Price
from foredge.contract.stock import Flat
from foredge.dimension import LENGTH, RATIO
from foredge.plan.cutting.model import Rect
from foredge.quantity import Origin, Quantity, floor, leaf, opaque

_NONE = leaf(0.0, LENGTH, "nothing", Origin("constant"))


@dataclass(frozen=True, slots=True)
class Face:
    """One size of a stock item. ``place`` 0 is the item's own size, then those under ``more``."""

    place: int
    width: Quantity
    height: Quantity
    count: Quantity | None
    keep_out: tuple[KeepOut, ...]
    creases: tuple[Crease, ...]
    edge: Quantity
    kerf: Quantity
    price: Price | None = None
    sold_by: Quantity | None = None

    @property
    def each(self) -> Fraction | None:
        """What one sheet costs, its share where several are sold together; None without a price."""
        if self.price is None:
            return None
        together = 1 if self.sold_by is None else int(self.sold_by.value)
        return Fraction(self.price.amount) / together

    @property
    def spoiled(self) -> bool:
        """Whether anything but its sides limits what is cut from it."""
        return bool(self.keep_out) or self.edge.value > 0 or self.kerf.value > 0

    def zones(self) -> list[Rect]:
        """Keep-out places and cut-away edges, in mm."""
        found = [
            Rect(zone.x.value, zone.y.value, zone.width.value, zone.height.value)
            for zone in self.keep_out
        ]
        return found + edge_zones(self.width.value, self.height.value, self.edge.value)

    def crease_lines(self) -> list[Rect]:
        """Creases as rectangles without width, in mm."""
        return [
            Rect(crease.at.value, 0.0, 0.0, self.height.value)
            if crease.along == "height"
            else Rect(0.0, crease.at.value, self.width.value, 0.0)
            for crease in self.creases
        ]


def faces(item: Flat) -> tuple[Face, ...]:
    """Every size of ``item``, its own first."""
    edge = _NONE if item.edge is None else item.edge
    kerf = _NONE if item.kerf is None else item.kerf
    sizes: tuple[Flat | Size, ...] = (item, *item.more)
    return tuple(
        Face(
            place,
            one.width,
            one.height,
            one.count,
            one.keep_out,
            one.creases,
            edge,
            kerf,
            one.price,
            one.sold_by,
        )
        for place, one in enumerate(sizes)
    )


def edge_zones(width_mm: float, height_mm: float, edge_mm: float) -> list[Rect]:
    """The strip ``edge_mm`` wide along each side, as keep-out rectangles."""
    if edge_mm <= 0:
        return []
    return [
        Rect(0.0, 0.0, width_mm, edge_mm),
        Rect(0.0, height_mm - edge_mm, width_mm, edge_mm),
        Rect(0.0, 0.0, edge_mm, height_mm),
        Rect(width_mm - edge_mm, 0.0, edge_mm, height_mm),
    ]


def pieces_from(face: Face, turned: bool, across: Quantity, down: Quantity) -> Quantity:
    """How many pieces ``across`` by ``down``, all lying the same way, one sheet gives.

    ``turned``: the sheet's height lies across the pieces.
    """
    sides = (face.height, face.width) if turned else (face.width, face.height)
    if not face.spoiled:
        return floor(sides[0] / across) * floor(sides[1] / down)
    width, height = (down, across) if turned else (across, down)
    spoiled = [side for zone in face.keep_out for side in (zone.x, zone.y, zone.width, zone.height)]
    inputs = (face.width, face.height, face.edge, face.kerf, width, height, *spoiled)
    return opaque(_most_pieces, inputs, RATIO)


@lru_cache(maxsize=256)  # a band replays it for every end of every leaf, mostly the same ones
def _most_pieces(
    width: float,
    height: float,
    edge: float,
    kerf: float,
    piece_width: float,
    piece_height: float,
    *zones: float,
) -> float:
    """The pieces that edge-to-edge cuts get out of one sheet round its spoiled places."""
    from foredge.plan.cutting import Piece, Sheet, plan_cuts

    spoiled = [Rect(*zones[at : at + 4]) for at in range(0, len(zones), 4)]
    keep_out = (*spoiled, *edge_zones(width, height, edge))
    most = math.floor(width / piece_width) * math.floor(height / piece_height)
    if most < 1:
        return 0.0
    sheet = Sheet("sheet", width, height, 1, keep_out=keep_out)
    plan = plan_cuts([sheet], [Piece("piece", piece_width, piece_height, most, False)], kerf=kerf)
    return float(sum(len(used.placements) for used in plan.used))
