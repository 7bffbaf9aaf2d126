"""The reference tables of thread, leaf, paint, clay and practice against published figures.

Each test names its source. Where the source rounds, the tolerance is its rounding.
"""

from __future__ import annotations

import math

import pytest

from foredge.tables import load_tables
from table_rows import IN, row_of, value_of, within

CLAYS = [row.name for row in load_tables().rows("clays")]
MIXED = [row.name for row in load_tables().rows("clays") if row.group("parts")]


# Peirce's diameter, after R. Hawlader (2015): specific volume 1.1 cm3/g. Linen lea after
# M. Islam (2015) and J. Peachey: tex = 1653.5 / lea for one ply.
@pytest.mark.parametrize(
    ("name", "tex", "diameter_mm"),
    [("linen-12-4", 551.2, 0.88), ("linen-18-3", 275.6, 0.62), ("linen-25-3", 198.4, 0.53),
     ("linen-35-3", 141.7, 0.45), ("linen-60-3", 82.7, 0.34)],
)  # fmt: skip
def test_linen_thread(name: str, tex: float, diameter_mm: float) -> None:
    row = row_of("thread", name)
    resultant = 1653.515 / row.get("lea").number * row.get("ply").number
    assert resultant == pytest.approx(tex, abs=0.06)
    rod = math.sqrt(4 * resultant * 1e-6 / (math.pi * row.get("packing").number))
    assert rod == pytest.approx(diameter_mm, abs=0.006)


# W. E. Morton and J. W. S. Hearle, Table 5.1, and the Handbook of Properties of Textile and
# Technical Fibres, Table 1.1: a thread is never denser than its fibre (g/cm3).
@pytest.mark.parametrize(
    ("fibre", "density"),
    [("linen", 1.53), ("cotton", 1.55), ("polyester", 1.39), ("nylon", 1.14), ("silk", 1.34)],
)
def test_threads_are_lighter_than_their_fibre(fibre: str, density: float) -> None:
    rows = [row for row in load_tables().rows("thread") if row.text("fibre") == fibre]
    assert rows
    for row in rows:
        assert (row.get("packing").high or 0) * 1e3 < density


# UCUM ticket 120 and 21 CFR 101.9(b)(5)(viii): US measures in ml.
@pytest.mark.parametrize(
    ("name", "millilitres"),
    [("us-cup", 236.5882), ("us-tablespoon", 14.7868), ("us-teaspoon", 4.9289),
     ("metric-tablespoon", 15), ("metric-teaspoon", 5)],
)  # fmt: skip
def test_kitchen_measures(name: str, millilitres: float) -> None:
    assert value_of("kitchen", name, "volume").number / 1000 == pytest.approx(millilitres, abs=5e-5)


def test_cup_in_spoons() -> None:
    """NIST, 'Cooking measurement equivalencies': 16 tbsp, 48 tsp."""
    cup = value_of("kitchen", "us-cup", "volume").number
    assert cup / value_of("kitchen", "us-tablespoon", "volume").number == pytest.approx(16)
    assert cup / value_of("kitchen", "us-teaspoon", "volume").number == pytest.approx(48)


# e-alu, household foil: 0.016 and 0.024 mm; specific gravity 2.7 (Handbook of Properties of
# Textile and Technical Fibres): 43.2 and 64.8 g/m2.
@pytest.mark.parametrize(("name", "grammage"), [("foil", 43.2), ("heavy-foil", 64.8)])
def test_foil(name: str, grammage: float) -> None:
    row = row_of("armature", name)
    mass = row.get("thickness").number * row.get("density").number
    assert mass * 1e6 == pytest.approx(grammage)
    assert (row.get("packed").high or 0) < row.get("density").number


# Handover, 'Gold and metal leaf', 2021: 25 leaves of 80 mm cover 0.16 m2 bare. Roberts and
# Etherington, 'gold leaf': 25 leaves of 3 1/4 in; arithmetic 1.834 ft2.
@pytest.mark.parametrize(("name", "square_metres"), [("gold", 0.16), ("gold-3-1-4", 0.17037)])
def test_leaf_areas(name: str, square_metres: float) -> None:
    row = row_of("leaf", name)
    area = row.get("side").number ** 2 * row.get("leaves").number
    assert area / 1e6 == pytest.approx(square_metres, rel=1e-4)


