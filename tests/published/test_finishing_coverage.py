"""Paint by the area, against what makers of paint and conversions of units print."""

from __future__ import annotations

import pytest

from finishing_books import book, finished

FT2, US_GALLON = 304.8**2, 3_785_411.784
"""mm2 and mm3; both exact by definition (yard and pound agreement, 1959; 231 cubic inches)."""

LITRE = 1e6


def coat_on(use: str, area_mm2: float) -> float:
    """mm3 that one coat takes on a smooth face of ``area_mm2``, by way of the whole stage."""
    of = book(f"{{use: {use}, on: front}}")
    result = finished(of)
    area = result.quantity(f"finishing.{use}.area").value
    return result.quantity(f"finishing.{use}.coat").value / area * area_mm2


@pytest.mark.parametrize("use", ["prime", "base-coat"])
def test_a_litre_paints_a_hundred_square_feet(use: str) -> None:
    # The Paint Spot, 'How much paint do I need': a litre of soft acrylic for 100 sq ft.
    assert coat_on(use, 100 * FT2) == pytest.approx(LITRE, rel=0.01)


def test_a_gallon_of_varnish_goes_over_four_hundred_square_feet() -> None:
    # ColArt, help note on varnish coverage: about 400 sq ft to a US gallon. Ours is in between
    # it and a litre to 100 sq ft, within its band.
    of = book()
    coverage = of.table("paints", "varnish-matte", "coverage")
    printed = US_GALLON / (400 * FT2)
    assert coverage.low <= printed <= coverage.high
    assert coat_on("brush-varnish", 400 * FT2) == pytest.approx(US_GALLON, rel=0.05)


def test_a_quart_goes_over_100_to_125_square_feet() -> None:
    # The Paint Spot, the same page: a quart of soft paint to 100 to 125 sq ft (10 to 12 m2).
    of = book()
    coverage = of.table("paints", "base-coat", "coverage")
    quart = US_GALLON / 4
    for square_feet in (100, 125):
        assert coverage.low <= quart / (square_feet * FT2) <= coverage.high


@pytest.mark.parametrize(("mils", "square_feet"), [(1, 722), (2, 361)])
def test_the_dry_film_is_solids_by_the_wet_one(mils: int, square_feet: int) -> None:
    # 'How do I calculate how much varnish I need': 45 % solids, 1604 sq ft a gallon at one mil
    # of wet film, so 722 at one mil dry and 361 at two. Our film works the same way with its own
    # share of solids, 0.4 (from memory).
    of = book(f"{{use: brush-varnish, on: front, coats: {mils}}}")
    mil = 0.0254
    wet = mil * mils / 0.45
    assert US_GALLON / wet / FT2 == pytest.approx(square_feet, rel=0.005)
    result = finished(of)
    bare = finished(book()).quantity("finishing.closed.thickness").value
    film = result.quantity("finishing.closed.thickness").value - bare
    one = of.table("paints", "varnish-matte", "coverage").value
    share = of.practice("paint-dry-share").value
    assert film == pytest.approx(mils * one * share)
    assert film / share / mils == pytest.approx(one)


def test_one_coat_on_a_small_book() -> None:
    # Worked by hand from a litre to 100 sq ft: boards and spine of 0.07 m2 take 7.5 ml a coat.
    assert coat_on("base-coat", 0.07e6) == pytest.approx(0.07e6 * LITRE / (100 * FT2), rel=0.01)
