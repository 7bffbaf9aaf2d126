"""Thickness and mass of what lies on the shelf: measured, or by table."""

from __future__ import annotations

import pytest

from foredge.contract import (
    TableError,
    cloth_figures,
    paper_figures,
    thread_figures,
)
from foredge.quantity import band
from text_block_books import STOCK, book


def test_a_measured_sheet_wins_over_its_material() -> None:
    figures = paper_figures(book(), "ledger", "office")
    assert figures.measured and figures.row == "book"
    assert figures.thickness.value == pytest.approx(0.1)
    spread = band(figures.thickness)
    assert spread.low == pytest.approx(0.097) and spread.high == pytest.approx(0.103)


def test_grammage_by_bulk_where_nothing_was_measured() -> None:
    figures = paper_figures(book(), "chart-paper", "office")
    assert not figures.measured and figures.row == "chart"
    assert figures.thickness.value == pytest.approx(90e-6 * 1150)


def test_a_measured_sheet_of_unknown_weight_is_weighed_by_its_bulk() -> None:
    shelf = book({"ledger": {"grammage": None}})
    figures = paper_figures(shelf, "ledger", "office")
    assert figures.grammage.value == pytest.approx(0.1 / 1300)


def test_the_makers_own_bulk_is_used_and_says_where_it_stands() -> None:
    figures = paper_figures(book({"chart-paper": {"bulk": 2.0}}), "chart-paper", "office")
    assert figures.thickness.value == pytest.approx(0.18)
    leaf = figures.thickness.args[1]
    assert leaf.origin is not None and leaf.origin.path == ("stock", "chart-paper", "bulk")


def test_no_stock_at_all_goes_by_the_row() -> None:
    figures = paper_figures(book(), None, "office")
    assert figures.thickness.value == pytest.approx(80e-6 * 1300)
    assert cloth_figures(book(), None, "muslin").thickness.value == pytest.approx(0.28)
    with pytest.raises(TableError):
        paper_figures(book(), None, "no-such-paper")


def test_tape_and_cloth_from_the_shelf() -> None:
    assert cloth_figures(book(), "tape", "sewing-tape").thickness.value == pytest.approx(0.3)
    cloth = {"kind": "cloth", "width": "1 m", "height": "1 m", "material": "muslin"}
    assert cloth_figures(book({"sheet": cloth}), "sheet", "super").row == "muslin"


@pytest.mark.parametrize(
    ("thread", "diameter", "assumed"),
    [
        ({"size": "25/3"}, 0.5269, False),
        ({"size": "200 tex"}, 0.5290, False),
        ({"size": None, "diameter": "0.7 mm"}, 0.7, False),
        ({"size": None, "material": "crochet-20"}, 0.4579, False),
        ({"size": None, "material": "linen"}, 0.5269, True),
        ({"size": None, "material": None}, 0.5269, True),
    ],
)
def test_thread(thread: dict[str, str | None], diameter: float, assumed: bool) -> None:
    figures = thread_figures(book({"linen": {**STOCK["linen"], **thread}}), "linen")
    assert figures.diameter.value == pytest.approx(diameter, abs=0.0005)
    assert figures.assumed is assumed


def test_a_default_is_a_decision_and_exact() -> None:
    shelf = book()
    for name in ("super-flange", "thread-join", "creep-sharp"):
        row, decided = shelf.practice(name), shelf.default(name)
        assert decided.value == row.value and decided.low == decided.high
        assert decided.origin == row.origin


def test_the_ends_of_an_advised_range_are_figures() -> None:
    shelf = book()
    ends = [shelf.table("paper", "office", f"folios.{end}").value for end in ("least", "most")]
    assert ends == [4, 5]
    with pytest.raises(TableError):
        shelf.table("paper", "office", "bulk.least")
    with pytest.raises(TableError):
        shelf.table("paper", "office", "folios.value")
