"""The sheets of one stock item while its pieces are cut from them, round after round."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from foredge.contract import CutSheet, Cutting, Face, Homeless, SheetNeed, faces
from foredge.plan.cutting import CutPlan, OffCut, Piece, Rect, Sheet, plan_cuts
from foredge.plan.sheets.many import Alike, plan_many
from foredge.plan.sheets.pool import Pool, Wanted
from foredge.plan.sheets.prices import choices, for_money, on_sale, outlay, weights
from foredge.plan.sheets.runs import in_runs
from foredge.plan.sheets.strip import strips_kept

EFFORT = 0.3
"""Share of the search's full effort: a book has few pieces, and every check makes a plan."""

_Found = tuple[list[Alike], list[Piece]]


@dataclass(slots=True)
class _Left:
    """``count`` off-cuts alike, of sheets of the size ``size``; ``spoiled`` lies on each."""

    off: OffCut
    count: int
    size: int
    spoiled: tuple[Rect, ...]


class Shelf:
    """What is there, what has been cut so far, and what had to be bought."""

    def __init__(self, pool: Pool, least_mm: float) -> None:
        self._pool = pool
        self._faces = faces(pool.item)
        self._least_mm = least_mm
        self._there = {sheet.name: sheet.count for sheet in pool.sheets}
        self._off_cuts: dict[str, _Left] = {}
        self._sheets: list[CutSheet] = []
        self._homeless: dict[str, int] = {}
        self._first: dict[int, str] = {}
        self._had: Counter[int] = Counter()  # from a shop, by size
        self._number = 1

    def cut(self, wanted: tuple[Wanted, ...]) -> None:
        """Cut ``wanted`` from off-cuts, then from whole sheets, then from sheets to buy."""
        gates = frozenset[str]().union(*(one.gates for one in wanted))
        pieces = [one.piece for one in wanted]
        pieces = self._from_off_cuts(pieces, gates)
        pieces = self._from_sheets(pieces, gates)
        for places in on_sale(self._faces):
            pieces = self._from_shop(places, pieces, gates)
        for piece in pieces:
            self._homeless[piece.name] = piece.count

    def _plan(self, sheets: Sequence[Sheet], pieces: list[Piece]) -> _Found:
        return plan_many(self._engine, sheets, pieces)

    def _engine(self, sheets: list[Sheet], pieces: list[Piece]) -> CutPlan:
        return plan_cuts(
            sheets,
            pieces,
            kerf=self._pool.kerf_mm,
            effort=EFFORT,
            min_off_cut=self._least_mm,
        )

    def _from_off_cuts(self, pieces: list[Piece], gates: frozenset[str]) -> list[Piece]:
        sheets = [
            Sheet(name, left.off.width, left.off.height, left.count, keep_out=left.spoiled)
            for name, left in self._off_cuts.items()
            if left.count
        ]
        if not sheets or not pieces:
            return pieces
        found, rest = self._plan(sheets, pieces)
        for same, used in found:
            left = self._off_cuts[used.sheet.name]
            left.count -= same
            cut = CutSheet("", self._pool.stock, left.size, used, same, 0, used.sheet.name, gates)
            self._add(cut, left.spoiled)
        return rest

    def _from_sheets(self, pieces: list[Piece], gates: frozenset[str]) -> list[Piece]:
        if not pieces:
            return []
        sheets = [
            replace(sheet, count=self._there[sheet.name], keep_out=self._pool.zones(sheet, pieces))
            for sheet in self._pool.sheets
        ]
        found, rest = self._cheapest(self._shelf_choices(sheets), pieces)
        for same, used in found:
            name = used.sheet.name
            self._there[name] -= same
            spoiled = self._pool.spoiled(name)
            kept = strips_kept(used, spoiled, self._least_mm)
            size = self._pool.size_of(name)
            self._had[size] += same if self._faces[size].count is None else 0
            self._add(CutSheet("", self._pool.stock, size, kept, same, gates=gates), spoiled)
        return rest

    def _shelf_choices(self, sheets: list[Sheet]) -> list[list[Sheet]]:
        """What is on the shelf, with every choice of the packs that are bought as needed."""
        wanted = [face for face in self._faces if face.count is None and face.price is not None]
        packs = any(face.sold_by is not None and face.sold_by.value > 1 for face in wanted)
        if not packs or not for_money(self._faces):
            return [sheets]
        left_out = [
            {face.place for face in wanted} - set(choice) for choice in [*choices(wanted), ()]
        ]
        return [
            [sheet for place, sheet in enumerate(sheets) if place not in out] for out in left_out
        ]

    def _from_shop(
        self, places: tuple[int, ...], pieces: list[Piece], gates: frozenset[str]
    ) -> list[Piece]:
        """New sheets, of the sizes at ``places``, for what the shelf has no room for."""
        if not pieces:
            return []
        count = sum(piece.count for piece in pieces)
        shop = [self._faces[place] for place in places]
        new = {
            face.place: replace(self._pool.sheets[face.place], count=count, price=weight)
            for face, weight in zip(shop, weights(shop), strict=True)
        }
        ways = [[new[place] for place in some] for some in choices(shop)]
        found, rest = self._cheapest(ways, pieces, new=True)
        for same, used in found:
            size = self._pool.size_of(used.sheet.name)
            self._first.setdefault(size, used.placements[0].piece.name)
            self._had[size] += same
            self._add(CutSheet("", self._pool.stock, size, used, same, same, gates=gates), ())
        return rest

    def _cheapest(
        self, ways: list[list[Sheet]], pieces: list[Piece], *, new: bool = False
    ) -> _Found:
        """The best plan of ``ways``; ``new`` sheets come from a shop though some are there."""
        if len(ways) == 1:
            return self._plan(ways[0], pieces)
        plans = [self._plan(way, pieces) for way in ways if way]
        return min(plans, key=lambda found: self._spent(found, new))

    def _spent(self, found: _Found, new: bool) -> tuple[int, Fraction, float]:
        """What stays without a sheet, the money of whole lots and shares, the area."""
        more: Counter[int] = Counter()
        area = 0.0
        for same, used in found[0]:
            more[self._pool.size_of(used.sheet.name)] += same
            area += same * used.sheet.width * used.sheet.height
        money = (self._money(self._faces[place], count, new) for place, count in more.items())
        return sum(piece.count for piece in found[1]), sum(money, Fraction(0)), area

    def _money(self, face: Face, count: int, new: bool) -> Fraction:
        """For ``count`` more sheets: whole lots where they are bought, the share on the shelf."""
        if not new and face.count is not None:
            return count * (face.each or Fraction(0))
        had = self._had[face.place]
        return outlay(face, had + count) - outlay(face, had)

    def _add(self, cut: CutSheet, spoiled: Iterable[Rect]) -> None:
        """``cut`` under its name, and its off-cuts for later rounds."""
        name = cut.of or f"{self._pool.stock} {self._number}"
        self._number += 0 if cut.of else cut.same
        times = sum(1 for one in self._sheets if one.of == cut.of) if cut.of else 0
        name += f".{times + 1}" if times else ""
        self._sheets.append(replace(cut, name=name, layout=in_runs(cut.layout)))
        for off in cut.layout.off_cuts:
            on_it = tuple(
                Rect(place.x - off.x, place.y - off.y, place.width, place.height)
                for place in spoiled
            )
            self._off_cuts[name + off.name] = _Left(off, cut.same, cut.size, on_it)

    def result(self) -> Cutting:
        """What has been cut, and what it took."""
        homeless = [
            Homeless(self._pool.stock, name, count) for name, count in self._homeless.items()
        ]
        return Cutting(tuple(self._sheets), tuple(map(self._need, self._faces)), tuple(homeless))

    def _need(self, face: Face) -> SheetNeed:
        cut = [one for one in self._sheets if one.size == face.place and not one.of]
        money = for_money(self._faces)
        priced = sum(1 for one in self._faces if one.each)
        buy = sum(one.bought for one in cut)
        chosen = buy or (money and face.count is None)
        return SheetNeed(
            stock=self._pool.stock,
            size=face.place,
            width_mm=face.width.value,
            height_mm=face.height.value,
            used=sum(one.same for one in cut),
            shelf=None if face.count is None else int(face.count.value),
            buy=buy,
            first=self._first.get(face.place, ""),
            for_money=money,
            each=face.each,
            paid=outlay(face, self._had[face.place]),
            cheapest_of=priced if priced > 1 and face.each and chosen else 0,
        )
