"""Cups and spoons: exact ratios, enough, and as few of them as can be."""

from fractions import Fraction

import pytest
from hypothesis import given, strategies as st

from foredge.testing import book_from
from foredge_skins.kitchen import KitchenPart, filling, fraction, kitchen, least_step
from sculpt_books import registry, spec

US = (192, 96, 64, 48, 12, 4, 2, 1)
METRIC = (200, 100, 64, 48, 12, 4, 2, 1)
SETS = st.sampled_from([US, METRIC])
PARTS = st.lists(
    st.fractions(min_value=Fraction(1, 16), max_value=2, max_denominator=16), min_size=1, max_size=6
)


@pytest.mark.parametrize(("display", "counts"), [("imperial", US), ("metric", METRIC)])
def test_the_measures_are_whole_numbers_of_the_smallest(display: str, counts: tuple[int]) -> None:
    assert kitchen(book_from(spec(display=display), registry=registry())).counts == counts


@given(SETS, st.integers(min_value=0, max_value=5000))
def test_a_filling_adds_up(counts: tuple[int, ...], spoons: int) -> None:
    used = filling(counts, spoons)
    assert sum(times * count for times, count in zip(used, counts, strict=True)) == spoons


@given(SETS, st.integers(min_value=1, max_value=150))
def test_no_filling_uses_fewer_measures(counts: tuple[int, ...], spoons: int) -> None:
    reached, rounds = {0}, 0
    while spoons not in reached:
        reached = {a + c for a in reached for c in counts if a + c <= spoons}
        rounds += 1
    assert sum(filling(counts, spoons)) == rounds


@given(PARTS, SETS, st.floats(min_value=50, max_value=500_000))
def test_every_ingredient_fills_whole_measures_and_there_is_enough(
    parts: list[Fraction], counts: tuple[int, ...], need: float
) -> None:
    spoon = 1250.0
    size = KitchenPart(tuple(parts), counts, spoon, 0.15)(need)
    step = float(least_step(parts)) * spoon
    assert need * (1 - 1e-9) <= size <= max(need * 1.15, need + step) * (1 + 1e-9)
    for share in parts:
        spoons = float(share) * size / spoon
        assert spoons == pytest.approx(round(spoons), abs=1e-6)


def test_parts_of_a_recipe_are_read_as_fractions() -> None:
    assert [fraction(part) for part in (0.0417, 0.0208, 0.1875, 0.875)] == [
        Fraction(1, 24),
        Fraction(1, 48),
        Fraction(3, 16),
        Fraction(7, 8),
    ]


@pytest.mark.parametrize(
    ("display", "spoons", "said"),
    [
        ("imperial", 192, "1 cup"),
        ("imperial", 384 + 24, "2 cups + 2 tbsp"),
        ("imperial", 96 + 48, "1/2 cup + 1/4 cup"),
        ("metric", 200 + 64 + 8, "1 cup of 250 ml + 80 ml + 2 spoons of 5 ml"),
        ("metric", 7, "1 spoon of 5 ml + 1 spoon of 2.5 ml + 1 spoon of 1.25 ml"),
    ],
)
def test_a_volume_is_spoken_as_it_is_measured(display: str, spoons: int, said: str) -> None:
    measures = kitchen(book_from(spec(display=display), registry=registry()))
    assert measures.spoken(spoons * measures.spoon) == said
