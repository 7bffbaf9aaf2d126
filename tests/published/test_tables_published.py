"""The reference tables against figures that others have published.

Each test names its source. Where the source rounds, the tolerance is its rounding.
"""

from __future__ import annotations

import math

import pytest

from table_rows import IN, LB, row_of, value_of, within


def _ream_area_mm2(name: str) -> float:
    row = row_of("basis", name)
    area = row.maybe("area")
    if area is not None:
        return area.number
    sides = row.get("width").number * row.get("height").number
    return sides * row.get("sheets").number


# ISO 216 (A and B series), after an encyclopaedia copy.
@pytest.mark.parametrize("n", range(1, 11))
def test_iso_a_is_the_next_larger_one_halved(n: int) -> None:
    larger, sheet = row_of("sizes", f"a{n - 1}"), row_of("sizes", f"a{n}")
    assert sheet.get("height").number == larger.get("width").number
    assert sheet.get("width").number == larger.get("height").number // 2


def test_iso_a0_is_one_square_metre() -> None:
    sheet = row_of("sizes", "a0")
    area = sheet.get("width").number * sheet.get("height").number
    assert area == pytest.approx(1e6, rel=1e-3)


@pytest.mark.parametrize("n", range(1, 8))
def test_iso_b_is_the_geometric_mean_of_two_a(n: int) -> None:
    b = row_of("sizes", f"b{n}")
    for side in ("width", "height"):
        one = value_of("sizes", f"a{n}", side).number
        two = value_of("sizes", f"a{n - 1}", side).number
        assert b.get(side).number == pytest.approx(math.sqrt(one * two), abs=1.0)


def test_a4_against_us_letter() -> None:
    """Encyclopaedia copy 'A4 paper size': A4 is 6 mm narrower and 18 mm longer."""
    narrower = value_of("sizes", "letter", "width").number - value_of("sizes", "a4", "width").number
    longer = value_of("sizes", "a4", "height").number - value_of("sizes", "letter", "height").number
    assert round(narrower) == 6 and round(longer) == 18


# S. J. Vaughn, Printing and Bookbinding for Schools, 1912, p. 111 and J. W. Zaehnsdorf, The Art
# of Bookbinding, 1890, pp. 4-5: folded sizes; D. Cockerell, 1901, p. 283: the sheets.
@pytest.mark.parametrize(
    ("sheet", "folds", "height_in", "width_in"),
    [("crown", 3, 7.5, 5.0), ("royal", 2, 12.5, 10.0), ("imperial", 2, 15.0, 11.0)],
)
def test_folded_sheets(sheet: str, folds: int, height_in: float, width_in: float) -> None:
    sides = sorted(value_of("sizes", sheet, side).number / IN for side in ("width", "height"))
    for _ in range(folds):
        sides = sorted((sides[0], sides[1] / 2))
    assert sides == [width_in, height_in]


# Xerox Nuvera Paper Guide 701P28020, Table A-2: g/m2 of one pound.
@pytest.mark.parametrize(
    ("name", "factor"),
    [
        ("bond", 3.76),
        ("book", 1.48),
        ("cover", 2.70),
        ("index", 1.81),
        ("tag", 1.63),
        ("bristol", 2.19),
    ],
)
def test_basis_weight_factors(name: str, factor: float) -> None:
    assert LB / _ream_area_mm2(name) * 1e6 == pytest.approx(factor, abs=0.0051)


# IVEX, 'Basis weight metric conversions': square feet in a ream.
@pytest.mark.parametrize(
    ("name", "square_feet"),
    [
        ("bond", 1299),
        ("book", 3299),
        ("cover", 1806),
        ("index", 2701),
        ("bristol", 2227),
        ("tag", 3000),
        ("kraft-500", 3000),
    ],
)
def test_ream_areas(name: str, square_feet: int) -> None:
    assert _ream_area_mm2(name) / 304.8**2 == pytest.approx(square_feet, abs=1.0)


def test_three_meanings_of_a_pound_of_kraft() -> None:
    """Pyrosource wiki, 'Kraft paper' (480 sheets: 85 g/m2) and Graphic Packaging, bag kraft data
    sheet (1000 ft2: 244 g/m2); 500 sheets give 81 g/m2."""
    pounds = [50 * LB / _ream_area_mm2(f"kraft-{kind}") * 1e6 for kind in ("500", "480", "1000ft2")]
    assert [round(grammage) for grammage in pounds] == [81, 85, 244]


def test_the_misprinted_thousand_feet_factor_is_not_ours() -> None:
    """PrintWiki, 'Grammage', prints 4.831 where the arithmetic gives 4.882."""
    factor = LB / _ream_area_mm2("kraft-1000ft2") * 1e6
    assert factor == pytest.approx(4.88243, abs=1e-5)
    assert abs(factor - 4.831) > 0.05


# MCG Paper, table of paper weights and calipers: bond g/m2 and caliper in inches.
@pytest.mark.parametrize(
    ("grammage", "caliper_in"),
    [(60.2, 0.0032), (67.72, 0.0036), (75.2, 0.0038), (90.3, 0.0048), (105.35, 0.0058)],
)
def test_calipers_of_office_paper(grammage: float, caliper_in: float) -> None:
    bulk = value_of("paper", "office", "bulk")
    caliper = caliper_in * IN
    assert bulk.low is not None and bulk.high is not None
    assert grammage * bulk.low * 1e-6 <= caliper <= grammage * bulk.high * 1e-6


