"""Pieces of every stage laid out on the sheets of the shelf, and what must be bought for them.

What can be cut now comes first; what waits for a gate is then cut from what is left, so that a
reading never moves a piece that is cut already. Where that does not go up, all are laid out
together.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from foredge.contract import Build, CutSheet, Cutting, Flat, Homeless, Problem, SheetNeed, faces
from foredge.plan.cutting import CutPlan, Piece, Sheet, plan_cuts
from foredge.plan.cutting.model import OffCut, UsedSheet
from foredge.plan.sheets.many import Alike, plan_many
from foredge.plan.sheets.pool import Pool, Wanted, pool_of
from foredge.plan.sheets.problems import cutting_problems

EFFORT = 0.3
"""Share of the search's full effort: a book has few pieces, and every check makes a plan."""


def plan_cutting(build: Build) -> tuple[Cutting, list[Problem]]:
    """The cutting plan of all copies, item by item in the order of the shelf."""
    made = [
        _cut(build, name, item)
        for name, item in build.book.stock.items()
        if isinstance(item, Flat) and any(piece.stock == name for piece in build.whole.pieces)
    ]
    whole = Cutting(
        tuple(sheet for one in made for sheet in one.sheets),
        tuple(need for one in made for need in one.needs),
        tuple(lost for one in made for lost in one.homeless),
    )
    return whole, cutting_problems(build, whole)


def _cut(build: Build, name: str, item: Flat) -> Cutting:
    """The plan of one stock item. Where its grain is not known, the way that takes less."""
    ways = ("height", "width") if item.grain == "unknown" else (item.grain,)
    plans = [_cut_along(build, pool_of(build, name, item, grain)) for grain in ways]
    return min(plans, key=_waste)


def _cut_along(build: Build, pool: Pool) -> Cutting:
    """What can be cut now and what waits apart, or together where that needs less."""
    apart = _laid_out(build, pool, pool.rounds())
    if not apart.homeless and not any(need.buy for need in apart.needs):
        return apart
    return min(apart, _laid_out(build, pool, pool.rounds(together=True)), key=_waste)


def _waste(cutting: Cutting) -> tuple[int, int, float]:
    area = sum(need.used * need.width_mm * need.height_mm for need in cutting.needs)
    lost = sum(one.count for one in cutting.homeless)
    return lost, sum(need.buy for need in cutting.needs), area


def _laid_out(build: Build, pool: Pool, rounds: Iterable[tuple[Wanted, ...]]) -> Cutting:
    shelf = _Shelf(pool, _least_off_cut_mm(build))
    for wanted in rounds:
        shelf.cut(wanted)
    return shelf.result()


def _least_off_cut_mm(build: Build) -> float:
    said = build.book.bench.keep_from
    return build.book.default("off-cut-least").value if said is None else said.value


class _Shelf:
    """The sheets of one stock item while its rounds of pieces are cut from them."""

    def __init__(self, pool: Pool, least_mm: float) -> None:
        self._pool = pool
        self._least_mm = least_mm
        self._left = {sheet.name: sheet.count for sheet in pool.sheets}
        self._off_cuts: dict[str, tuple[OffCut, int, int]] = {}
        self._sheets: list[CutSheet] = []
        self._homeless: dict[str, int] = {}
        self._first: dict[int, str] = {}
        self._number = 1

    def cut(self, wanted: tuple[Wanted, ...]) -> None:
        """Cut ``wanted`` from off-cuts, then from whole sheets, then from sheets to buy."""
        gates = frozenset[str]().union(*(one.gates for one in wanted))
        pieces = [one.piece for one in wanted]
        pieces = self._from_off_cuts(pieces, gates)
        pieces = self._from_sheets(pieces, gates)
        for piece in self._from_shop(pieces, gates):
            self._homeless[piece.name] = piece.count

    def _plan(self, sheets: list[Sheet], pieces: list[Piece]) -> tuple[list[Alike], list[Piece]]:
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
            Sheet(name, off.width, off.height, left)
            for name, (off, left, _) in self._off_cuts.items()
            if left
        ]
        if not sheets or not pieces:
            return pieces
        found, rest = self._plan(sheets, pieces)
        for same, used in found:
            name = used.sheet.name
            off, left, size = self._off_cuts[name]
            self._off_cuts[name] = off, left - same, size
            self._add(used, same, gates, size, of=name)
        return rest

    def _from_sheets(self, pieces: list[Piece], gates: frozenset[str]) -> list[Piece]:
        if not pieces:
            return []
        sheets = [
            replace(sheet, count=self._left[sheet.name], keep_out=self._pool.zones(sheet, pieces))
            for sheet in self._pool.sheets
        ]
        found, rest = self._plan(sheets, pieces)
        for same, used in found:
            self._left[used.sheet.name] -= same
            self._add(used, same, gates, self._pool.size_of(used.sheet.name))
        return rest

    def _from_shop(self, pieces: list[Piece], gates: frozenset[str]) -> list[Piece]:
        """New sheets of the item's own size for what the shelf has no room for."""
        if not pieces:
            return []
        own = self._pool.sheets[0]
        new = Sheet(own.name, own.width, own.height, sum(piece.count for piece in pieces))
        found, rest = self._plan([new], pieces)
        for same, used in found:
            self._first.setdefault(0, used.placements[0].piece.name)
            self._add(used, same, gates, 0, bought=same)
        return rest

    def _add(
        self,
        used: UsedSheet,
        same: int,
        gates: frozenset[str],
        size: int,
        *,
        bought: int = 0,
        of: str = "",
    ) -> None:
        name = of or f"{self._pool.stock} {self._number}"
        self._number += 0 if of else same
        times = sum(1 for cut in self._sheets if cut.of == of) if of else 0
        name += f".{times + 1}" if times else ""
        self._sheets.append(CutSheet(name, self._pool.stock, size, used, same, bought, of, gates))
        for off in used.off_cuts:
            self._off_cuts[name + off.name] = off, same, size

    def result(self) -> Cutting:
        """What has been cut, and what it took."""
        needs = []
        for face in faces(self._pool.item):
            cut = [one for one in self._sheets if one.size == face.place and not one.of]
            needs.append(
                SheetNeed(
                    stock=self._pool.stock,
                    size=face.place,
                    width_mm=face.width.value,
                    height_mm=face.height.value,
                    used=sum(one.same for one in cut),
                    shelf=None if face.count is None else int(face.count.value),
                    buy=sum(one.bought for one in cut),
                    first=self._first.get(face.place, ""),
                )
            )
        homeless = [
            Homeless(self._pool.stock, name, count) for name, count in self._homeless.items()
        ]
        return Cutting(tuple(self._sheets), tuple(needs), tuple(homeless))