def test_leaf_of_500_and_its_waste() -> None:
    """Handover: 500 leaves of 3 3/8 in cover 3.67 m2 bare. Fauxfinish trade page: a book of 25
    covers about 1 1/2 ft2 with laps and waste."""
    row = row_of("leaf", "gold-3-3-8")
    side = row.get("side").number
    assert 500 * side**2 / 1e6 == pytest.approx(3.67, abs=0.01)
    lap, waste = row.get("lap"), row.get("waste")
    covered = [
        25 * (side - a) ** 2 * (1 - b) / 304.8**2
        for a, b in ((lap.least or 0, waste.least or 0), (lap.most or 0, waste.most or 0))
    ]
    assert min(covered) <= 1.5 <= max(covered)


def test_gold_is_as_thin_as_they_say() -> None:
    """Roberts and Etherington: 1/200,000 to 1/250,000 in; Zaehnsdorf p. 80: to 1/280,000 in."""
    thickness = value_of("leaf", "gold", "thickness")
    assert thickness.low == pytest.approx(IN / 280_000, abs=2e-6)
    assert thickness.high == pytest.approx(IN / 200_000, abs=4e-6)


# ColArt: 1 US gallon to about 400 ft2. The Paint Spot: 1 L to 100 ft2.
@pytest.mark.parametrize("ml_per_m2", [3785.41 / (400 * 0.09290304), 1000 / (100 * 0.09290304)])
def test_varnish_coverage(ml_per_m2: float) -> None:
    coverage = value_of("paints", "varnish-matte", "coverage")
    assert coverage.number * 1000 == pytest.approx(ml_per_m2, rel=0.04)
    assert within(coverage, ml_per_m2 / 1000, ml_per_m2 / 1000)


# Ultimate Paper Mache, 'New air dry clay recipe': half cups of pulp 110 g (24 g of it dry paper),
# filler 200 g, glue 130 g, starch 70 g. The glue in that list is heavier than any data on white
# glue allow, so it is held to 10 %, and the rest to 2 %.
@pytest.mark.parametrize(
    ("name", "grams", "tolerance"),
    [("pulp", 110, 0.02), ("joint-filler", 200, 0.02), ("corn-starch", 70, 0.02),
     ("white-glue", 130, 0.10)],
)  # fmt: skip
def test_what_half_a_cup_weighs(name: str, grams: float, tolerance: float) -> None:
    half_cup = value_of("kitchen", "us-half-cup", "volume").number
    assert value_of("ingredients", name, "density").number * half_cup == pytest.approx(
        grams, rel=tolerance
    )


def test_squeezed_pulp_is_mostly_water() -> None:
    """Ultimate Paper Mache, 'New air dry clay recipe': 24 g of paper in 110 g of pulp."""
    assert value_of("ingredients", "pulp", "solids").number == pytest.approx(24 / 110, abs=5e-4)


@pytest.mark.parametrize("name", MIXED)
def test_a_recipe_has_the_solids_of_its_parts(name: str) -> None:
    """Arithmetic over the parts: the table's share of solids must hold what the parts give."""
    row = row_of("clays", name)
    wet = dry = 0.0
    for ingredient, parts in row.group("parts").items():
        stuff = row_of("ingredients", ingredient)
        mass = parts.number * stuff.get("density").number
        wet, dry = wet + mass, dry + mass * stuff.get("solids").number
    solids = row.get("solids")
    assert (solids.low or 0) <= dry / wet <= (solids.high or 1)


@pytest.mark.parametrize("name", CLAYS)
def test_dry_density_follows_from_solids_and_shrinkage(name: str) -> None:
    """Arithmetic: what is left of the mass in what is left of the volume, (1 - s) cubed."""
    row = row_of("clays", name)
    left = row.get("wet_density").number * row.get("solids").number
    density = left / (1 - row.get("shrinkage").number) ** 3
    dry = row.get("dry_density")
    assert (dry.low or 0) <= density <= (dry.high or 1)


@pytest.mark.parametrize("name", MIXED)
def test_a_batch_is_no_larger_than_its_parts_and_weighs_as_much(name: str) -> None:
    """Arithmetic: volumes do not add, masses do (a tenth of air is allowed)."""
    row = row_of("clays", name)
    part = row.get("batch_part").number
    volume = mass = 0.0
    for ingredient, parts in row.group("parts").items():
        volume += parts.number * part
        mass += parts.number * part * value_of("ingredients", ingredient, "density").number
    batch, density = row.get("yield"), row.get("wet_density")
    assert (batch.low or 0) <= 1.1 * volume
    assert (batch.low or 0) * (density.low or 0) <= mass <= (batch.high or 0) * (density.high or 0)