# Kangchuang Papers, kraft paper weight guide: 80 g/m2 is 90 to 100 um, 120 is 130 to 150,
# 200 is 220 to 260. Pyrosource wiki, 'Kraft paper': 85 g/m2 is 0.005 in.
@pytest.mark.parametrize(
    ("grammage", "least_mm", "most_mm"),
    [(80, 0.090, 0.100), (120, 0.130, 0.150), (200, 0.220, 0.260), (85, 0.127, 0.127)],
)
def test_calipers_of_kraft(grammage: float, least_mm: float, most_mm: float) -> None:
    bulk = value_of("paper", "kraft-bag", "bulk")
    assert bulk.low is not None and bulk.high is not None
    assert bulk.low * grammage * 1e-6 <= least_mm and most_mm <= bulk.high * grammage * 1e-6


# Indiana University Libraries manual, cbind010: folios in a signature.
@pytest.mark.parametrize(
    ("name", "least", "most"),
    [("bulky-book", 5, 6), ("office", 4, 5), ("book", 3, 4), ("construction", 2, 3),
     ("kraft-bag", 2, 3)],
)  # fmt: skip
def test_folios_of_a_gathering(name: str, least: int, most: int) -> None:
    folios = value_of("paper", name, "folios")
    assert (folios.least, folios.most) == (least, most)
    assert folios.strong


# Deprintedbox, 'Conversion between the greyboard thickness and grammage'. From 3 mm up its
# printed table departs from its own formula; the band has to hold those too.
@pytest.mark.parametrize(
    ("grammage", "thickness_mm"),
    [(615, 1.0), (775, 1.2), (970, 1.5), (1160, 1.8), (1290, 2.0), (1420, 2.2), (1581, 2.4),
     (1645, 2.5), (1845, 3.0), (2150, 3.5), (2460, 4.0)],
)  # fmt: skip
def test_greyboard(grammage: float, thickness_mm: float) -> None:
    density = value_of("board", "greyboard", "density")
    assert density.low is not None and density.high is not None
    assert density.low <= grammage * 1e-6 / thickness_mm <= density.high
    if 1.2 <= thickness_mm <= 2.5:
        assert grammage * 1e-6 / density.number == pytest.approx(thickness_mm, abs=0.06)


def test_binders_board() -> None:
    """Guild of Book Workers Newsletter 111: number 14 is 0.098 in, density at least 0.9 g/cm3."""
    density = value_of("board", "binders-board", "density")
    assert density.low == pytest.approx(0.9e-3)
    assert value_of("board", "binders-board", "thickness").number == pytest.approx(2.489, abs=5e-4)


def test_chipboard() -> None:
    """Paperconverter: chip of 0.025 in is 85 lb to 1000 ft2."""
    published = 85 * LB / (1000 * 304.8**2) / (0.025 * IN)
    assert value_of("board", "chipboard", "density").number == pytest.approx(published, rel=0.01)


# Packnet, 'Some common terms used in industrial packaging' (flute height without liners, flutes
# to the foot); The Packaging Blog, 'Corrugated board grades' (nominal board).
@pytest.mark.parametrize(
    ("flute", "height_mm", "board_mm", "least", "most"),
    [("a", 4.7, 5, 30, 36), ("c", 3.6, 4, 36, 42), ("b", 2.5, 3, 44, 50), ("e", 1.2, 1.5, 86, 94)],
)
def test_flutes(flute: str, height_mm: float, board_mm: float, least: int, most: int) -> None:
    row = row_of("board", f"corrugated-{flute}")
    assert row.get("flute_height").number == pytest.approx(height_mm)
    assert row.get("thickness").number == pytest.approx(board_mm)
    assert (row.get("flutes_per_foot").low, row.get("flutes_per_foot").high) == (least, most)
    liners_mm = row.get("thickness").number - row.get("flute_height").number
    assert 0.2 <= liners_mm <= 0.6


# D. Lanning, J. Hewit & Sons, Book_Arts-L, December 2004.
@pytest.mark.parametrize(
    ("name", "least_mm", "most_mm"),
    [("goatskin", 1.0, 1.0), ("calf", 0.6, 0.7), ("skiver", 0.3, 0.4)],
)
def test_leather(name: str, least_mm: float, most_mm: float) -> None:
    thickness = value_of("cloth", name, "thickness")
    assert thickness.low is not None and thickness.high is not None
    assert thickness.low <= least_mm and most_mm <= thickness.high
    assert least_mm <= thickness.number <= most_mm


def test_goatskin_in_leather_ounces() -> None:
    """D. Lanning: 2.5 oz is 1.0 mm. Fine Leatherworking: the ounce is 1/64 in, 0.396875 mm."""
    ounces = value_of("cloth", "goatskin", "thickness").number / (IN / 64)
    assert ounces == pytest.approx(2.5, abs=0.03)


def test_book_cloth_and_buckram() -> None:
    """A. L. Bailey, Library Bookbinding: 0.20 to 0.30 mm, 0.4 to 0.5 lb to the square yard (its
    own 200 to 250 g/m2 is rounded down). Roberts and Etherington: buckram at least 7.9 oz/yd2."""
    yard2 = 914.4**2
    weight = value_of("cloth", "book-cloth", "grammage")
    assert weight.high == pytest.approx(0.5 * LB / yard2, rel=2e-3)
    assert within(weight, 0.4 * LB / yard2, 0.5 * LB / yard2)
    assert within(value_of("cloth", "book-cloth", "thickness"), 0.20, 0.30)
    buckram = value_of("cloth", "buckram", "grammage").number
    assert buckram == pytest.approx(7.9 * LB / 16 / yard2, rel=1e-3)
