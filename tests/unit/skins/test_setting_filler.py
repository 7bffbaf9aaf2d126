"""A filler that sets, linseed oil, salt: what they change in recipe and work."""

import pytest

from foredge.contract import StageResult
from sculpt_books import made, operation, relief, value, words

SETTING = {"use": "paper-clay", "filler": "setting-powder"}


def mixed(**skin: object) -> StageResult:
    return made(relief(skin={"use": "paper-clay", **skin}))


def used(result: StageResult) -> dict[str, float]:
    return {use.material: use.amount.value for use in operation(result, "mix-clay").uses}


def test_it_takes_the_room_of_the_ready_mixed_filler() -> None:
    plain, setting = mixed(), made(relief(skin=SETTING))
    assert value(setting, "clay.joint_filler_powder") == value(plain, "clay.joint_filler")
    assert "Joint filler, ready mixed" not in used(setting)


def test_only_the_powder_is_taken_from_the_shelf() -> None:
    """72 % of the stirred filler is powder, the rest is water out of the tap."""
    result = made(relief(skin=SETTING))
    stirred = value(result, "clay.joint_filler_powder.mass")
    assert used(result)["Joint filler, setting powder"] == pytest.approx(0.72 * stirred)


def test_each_layer_stirs_its_share() -> None:
    """All layers together take what of the batch the relief needs."""
    result = made(relief(skin={**SETTING, "thickness": "3 mm", "layers": 3}))
    share = value(result, "clay.needed") / value(result, "clay.makes")
    powder = used(result)["Joint filler, setting powder"]
    water = value(result, "clay.joint_filler_powder.mass") - powder
    assert 3 * value(result, "layer.front.powder") == pytest.approx(share * powder)
    assert 3 * value(result, "layer.front.powder_water") == pytest.approx(share * water)
    for place in (1, 2, 3):
        assert "{powder}" in words(operation(result, f"skin-front-{place}"))
    assert "{powder}" in words(operation(result, "mix-clay"))


def test_stirring_takes_time() -> None:
    plain, setting = mixed(), made(relief(skin=SETTING))
    longer = operation(setting, "skin-front-1").hands_on.value
    assert longer == pytest.approx(operation(plain, "skin-front-1").hands_on.value + 180)


def test_the_bag_says_how_long_it_can_be_worked() -> None:
    def told(skin: dict[str, object]) -> float:
        steps = operation(made(relief(skin=skin)), "skin-front-1").steps
        found = [step.values["sets"] for step in steps if "sets" in step.values]
        return found[0].value / 60  # type: ignore[union-attr]

    assert told(dict(SETTING)) == pytest.approx(45)
    assert told({**SETTING, "sets": "90 min"}) == pytest.approx(90)


def test_a_recipe_without_filler_does_not_set() -> None:
    result = made(relief(skin={**SETTING, "recipe": "pulp-rice"}))
    assert "{powder}" not in words(operation(result, "skin-front-1"))


def test_linseed_oil_takes_the_room_of_mineral_oil() -> None:
    mineral, linseed = mixed(), mixed(oil="linseed")
    assert value(linseed, "clay.linseed_oil") == value(mineral, "clay.mineral_oil")
    assert "oily-rags" in operation(linseed, "mix-clay").cautions
    assert "oily-rags" not in operation(mineral, "mix-clay").cautions


def test_salt_is_stirred_in() -> None:
    assert "Dissolve a spoon of salt" in words(operation(mixed(preservative="salt"), "mix-clay"))