# IMCO clay user note, 2009: paper clay 5 % to dry; answers page: air-dry clay 5 to 10 %. Craft
# Knowledge: 1/16 in to the inch.
def test_shrinkages() -> None:
    assert value_of("clays", "bought", "shrinkage").number == 1 / 16
    earthen = value_of("clays", "bought-earthen", "shrinkage")
    assert (earthen.low, earthen.high) == (0.05, 0.10)


def test_drying_law_meets_the_table() -> None:
    """The power law of clays.yaml against the times given for 6 mm and 10 mm in drying.yaml."""
    clay = row_of("clays", "spreadable")
    for thickness in (6, 10):
        ratio = thickness / clay.get("dry_layer").number
        time = clay.get("dry_time").number * ratio ** clay.get("dry_exponent").number
        published = value_of("drying", f"paper-clay-{thickness}mm", "next")
        assert (published.low or 0) <= time <= (published.high or 0)


# Sewing and case practice of the named handbooks.
@pytest.mark.parametrize(
    ("name", "first_mm", "last_mm"),
    [
        ("turn-in", 0.75 * IN, 0.75 * IN),  # Vaughn 1912, p. 118
        ("square", IN / 8, 3 * IN / 16),  # Vaughn 1912, p. 117
        ("kettle-end", IN / 4, IN / 2),  # Cockerell 1901, p. 99; Bean and Brodhead 1914
        ("tape-end", IN, 1.5 * IN),  # Bean and Brodhead 1914
        ("tape-lap", 1.5 * IN, 1.5 * IN),  # Vaughn 1912, p. 125
        ("super-flange", IN, 1.5 * IN),  # Vaughn 1912, p. 117: 2 to 3 in wider than the back
        ("joint-base", 6, 6),  # r/bookbinding thread: 6 mm and the board
        ("guard-fold", 3, 3),  # Adam 1903, p. 24: 2 x 1 cm + 3 mm = 23 mm
    ],
)
def test_practice_meets_the_handbooks(name: str, first_mm: float, last_mm: float) -> None:
    value = load_tables().constant(name)
    # A handbook's inches, rounded to the nearest millimetre.
    assert within(value, first_mm - 0.5, last_mm + 0.5)
    assert first_mm - 0.5 <= value.number <= last_mm + 0.5


def test_tapes_by_height() -> None:
    """Public Works and Government Services Canada, Quality Levels for Binding, 7.4."""
    constant = load_tables().constant
    assert constant("tape-two-below").number == 200
    assert constant("tape-four-above").number == 300
    assert constant("tape-least-width").number == 12.5


def test_round_back() -> None:
    """Welbound, 2012: 13/16 in thick, 0.95 in over the round; arc of 130 degrees: 1.1345."""
    arc = load_tables().constant("round-arc")
    assert arc.number == pytest.approx(0.95 / (13 / 16), abs=1e-3)
    half = math.radians(65)
    assert within(arc, half, half)


def test_press_and_spine_times() -> None:
    """A. L. Bailey, Library Bookbinding, 1916: in the press at least 12 h."""
    assert value_of("drying", "casing-in", "next").number >= 12 * 3600
    assert value_of("drying", "casing-in", "next").strong


def test_signal_words_are_the_four_of_the_standard() -> None:
    """ANSI Z535.4-2007, 4.14 as quoted by a label maker: danger, warning, caution, notice."""
    words = {row.text("signal") for row in load_tables().rows("cautions")}
    assert words == {"danger", "warning", "caution", "notice"}


def test_aerosol_statements() -> None:
    """CLP Annex I, Table 2.3.1: category 1 aerosol H222 + H229, P210 P211 P251 P410+P412."""
    assert set(row_of("cautions", "spray-solvent").texts("statements")) == {
        "H222", "H229", "P210", "P211", "P251", "P410+P412",
    }  # fmt: skip


def test_hot_glue_is_above_every_scald() -> None:
    """H&C Hotmelt: low-melt sticks flow from 76 degC; burn table: 60 degC burns in 3 to 5 s."""
    assert value_of("adhesives", "hot-glue", "softens_at").number == 76
