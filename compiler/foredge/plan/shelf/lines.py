"""One group of claims held against the shelf."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from foredge.contract import Build, Dimension, LedgerLine, Linear, Origin, Purchase, Quantity, leaf
from foredge.display_number import decimal
from foredge.plan.shelf.claims import NOWHERE, Claim
from foredge.plan.shelf.fit import Cut, fit
from foredge.plan.shelf.groups import Group, shelf_of
from foredge.plan.shelf.purchase import bought
from foredge.quantity import Band

SLACK = 1e-9
OFF_CUTS = "text_block.offcuts.mass"


@dataclass(frozen=True, slots=True)
class _Want:
    """What is still to be taken, at the high end of its band: ``cuts`` in one length each, and
    ``bulk`` besides, ``at`` the places of the work in turn."""

    cuts: tuple[Cut, ...]
    bulk: float
    at: tuple[tuple[int, float], ...]

    @property
    def whole(self) -> float:
        return self.bulk + math.fsum(cut.length_mm for cut in self.cuts)


@dataclass(frozen=True, slots=True)
class _Lack:
    """What is missing, and the place of the work where it shows first."""

    amount: float
    place: int
    cuts: tuple[Cut, ...] = ()


def line_of(build: Build, group: Group, need: Quantity, band: Band) -> LedgerLine:
    """The ledger's line for ``group``; ``band`` is that of ``need``."""
    ratio = band.high / need.value if need.value else 1.0
    want = _want(build, group.claims, ratio, left_only=True)
    shelf = None if group.unclear else _shelf(build, group)
    lack = _lack(group, want, shelf)
    places = dict.fromkeys(claim.place for claim in group.claims if claim.place != NOWHERE)
    return LedgerLine(
        material=group.material,
        stock=group.stock,
        need=need,
        band=band,
        most=amount_of(want.whole, need.dimension),
        shelf=shelf,
        short=None if lack is None else amount_of(lack.amount, need.dimension),
        first=_operation(build, lack.place) if lack is not None else "",
        steps=tuple(build.order[place].id for place in places),
        notes=tuple(dict.fromkeys(claim.note for claim in group.claims if claim.note)),
        pieces_short=_pieces(lack.cuts) if lack is not None else "",
        from_off_cuts=_from_off_cuts(group),
        buy=_buy(build, group, need.dimension, want, shelf, lack),
        afresh=_afresh(build, group, need.dimension, ratio),
        unclear=group.unclear,
    )


def amount_of(value: float, dimension: Dimension) -> Quantity:
    """A number of the ledger that is told and not computed with any further."""
    return leaf(value, dimension, "ledger.amount", Origin("constant"))


def _operation(build: Build, place: int) -> str:
    return build.order[place].id if place < len(build.order) else ""


def _want(build: Build, claims: Iterable[Claim], ratio: float, *, left_only: bool) -> _Want:
    """``ratio`` is the high end of the band over the amount; ``left_only``: not what is done."""
    copies = int(build.book.copies.value)
    cuts: list[Cut] = []
    at: list[tuple[int, float]] = []
    for claim in claims:
        if left_only and _operation(build, claim.place) in build.book.done:
            continue
        if claim.piece is None:
            at.append((claim.place, claim.amount.value * ratio * copies))
            continue
        length = claim.piece.height
        longest = max(length.value, build.band(length).high)
        pieces = int(claim.piece.count.value) * copies
        cuts += [Cut(longest, claim.place, claim.piece.title)] * pieces
    return _Want(tuple(cuts), math.fsum(amount for _, amount in at), tuple(at))


def _from_off_cuts(group: Group) -> bool:
    return group.stock is None and all(claim.from_off_cuts for claim in group.claims)


def _shelf(build: Build, group: Group) -> Quantity | None:
    if not _from_off_cuts(group):
        return shelf_of(group.item)
    try:
        return build.quantity(OFF_CUTS) * build.book.copies
    except KeyError:
        return None


def _lack(group: Group, want: _Want, shelf: Quantity | None) -> _Lack | None:
    if shelf is None:
        return None
    if isinstance(group.item, Linear):
        return _lack_of_length(group.item, want)
    if want.whole <= shelf.value * (1 + SLACK):
        return None
    return _Lack(want.whole - shelf.value, _runs_out(want, shelf.value))


def _lack_of_length(item: Linear, want: _Want) -> _Lack | None:
    lengths = [*([item.length] if item.length is not None else []), *item.more]
    cut = fit(want.cuts, [length.value for length in lengths])
    left = math.fsum(cut.left_mm)
    loose = want.bulk - left if want.bulk > left * (1 + SLACK) else 0.0
    if not cut.homeless and not loose:
        return None
    places = [one.place for one in cut.homeless]
    if loose:
        places.append(_runs_out(want, left))
    return _Lack(cut.short_mm + loose, min(places), cut.homeless)


def _runs_out(want: _Want, there: float) -> int:
    """The place of the work at which the sum of what is taken passes ``there``."""
    taken = 0.0
    for place, amount in want.at:
        taken += amount
        if taken > there * (1 + SLACK):
            return place
    return want.at[-1][0]


def _pieces(cuts: tuple[Cut, ...]) -> str:
    """``2 × 510.5 mm``, the longest first."""
    counted: dict[float, int] = {}
    for cut in cuts:
        counted[cut.length_mm] = counted.get(cut.length_mm, 0) + 1
    return ", ".join(f"{number} × {decimal(Fraction(mm), 1)} mm" for mm, number in counted.items())


def _buy(
    build: Build,
    group: Group,
    dimension: Dimension,
    want: _Want,
    shelf: Quantity | None,
    lack: _Lack | None,
) -> Purchase | None:
    """What is missing; all of it where nothing is on the shelf, but not what needs no count."""
    if group.unclear or not want.whole:
        return None
    if shelf is not None:
        if lack is None:
            return None
        short = amount_of(lack.amount, dimension)
        return bought(build, group.material, group.item, short, lack.cuts)
    sold = getattr(group.item, "sold_by", None) is not None
    if group.item is not None and group.item.price is None and not sold:
        return None  # as much as wanted
    whole = amount_of(want.whole, dimension)
    return bought(build, group.material, group.item, whole, want.cuts)


def _afresh(build: Build, group: Group, dimension: Dimension, ratio: float) -> Purchase | None:
    if group.item is None or group.item.price is None or group.unclear:
        return None
    want = _want(build, group.claims, ratio, left_only=False)
    whole = amount_of(want.whole, dimension)
    return bought(build, group.material, group.item, whole, want.cuts)
