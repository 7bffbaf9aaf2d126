"""Thickness of leaves and blocks, and pages against leaves, as published.

Sources are named beside each check.
"""

from __future__ import annotations

import pytest

from text_block_books import made, refused, value

INCH = 25.4


def test_a_novel_of_840_pages() -> None:
    """Richard Hollick, "ppi", 2010: 840 pages of an 86 micrometre leaf are 1.422 in thick."""
    result = made(
        {"ledger": {"thickness": "0.086 mm"}},
        paper="ledger",
        gatherings={"pages": 840, "folios": 5},
        pressed="100 %",
    )
    assert value(result, "pages") == 840
    assert value(result, "leaves.thickness") == pytest.approx(420 * 0.086, abs=0.005)
    assert value(result, "leaves.thickness") / INCH == pytest.approx(1.422, abs=0.0005)
    assert 2 * INCH / value(result, "leaf.thickness") == pytest.approx(590.697, abs=0.001)


BULKY = {"ledger": {"thickness": None, "bulk": 1.5, "grammage": "80 g/m2", "material": None}}


def test_a_leaf_from_grammage_and_bulk() -> None:
    """DCC Kaestl glossary, "Papiervolumen": 80 g/m2 at 1.5 cm3/g is a leaf of 0.120 mm."""
    assert value(made(BULKY, paper="ledger"), "leaf.thickness") == pytest.approx(0.120)


def test_the_glossary_counts_its_fifty_leaves_short() -> None:
    """The same page says that 50 such leaves are 4 mm; they are 6.0 mm."""
    gatherings = {"count": 5, "folios": 5}
    result = made(BULKY, paper="ledger", gatherings=gatherings, pressed="100 %")
    assert value(result, "leaves") == 50
    assert value(result, "leaves.thickness") == pytest.approx(6.0)
    assert value(result, "leaves.thickness") != pytest.approx(4.0, abs=1)


def test_five_hundred_pages_to_the_inch() -> None:
    """ "Hardcover book cases: are you sure they fit", Welbound, 2012: at 500 pages to the inch,
    250 leaves are one inch. A page is not a leaf."""
    leaf = 2 * INCH / 500
    result = made(
        {"ledger": {"thickness": f"{leaf:.4f} mm"}},
        paper="ledger",
        gatherings={"pages": 500, "folios": 5},
        pressed="100 %",
    )
    assert (value(result, "pages"), value(result, "leaves")) == (500, 250)
    assert value(result, "leaves.thickness") / INCH == pytest.approx(1.0, abs=0.001)


def test_pounds_of_kraft_without_a_basis_are_refused() -> None:
    """ "50 lb kraft" is 81 g/m2 on 24 x 36 in and 500 sheets (arithmetic of the basis weight,
    Xerox Nuvera Paper Guide 701P28020, Table A-2), 85 g/m2 on 480 sheets ("Kraft paper",
    Pyrosource wiki), and 244 g/m2 sold by 1000 square feet (Graphic Packaging data sheet)."""
    (said,) = refused({"chart-paper": {"grammage": "50 lb"}})
    assert "error" in said and "basis" in said


@pytest.mark.parametrize(
    ("grammage", "leaf_mm"), [("80 g/m2", (0.09, 0.10)), ("120 g/m2", (0.13, 0.15))]
)
def test_kraft_by_the_mill_lies_in_our_band(grammage: str, leaf_mm: tuple[float, float]) -> None:
    """Kangchuang Papers, kraft weight guide: 80 g/m2 about 90 to 100 um, 120 about 130 to 150."""
    from text_block_books import band_of

    result = made({"chart-paper": {"material": "kraft-bag", "grammage": grammage}})
    band = band_of(result, "leaf.thickness")
    assert band.low <= leaf_mm[0] and leaf_mm[1] <= band.high
