"""Metal leaf by the book, against what its sellers and old handbooks print."""

from __future__ import annotations

import pytest

from case_books import mm
from finishing_books import book, finished
from foredge.tables import load_tables

FT2 = 304.8**2
INCH = 25.4


def bare(row: str, leaves: float | None = None) -> float:
    """mm2 of a book of leaves laid edge to edge."""
    found = load_tables().row("leaf", row)
    side = found.get("side").number
    return (found.get("leaves").number if leaves is None else leaves) * side * side


def covered(row: str, leaves: int) -> float:
    """mm2 that ``leaves`` cover with laps and waste: the largest face the stage asks them for."""
    low, high = 0.0, 5e6
    for _ in range(40):
        middle = (low + high) / 2
        (low, high) = (middle, high) if wanted(row, middle) <= leaves else (low, middle)
    return low


def wanted(row: str, area: float) -> float:
    from foredge_finishes.metal_leaf import PLUGIN

    of = book(f"{{use: metal-leaf, on: front, leaf: {row}}}")
    return leaves_on(PLUGIN, of, area)


def leaves_on(plugin: object, of: object, area: float) -> float:
    from finishing_books import pressed

    side = area**0.5
    result = finished(of, pressed(board__width=side, board__height=side))  # type: ignore[arg-type]
    return result.quantity("finishing.metal-leaf.leaves").value


def test_25_leaves_of_80_mm() -> None:
    # Handover, 'Gold and metal leaf', 2021: 25 leaves 80 x 80 mm are 0.16 m2.
    assert bare("gold") == pytest.approx(0.16e6)


def test_500_leaves() -> None:
    # The same: 500 leaves, 3.67 m2, which makes a leaf 85.7 mm, that is 3 3/8 in.
    assert bare("gold-3-3-8", 500) == pytest.approx(3.67e6, rel=0.002)


def test_25_leaves_of_three_and_a_quarter_inches() -> None:
    # Roberts and Etherington, Bookbinding and the Conservation of Books, 1982, 'gold leaf':
    # 3 1/4 in, books of 25; 25 x 3.25^2 / 144 = 1.834 sq ft.
    assert bare("gold-3-1-4") / FT2 == pytest.approx(1.834, abs=0.001)


def test_a_book_of_24_leaves() -> None:
    # Cockerell, Bookbinding, and the Care of Books, 1901, p. 202: 24 leaves, 3 1/2 in square.
    row = load_tables().row("leaf", "gold-3-1-2")
    assert row.get("leaves").number == 24
    assert row.get("side").number == pytest.approx(3.5 * INCH)


def test_leaf_is_a_tenth_of_a_micrometre() -> None:
    # The same entry: 1/200,000 to 1/250,000 in thick.
    thick = load_tables().row("leaf", "gold").get("thickness")
    assert thick.low is not None and thick.high is not None
    assert thick.low <= INCH / 250_000 and thick.high >= INCH / 200_000


def test_what_a_book_of_leaf_covers_with_laps_and_waste() -> None:
    # A decorators' page, 'Gilding': 25 leaves cover about 1 1/2 sq ft, 500 about 30, with laps
    # and waste. The size is printed garbled and taken for 3 3/8 in.
    assert covered("gold-3-3-8", 25) / FT2 == pytest.approx(1.5, rel=0.05)
    assert covered("gold-3-3-8", 500) / FT2 == pytest.approx(30, rel=0.05)


def test_the_size_of_leaf_named_in_the_test_is_the_one_in_the_table() -> None:
    assert mm(3.375 * INCH, "leaf").value == pytest.approx(
        load_tables().row("leaf", "gold-3-3-8").get("side").number
    )
