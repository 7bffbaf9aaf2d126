"""The skins: figures, recipes, and what the bench is told."""

import pytest

from foredge.contract import Severity
from foredge.testing import check_plugin
from sculpt_books import DOME, made, operation, registry, relief, value, words

RECIPES = ("spreadable", "firm", "smooth", "wood-glue", "pulp-rice")
USES = ("paper-clay", "pulp-paste", "bought-clay", "tissue-skin")


@pytest.mark.parametrize("use", USES)
def test_every_skin_keeps_the_contract(use: str) -> None:
    found = registry().find("skin", use)
    assert found is not None
    check_plugin(found.plugin)


@pytest.mark.parametrize("recipe", RECIPES)
@pytest.mark.parametrize("display", ["metric", "imperial"])
def test_a_recipe_keeps_its_ratios_and_makes_enough(recipe: str, display: str) -> None:
    from foredge.tables import load_tables

    result = made(relief(skin={"use": "paper-clay", "recipe": recipe}), display=display)
    part = value(result, "clay.part")
    for name, share in load_tables().row("clays", recipe).group("parts").items():
        volume = value(result, f"clay.{name.replace('-', '_')}")
        assert volume == pytest.approx(share.number * part, rel=1e-3)
    assert value(result, "clay.makes") >= value(result, "clay.needed") * (1 - 1e-9)


def test_what_is_needed_is_what_is_put_on_and_the_waste() -> None:
    result = made(relief(skin={"use": "paper-clay", "waste": "30 %"}))
    assert value(result, "clay.needed") == pytest.approx(1.3 * value(result, "put_on.front"))


def test_a_yield_of_the_makers_own_scales_the_batch() -> None:
    usual = made(relief(skin={"use": "paper-clay"}))
    half = made(relief(skin={"use": "paper-clay", "batch_yield": "473 ml"}))
    assert value(half, "clay.makes") / value(half, "clay.part") == pytest.approx(
        value(usual, "clay.makes") / value(usual, "clay.part") / 2
    )


def test_pulp_is_given_as_dry_paper_too_and_held_against_the_offcuts() -> None:
    result = made(relief())
    assert value(result, "clay.paper") == pytest.approx(0.218 * value(result, "clay.pulp.mass"))
    assert value(result, "clay.soak_water") == pytest.approx(
        20 * value(result, "clay.paper") * 1000
    )
    assert "off-cuts" in words(operation(result, "soak-paper"))


def test_the_working_range_is_told() -> None:
    spreads = words(operation(made(relief()), "mix-clay"))
    assert "Too wet: wheat flour by the spoon, up to" in spreads
    assert "Too dry" in spreads
    rice = words(
        operation(made(relief(skin={"use": "paper-clay", "recipe": "pulp-rice"})), "mix-clay")
    )
    assert "squeeze the pulp once more" in rice and "rice-flour glue" in rice
    assert "filler" not in rice


def test_cautions_come_at_the_step_that_needs_them() -> None:
    result = made(relief())
    assert "boiling-water" in operation(result, "soak-paper").cautions
    assert "hot-pulp" in operation(result, "beat-pulp").cautions
    mixed = operation(result, "mix-clay").cautions
    assert {"dust-talc", "boron", "paste-mould"} <= set(mixed)
    assert not {"boiling-water", "hot-pulp"} & set(mixed)
    bleach = made(relief(skin={"use": "paper-clay", "preservative": "bleach"}))
    assert "bleach-acid" in operation(bleach, "mix-clay").cautions
    assert "hot-glue" in operation(result, "fix-core-front").cautions
    cold = made(relief(core={"tack": "white-glue"}))
    assert "hot-glue" not in operation(cold, "fix-core-front").cautions


def test_vinegar_in_a_filled_clay_is_a_warning() -> None:
    result = made(relief(skin={"use": "paper-clay", "preservative": "vinegar"}))
    assert [(p.rule, p.severity) for p in result.problems if p.rule == "acid-in-filler"] == [
        ("acid-in-filler", Severity.WARNING)
    ]
    rice = {"use": "paper-clay", "recipe": "pulp-rice", "preservative": "vinegar"}
    assert "acid-in-filler" not in [p.rule for p in made(relief(skin=rice)).problems]


def test_bought_clay_is_weighed_off() -> None:
    result = made(relief(skin={"use": "bought-clay", "wet_density": "1.2 g/cm3"}))
    assert value(result, "clay.needed.mass") == pytest.approx(1.2e-3 * value(result, "clay.needed"))
    assert operation(result, "knead-clay").uses[0].amount.value == value(result, "clay.needed.mass")


def test_tissue_is_as_thick_as_its_sheets() -> None:
    result = made(relief(skin={"use": "tissue-skin", "sheets": 4}))
    sheet = 18e-6 + 60e-6 * 0.25
    assert value(result, "skin.front") == pytest.approx(4 * sheet / 0.48e-3)
    area = value(result, "front.surface")
    assert value(result, "clay.tissue") == pytest.approx(4 * area * 1.15)
    assert value(result, "clay.glue") == pytest.approx(4 * area * 60e-6 * 1.15)


def test_only_solid_parts_need_no_core_and_no_tape() -> None:
    result = made(relief(parts=[{**DOME, "height": "4 mm", "core": "none"}]))
    names = [one.id for one in result.operations]
    assert "sculpt.fix-core-front" not in names
    assert "right through" in words(operation(result, "skin-front-1"))
