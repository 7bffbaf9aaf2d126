"""Sheets chosen by money: the weights the search is given, and plans held against brute force."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import combinations, product
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings, strategies as st

from demo import registry
from foredge.compile import compile_spec
from foredge.contract import LENGTH, RATIO, Cutting, Face, Origin, Piece, Price, Quantity, leaf
from foredge.contract.stock import Sheet as SheetItem, Size
from foredge.emit.cutting_aims import aim_lines
from foredge.plan.cutting import Piece as CutPiece, Sheet, plan_cuts
from foredge.plan.sheets.pool import Pool, Wanted
from foredge.plan.sheets.prices import for_money, on_sale, outlay, partly_priced, weights
from foredge.plan.sheets.shelf import Shelf
from money_books import build_with, compiled_with, line, rules

VALID = Path(__file__).parents[3] / "specs-valid"
_AS_SAID = Origin("constant")


def mm(value: float) -> Quantity:
    return leaf(value, LENGTH, "side", _AS_SAID)


def many(value: int) -> Quantity:
    return leaf(value, RATIO, "count", _AS_SAID)


def euro(amount: str | Decimal | None) -> Price | None:
    return None if amount is None else Price(Decimal(amount), "EUR", (), f"{amount} EUR")


def face(place: int, width: float, height: float, price: str | None, sold_by: int = 1) -> Face:
    nothing = mm(0.0)
    return Face(place, mm(width), mm(height), None, (), (), nothing, nothing,
                euro(price), many(sold_by))  # fmt: skip


def test_only_where_every_size_has_a_price_do_prices_choose() -> None:
    both = [face(0, 400, 600, "0.40"), face(1, 200, 300, "0.10")]
    assert for_money(both) and None not in weights(both)
    some = [face(0, 400, 600, "0.40"), face(1, 200, 300, None)]
    assert not for_money(some) and weights(some) == (None, None)
    found = partly_priced(some)
    assert found is not None and [one.place for one in found[False]] == [1]
    free = [face(0, 400, 600, "0"), face(1, 200, 300, "0")]
    assert not for_money(free) and weights(free) == (None, None)
    assert partly_priced(both) is None and partly_priced([face(0, 1, 1, None)]) is None


_PRICES = st.decimals(0, 30, places=2)
_SIZES = st.tuples(st.integers(50, 900), st.integers(50, 900), _PRICES, st.integers(1, 7))
_COUNTS = st.lists(st.integers(0, 12), min_size=3, max_size=3)


@given(st.lists(_SIZES, min_size=3, max_size=3), _COUNTS, _COUNTS)
def test_weights_add_up_to_money_first_and_area_where_it_is_level(
    sizes: list[tuple[int, int, Decimal, int]], one: list[int], other: list[int]
) -> None:
    shelf = [face(at, w, h, str(price), by) for at, (w, h, price, by) in enumerate(sizes)]
    found = [round((weight or 0.0) * 1_000_000) for weight in weights(shelf)]
    if not for_money(shelf):
        return

    def whole(counts: list[int]) -> tuple[Fraction, int]:
        money = sum((n * (f.each or 0) for n, f in zip(counts, shelf, strict=True)), Fraction(0))
        return money, sum(n * w * h for n, (w, h, _, _) in zip(counts, sizes, strict=True))

    weighed = [sum(n * w for n, w in zip(counts, found, strict=True)) for counts in (one, other)]
    assert (weighed[0] < weighed[1]) == (whole(one) < whole(other))


def test_of_two_free_sheets_the_smaller_is_cut_up() -> None:
    shelf = [face(0, 600, 400, "0"), face(1, 300, 200, "0"), face(2, 500, 400, "1.00")]
    sheets = [
        Sheet(f"paper/{one.place}", one.width.value, one.height.value, 3, weight)
        for one, weight in zip(shelf, weights(shelf), strict=True)
    ]
    small = plan_cuts(sheets, [CutPiece("p", 300, 200, 2, False)])
    assert sorted(used.sheet.name for used in small.used) == ["paper/1", "paper/1"]
    large = plan_cuts(sheets, [CutPiece("p", 500, 400, 2, False)])
    assert sorted(used.sheet.name for used in large.used) == ["paper/0", "paper/0"]


def test_a_pack_is_opened_where_it_is_worth_it(tmp_path: Path) -> None:
    """Singles at 0.36: 8 of them for 24 folios cost 2.88, 12 out of three packs at 0.90 less."""
    small = {"width": "300 mm", "height": "420 mm", "price": "0.90 EUR", "sold_by": 4}
    paper = {"count": None, "price": "0.36 EUR", "more": [small]}
    build = build_with(tmp_path, {"paper": paper})
    used = {need.size: need.used for need in build.plan.cutting.needs if need.stock == "paper"}
    assert used == {0: 0, 1: 12}
    dearer = {**paper, "more": [{**small, "price": "0.97 EUR"}]}
    build = build_with(tmp_path, {"paper": dearer})
    used = {need.size: need.used for need in build.plan.cutting.needs if need.stock == "paper"}
    assert used == {0: 8, 1: 0}


def test_packs_are_paid_whole_and_what_is_free_is_not_for_sale() -> None:
    pack = face(0, 400, 600, "4.50", 5)
    assert [outlay(pack, n) for n in (0, 1, 5, 6)] == [0, Fraction("4.50"), Fraction("4.50"), 9]
    free, dear, bare = face(0, 9, 9, "0"), face(1, 9, 9, "2"), face(0, 9, 9, None)
    assert on_sale([free, dear]) == ((1,), (0,))
    assert on_sale([bare, dear]) == ((1,), (0,))
    assert on_sale([face(0, 9, 9, "1"), dear]) == ((0, 1),)
    assert on_sale([bare]) == on_sale([free]) == ((0,),)


# Small pools against brute force that shares nothing with the engine.

Box = tuple[int, int]
Stock = tuple[int, int, str, int | None]
"""Width, height, price, count (None: as many as wanted)."""


@cache
def boxes(pieces: tuple[Box, ...]) -> frozenset[Box]:
    """Every box, edge to edge, that ``pieces`` make up when each lies as it is."""
    if len(pieces) == 1:
        return frozenset(pieces)
    found: set[Box] = set()
    rest = range(1, len(pieces))
    for size in range(len(pieces) - 1):
        for with_first in combinations(rest, size):
            left = tuple(pieces[n] for n in (0, *with_first))
            right = tuple(pieces[n] for n in rest if n not in with_first)
            for (w, h), (v, g) in product(boxes(left), boxes(right)):
                found |= {(w + v, max(h, g)), (max(w, v), h + g)}
    return frozenset(found)


def least_money(shelf: list[Stock], pieces: list[Box]) -> Fraction | None:
    """The least that sheets for all ``pieces`` cost; None where the shelf has no room."""
    counts = tuple(len(pieces) if stock[3] is None else stock[3] for stock in shelf)

    @cache
    def least(left: tuple[Box, ...], there: tuple[int, ...]) -> Fraction | None:
        if not left:
            return Fraction(0)
        found: list[Fraction] = []
        rest = range(1, len(left))
        for size in range(len(left)):
            for with_first in combinations(rest, size):
                mine = tuple(left[n] for n in (0, *with_first))
                for at, (w, h, price, _) in enumerate(shelf):
                    if not there[at] or all(v > w or g > h for v, g in boxes(mine)):
                        continue
                    after = tuple(n - (place == at) for place, n in enumerate(there))
                    more = least(tuple(left[n] for n in rest if n not in with_first), after)
                    if more is not None:
                        found.append(Fraction(price) + more)
        return min(found, default=None)

    return least(tuple(sorted(pieces)), counts)


def planned(shelf: list[Stock], pieces: list[Box]) -> Cutting:
    (width, height, price, count), *more = shelf
    item = SheetItem(
        width=mm(width),
        height=mm(height),
        grain="height",
        price=euro(price),
        count=None if count is None else many(count),
        more=tuple(
            Size(width=mm(w), height=mm(h), price=euro(p), count=None if n is None else many(n))
            for w, h, p, n in more
        ),
    )
    wanted = []
    for number, (w, h) in enumerate(pieces):
        source = Piece(f"p{number}", "Piece", many(1), mm(w), mm(h), "height", "paper")
        wanted.append(Wanted(CutPiece(source.name, w, h, 1, False), source, frozenset(), False))
    sizes = [face(at, w, h, p) for at, (w, h, p, _) in enumerate(shelf)]
    sheets = tuple(
        Sheet(f"paper/{at}", w, h, len(pieces) if n is None else min(n, len(pieces)), weight)
        for at, ((w, h, _, n), weight) in enumerate(zip(shelf, weights(sizes), strict=True))
    )
    cut = Shelf(Pool("paper", item, "height", sheets, tuple(wanted), 0.0), 10.0)
    cut.cut(tuple(wanted))
    return cut.result()


def paid(cutting: Cutting) -> Fraction:
    return sum((need.used * (need.each or 0) for need in cutting.needs), Fraction(0))


_STOCK = st.tuples(
    st.integers(4, 12).map(lambda n: n * 10),
    st.integers(4, 12).map(lambda n: n * 10),
    st.sampled_from(["0", "0.15", "0.40", "0.85", "1.20", "2.50"]),
)
_BOX = st.tuples(st.integers(1, 8).map(lambda n: n * 10), st.integers(1, 8).map(lambda n: n * 10))


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.tuples(_STOCK, st.one_of(st.none(), st.integers(1, 2))), min_size=2, max_size=3),
    st.lists(_BOX, min_size=1, max_size=5),
)
def test_no_plan_costs_less(
    shelf: list[tuple[tuple[int, int, str], int | None]], pieces: list[Box]
) -> None:
    """Held against every way of giving up to five pieces to sheets, and every guillotine box."""
    stocks: list[Stock] = [(*stock, count) for stock, count in shelf]
    if not any(Fraction(price) for _, _, price, _ in stocks):
        return
    least = least_money(stocks, pieces)
    cutting = planned(stocks, pieces)
    if least is None:
        assert cutting.homeless or any(need.buy for need in cutting.needs)
        return
    assert not cutting.homeless and not any(need.buy for need in cutting.needs)
    assert paid(cutting) == least


@settings(deadline=None, max_examples=40)
@given(
    st.lists(st.tuples(_STOCK, st.integers(1, 4)), min_size=2, max_size=3),
    st.integers(2, 9),
    st.tuples(st.integers(2, 6).map(lambda n: n * 10), st.integers(2, 6).map(lambda n: n * 10)),
)
def test_what_is_bought_in_one_size_or_several_costs_least(
    shelf: list[tuple[tuple[int, int, str], int]], count: int, piece: Box
) -> None:
    """Equal pieces lie in rows and columns, so that each size gives so many; then all counts."""
    sizes = [face(at, w, h, p, by) for at, ((w, h, p), by) in enumerate(shelf)]
    gives = [(w // piece[0]) * (h // piece[1]) for (w, h, _), _ in shelf]
    sold = [at for at in on_sale(sizes)[0] if sizes[at].each and gives[at]]
    if not sold:
        return
    least = min(
        sum((outlay(sizes[at], n) for at, n in zip(sold, counts, strict=True)), Fraction(0))
        for counts in product(range(count + 1), repeat=len(sold))
        if sum(gives[at] * n for at, n in zip(sold, counts, strict=True)) >= count
    )
    single = min(outlay(sizes[at], -(-count // gives[at])) for at in sold)
    spent = spent_on(shelf, count, piece)
    assert least <= spent <= single
    if all(sizes[at].sold_by is not None and sizes[at].sold_by.value == 1 for at in sold):
        assert spent == least


def spent_on(shelf: list[tuple[tuple[int, int, str], int]], count: int, piece: Box) -> Fraction:
    """Money for whole lots where nothing is on the shelf at all."""
    item = SheetItem(
        width=mm(shelf[0][0][0]), height=mm(shelf[0][0][1]), grain="height",
        price=euro(shelf[0][0][2]), sold_by=many(shelf[0][1]), count=many(1),
        more=tuple(
            Size(width=mm(w), height=mm(h), price=euro(p), sold_by=many(by), count=many(1))
            for (w, h, p), by in shelf[1:]
        ),
    )  # fmt: skip
    source = Piece("p", "Piece", many(count), mm(piece[0]), mm(piece[1]), "height", "paper")
    cut_piece = CutPiece("p", piece[0], piece[1], count, False)
    wanted = (Wanted(cut_piece, source, frozenset(), False),)
    empty = tuple(Sheet(f"paper/{at}", w, h, 0) for at, ((w, h, _), _) in enumerate(shelf))
    cut = Shelf(Pool("paper", item, "height", empty, wanted, 0.0), 10.0)
    cut.cut(wanted)
    cutting = cut.result()
    assert not cutting.homeless
    sizes = [face(at, w, h, p, by) for at, ((w, h, p), by) in enumerate(shelf)]
    return sum((outlay(sizes[need.size], need.buy) for need in cutting.needs), Fraction(0))


# Whole books.


def test_a_book_is_cut_differently_because_of_its_prices(tmp_path: Path) -> None:
    """Folios of 285 × 194 mm: three from 420 × 594, two from 300 × 420, four from 610 × 430."""
    run = compile_spec(str(VALID / "cut-for-the-least-money.yaml"), registry())
    assert run.build is not None and not run.diagnostics
    used = {need.size: need.used for need in run.build.plan.cutting.needs if need.stock == "paper"}
    # The free sheet gives 4. For 20 more, 7 of 3 cost 2.10 and two packs, of 2 a sheet, 2.40. Six
    # and a sheet of a pack would be 2.04 by their shares, and 3.00 in the shop.
    assert used == {0: 7, 1: 0, 2: 1}
    assert aim_lines(run.build) == (
        "paper, laid out for the least money: 7 × 0.30 EUR + 1 × 0.00 EUR = 2.10 EUR.",
    )
    more: list[dict[str, Any]] = [
        {"width": "300 mm", "height": "420 mm"},
        {"width": "610 mm", "height": "430 mm", "count": 1},
    ]
    plain = build_with(tmp_path, {"paper": {"count": None, "more": more}})
    by_area = {need.size: need.used for need in plain.plan.cutting.needs if need.stock == "paper"}
    assert by_area != used
    areas = [
        sum(need.area_mm2 for need in build.plan.cutting.needs if need.stock == "paper")
        for build in (plain, run.build)
    ]
    assert areas[0] < areas[1]
    assert aim_lines(plain) == ("paper, laid out for the least area: 1.51 m² of sheets.",)


def test_copies_are_chosen_together(tmp_path: Path) -> None:
    """Three books need 72 folios: 24 sheets at 3 each, and no three single left-overs."""
    more = [{"width": "300 mm", "height": "420 mm", "price": "0.30 EUR"}]
    paper = {"count": None, "price": "0.35 EUR", "more": more}
    build = build_with(tmp_path, {"paper": paper, "cloth": {"count": 3}, "board": {"count": 3}},
                       copies=3)  # fmt: skip
    (found,) = [one for one in build.plan.ledger.lines if one.stock == "paper"]
    assert found.buy is not None and found.buy.units == 24
    assert found.cheapest_of == 2


def test_where_some_sizes_have_no_price_a_note_says_so(tmp_path: Path) -> None:
    size = {"width": "300 mm", "height": "420 mm", "count": 2}
    priced = {**size, "price": "0.30 EUR"}
    assert rules(compiled_with(tmp_path, {"paper": {"more": [priced]}})) == ["sheets-partly-priced"]
    reverse = {"paper": {"price": "0.35 EUR", "more": [size]}}
    assert rules(compiled_with(tmp_path, reverse)) == ["sheets-partly-priced"]
    both = {"paper": {"price": "0.35 EUR", "more": [priced]}}
    assert rules(compiled_with(tmp_path, both)) == []
    unused = {"other": {"kind": "sheet", "width": "9 mm", "height": "9 mm", "more": [priced]}}
    assert rules(compiled_with(tmp_path, unused)) == []


def test_what_runs_out_is_bought_in_the_size_that_has_a_price(tmp_path: Path) -> None:
    """Salvaged sheets are free and few; the size that is sold makes up for them."""
    more = [{"width": "300 mm", "height": "420 mm", "price": "1.50 EUR", "sold_by": 5, "count": 1}]
    run = compiled_with(tmp_path, {"paper": {"count": 4, "price": "0 EUR", "more": more}})
    assert run.build is not None
    found = {one.size: one for one in run.build.plan.ledger.lines if one.stock == "paper"}
    # 24 folios: 4 sheets give 12, one gives 2, so 10 are missing: 5 of the small ones, one pack.
    assert found[0].buy is None and found[1].buy is not None
    assert (found[1].buy.amount.value, found[1].buy.units) == (5, 1)
    assert found[1].buy.price is not None and found[1].buy.price.amount == Decimal("1.50")


def test_a_size_with_a_price_that_is_too_small_gives_way_to_the_own_size(tmp_path: Path) -> None:
    more = [{"width": "100 mm", "height": "100 mm", "price": "0.10 EUR"}]
    run = compiled_with(tmp_path, {"paper": {"count": 4, "more": more}})
    assert run.build is not None
    assert line(run.build, "paper").size == 0
    assert line(run.build, "paper").short is not None


@pytest.mark.parametrize("count", [None, 30])
def test_what_is_free_in_any_number_is_not_bought(tmp_path: Path, count: int | None) -> None:
    build = build_with(tmp_path, {"paper": {"count": count, "price": "0 EUR"}})
    assert line(build, "paper").buy is None
