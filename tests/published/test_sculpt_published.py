"""The sculpt stage and its recipes against published figures; each names its source."""

import math

import pytest

from sculpt_books import DOME, made, relief, value

# 21 CFR 101.9(b)(5)(viii) as quoted in UCUM ticket 120, and NIST SP 430, household weights and
# measures: 1 US cup = 236.588 ml = 16 tbsp = 48 tsp.
US_CUP_MM3 = 236_588.2365


def test_a_us_recipe_is_in_the_cups_and_spoons_of_nist() -> None:
    result = made(relief(), display="imperial")
    quarter_teaspoons = [
        value(result, f"clay.{name}") / (US_CUP_MM3 / 192)
        for name in ("pulp", "joint_filler", "white_glue", "flour", "mineral_oil")
    ]
    assert quarter_teaspoons == pytest.approx([round(one) for one in quarter_teaspoons])


def test_the_smooth_recipe_weighs_what_its_author_weighed() -> None:
    """Jonni Good, Ultimate Paper Mache, 'New air dry clay recipe': half a cup each of squeezed
    pulp 110 g (24 g of dry paper), joint filler 200 g, glue 130 g, corn starch 70 g; flour 70 to
    170 g."""
    result = made(relief(skin={"use": "paper-clay", "recipe": "smooth"}), display="imperial")
    cups = US_CUP_MM3 / value(result, "clay.part")
    grams = {
        name: value(result, f"clay.{name}.mass") * cups
        for name in ("pulp", "joint_filler", "white_glue", "corn_starch", "flour")
    }
    assert grams["pulp"] == pytest.approx(110, rel=0.03)
    assert value(result, "clay.paper") * cups == pytest.approx(24, rel=0.03)
    assert grams["joint_filler"] == pytest.approx(200, rel=0.03)
    assert grams["white_glue"] == pytest.approx(130, rel=0.03)
    assert grams["corn_starch"] == pytest.approx(70, rel=0.03)
    assert 70 <= grams["flour"] <= 170


def test_the_spreadable_recipe_makes_about_a_quart() -> None:
    """Ultimate Paper Mache, 'Paper mache clay': one cup of filler to about one quart (0.946 l)."""
    result = made(relief())
    cups = value(result, "clay.joint_filler") / US_CUP_MM3
    assert value(result, "clay.makes") / cups == pytest.approx(946_000, rel=0.001)


def test_foil_by_the_metre() -> None:
    """Wall thickness 0.016 mm (e-alu.com, household foil) and 2.7 g/cm3 (textile fibre handbook,
    specific gravity of aluminium): 43.2 g/m2, so a 300 mm roll has 12.96 g a metre."""
    from foredge.tables import load_tables

    result = made(relief())
    spare = 1 + load_tables().constant("waste-foil").number
    off_roll = value(result, "foil.front") * spare / 12.96 * 1000
    length = value(result, "foil.front.length")
    assert off_roll <= length <= off_roll + 50


def test_shrinkages_compound() -> None:
    """IMCO, clay user note on paper clay: 5 % in drying and about 10 % in firing are about 15 %
    together, that is 1 - 0.95 x 0.90 = 14.5 %: shares that stay are multiplied, not added. In a
    volume the same share stays three times."""
    assert pytest.approx(0.145) == 1 - 0.95 * 0.90
    for shrinks in (5, 10):
        result = made(relief(skin={"use": "paper-clay", "shrinkage": f"{shrinks} %"}))
        stays = value(result, "front.clay.volume") / value(result, "put_on.front")
        assert stays == pytest.approx((1 - shrinks / 100) ** 3)
        assert stays > 1 - 3 * shrinks / 100  # adding would shrink it too much


def test_a_dome_of_solid_clay_has_the_volume_and_the_face_of_its_cap() -> None:
    """I. N. Bronshtein and K. A. Semendyayev, Handbook of Mathematics (page from memory): a
    spherical cap of height h on a circle of radius a has V = pi h (3 a^2 + h^2) / 6 and a curved
    face of pi (a^2 + h^2)."""
    result = made(relief(parts=[{**DOME, "core": "none"}]))
    a, h = 30.0, 10.0
    assert value(result, "front.clay.volume") == pytest.approx(
        math.pi * h * (3 * a * a + h * h) / 6, rel=1e-4
    )
    assert value(result, "front.surface") == pytest.approx(math.pi * (a * a + h * h), rel=1e-4)
