"""How clay dries on what takes no water and in the oven; cores of card; sanding."""

import pytest

from sculpt_books import BALL, DOME, STOCK, ids, made, operation, relief, value, words

HOUR = 3600.0
PLATE = {
    "use": "plate",
    "name": "plaque",
    "points": [["40 mm", "60 mm"], ["100 mm", "60 mm"], ["100 mm", "130 mm"], ["40 mm", "130 mm"]],
    "thickness": "3 mm",
}
CARD = {
    "kind": "board", "width": "300 mm", "height": "400 mm", "grain": "height",
    "thickness": "0.5 mm", "material": "carton",
}  # fmt: skip
PLASTIC = {
    "kind": "cloth", "width": "500 mm", "height": "400 mm", "grain": "height",
    "thickness": "0.8 mm", "material": "imitation-plastic",
}  # fmt: skip


def dries(**more: object) -> float:
    """Hours that one layer of 3 mm takes."""
    result = made(relief(**{"made_on": "bare-board", **more}))  # type: ignore[arg-type]
    return value(result, "layer.front.dries") / HOUR


def test_a_layer_on_a_board_that_drinks_dries_as_the_table_says() -> None:
    assert dries(seal="none") == pytest.approx(36)


@pytest.mark.parametrize("seal", ["both faces", "one face"])
def test_over_a_sealed_board_it_dries_upwards_only(seal: str) -> None:
    """By the row climate-one-sided: 2.5 times as long."""
    assert dries(seal=seal) == pytest.approx(2.5 * 36)


def test_a_core_of_paper_drinks() -> None:
    assert dries(core={"foil": "newspaper"}) == pytest.approx(36)


def test_cloth_drinks_and_plastic_does_not() -> None:
    cloth = made(relief())
    stock = {**STOCK, "cloth": PLASTIC}
    plastic = made(relief(), stock=stock)
    times = value(plastic, "layer.front.dries") / value(cloth, "layer.front.dries")
    assert times == pytest.approx(2.5)


def test_the_wetting_says_which_way_it_dries() -> None:
    (up,) = operation(made(relief(made_on="bare-board")), "skin-front-1").wettings
    (both,) = operation(made(relief(made_on="bare-board", seal="none")), "skin-front-1").wettings
    assert up.one_way and not both.one_way


def test_the_oven_is_quicker_whatever_the_room() -> None:
    """A tenth of the time, from memory; a fan or a damp room do not matter to it."""
    damp = {"room": {"humidity": "70 %", "fan": True}}
    for bench in ({}, damp):
        result = made(relief(made_on="bare-board", seal="none", drying="oven"), bench=bench)
        assert value(result, "layer.front.dries") / HOUR == pytest.approx(3.6)
        skin = operation(result, "skin-front-1")
        assert "iron-heat" in skin.cautions and "oven thermometer" in skin.tools
        assert "{heat}" in words(skin)


def test_air_needs_no_oven() -> None:
    skin = operation(made(relief()), "skin-front-1")
    assert "iron-heat" not in skin.cautions and "oven thermometer" not in skin.tools


def test_a_core_of_card_is_counted_in_layers() -> None:
    """Plate of 54 by 64 mm under a skin of 3 mm: its core is 3 mm high, a layer 0.54 mm."""
    result = made(relief(parts=[PLATE], core={"card": "card"}), stock={**STOCK, "card": CARD})
    thick = 0.5 + 0.04
    assert value(result, "card.front.layers") == 6
    volume = value(result, "front.core.volume")
    assert value(result, "card.front.area") == pytest.approx(volume / thick)
    grammage = value(result, "card.front.mass") / value(result, "card.front.area")
    assert grammage * 1e6 == pytest.approx(0.5 * 0.70e3, rel=0.3)
    (piece,) = [one for one in result.pieces if one.name.startswith("sculpt.card")]
    assert piece.stock == "card" and piece.count.value == 6
    assert piece.width.value >= 60 and piece.height.value >= 70


def test_a_core_of_card_needs_neither_foil_nor_tape() -> None:
    stock = {**STOCK, "card": CARD}
    result = made(relief(parts=[PLATE], core={"card": "card"}), stock=stock)
    names = {one.name for one in result.quantities}
    assert not names & {"sculpt.foil.front", "sculpt.tape.front", "sculpt.glue_points.front"}
    assert "sculpt.tape-core-front" not in {one.id for one in result.operations}
    build = operation(result, "fix-core-front")
    assert build.wait is not None
    assert build.wait.value == pytest.approx(48 * HOUR)
    assert "blade" in build.cautions and "sculpt.card.front.1" in build.pieces


def test_its_layers_pull_on_the_board() -> None:
    stock = {**STOCK, "card": CARD}
    result = made(relief(parts=[PLATE], core={"card": "card"}), stock=stock)
    (wet,) = operation(result, "fix-core-front").wettings
    assert wet.pull is not None and wet.area is not None
    assert wet.pull.value == pytest.approx(6)
    assert wet.area.value == pytest.approx(value(result, "front.core.base"))


def test_card_and_foil_weigh_differently() -> None:
    stock = {**STOCK, "card": CARD}
    card = made(relief(parts=[PLATE], core={"card": "card"}), stock=stock)
    foil = made(relief(parts=[PLATE]))
    assert value(card, "mass.front.dry") > value(foil, "mass.front.dry")


def test_a_book_with_an_inset_has_no_core_of_card() -> None:
    result = made(relief(parts=[BALL], core={"card": "board"}))
    assert not [one for one in result.pieces if one.name.startswith("sculpt.card")]


def test_sanding_comes_between_the_clay_and_the_dry_test() -> None:
    found = ids(relief(parts=[DOME], smoothing="sanding"))
    sand, dry = found.index("sculpt.sand-front"), found.index("sculpt.check-dry-front")
    assert found.index("sculpt.skin-front-1") < sand < dry


def test_filler_is_sanded_outdoors_in_a_mask() -> None:
    filler = operation(made(relief(smoothing="sanding")), "sand-front")
    pulp = {"use": "paper-clay", "recipe": "pulp-rice"}
    paper = operation(made(relief(smoothing="sanding", skin=pulp)), "sand-front")
    assert filler.outdoors and "dust-talc" in filler.cautions and "dust mask" in filler.tools
    assert not paper.outdoors and "dust-talc" not in paper.cautions


def test_a_core_of_newspaper_is_weighed() -> None:
    fix = operation(made(relief(core={"foil": "newspaper"})), "fix-core-front")
    paper = next(use for use in fix.uses if use.material == "Crumpled newspaper")
    assert paper.amount.value > 0
    assert "Tear up {mass} of newspaper" in words(fix)
