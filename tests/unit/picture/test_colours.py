"""Colours by their words."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, strategies as st

from foredge.contract import Stuff
from foredge.picture.colours import (
    FLAT,
    NEUTRAL,
    brightness,
    colour_of,
    find,
    lit,
    mix,
    read,
    shifted,
    written,
)
from foredge.tables import load_tables


@pytest.mark.parametrize("row", load_tables().rows("colours"), ids=lambda row: row.name)
def test_every_row_is_found_by_its_name_and_written_back(row) -> None:
    found = find(row.name)
    assert found is not None
    assert written(found) == row.text("srgb")


def test_half_the_light_is_188_of_255() -> None:
    """IEC 61966-2-1:1999, 5.2 (from memory): 1.055 x 0.5 ^ (1 / 2.4) - 0.055 = 0.735."""
    assert written((0.5, 0.5, 0.5)) == "#bcbcbc"
    assert read("#bcbcbc") == pytest.approx((0.503, 0.503, 0.503), abs=0.001)


@pytest.mark.parametrize(
    ("said", "like"),
    [
        ("oxblood", "oxblood"),
        ("Oxblood", "oxblood"),
        ("sea green", "sea-green"),
        ("salt crust", "salt"),
        ("umbre", "umber"),
        ("gray", "grey"),
    ],
)
def test_words_name_a_colour(said: str, like: str) -> None:
    assert find(said) == find(like)


def test_words_before_it_change_a_colour() -> None:
    brown, dark, pale = find("brown"), find("dark brown"), find("pale brown")
    assert brown is not None and dark is not None and pale is not None
    assert brightness(dark) < brightness(brown) < brightness(pale)
    tea = find("tea brown")
    assert tea is not None and tea not in (brown, find("tea"))


def test_a_colour_that_nobody_knows_is_that_of_the_material() -> None:
    assert find("zzyzx") is None
    assert colour_of(Stuff("zzyzx", "canvas")) == find("canvas")
    assert colour_of(Stuff("zzyzx", "zzyzx")) == read(NEUTRAL)


@given(st.text(max_size=60))
def test_any_words_give_a_colour_or_none(said: str) -> None:
    found = find(said)
    assert found is None or re.fullmatch("#[0-9a-f]{6}", written(found))


@given(st.floats(0, 1), st.sampled_from(["#101010", "#c59a3a", "#f7f6f1"]), st.booleans())
def test_more_light_never_makes_it_darker(tone: float, srgb: str, metal: bool) -> None:
    colour = read(srgb)
    less, more = lit(colour, tone * 0.9, metal=metal), lit(colour, tone, metal=metal)
    assert brightness(less) <= brightness(more) + 1e-9


def test_level_ground_is_its_own_colour() -> None:
    colour = read("#4a6a3a")
    assert lit(colour, FLAT) == pytest.approx(colour)


def test_mixing_and_shifting() -> None:
    assert mix((0.0, 0.0, 0.0), (1.0, 0.5, 0.0), 0.5) == (0.5, 0.25, 0.0)
    assert brightness(shifted(read("#808080"), 0.4)) > brightness(read("#808080"))
