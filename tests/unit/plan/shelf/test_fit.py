"""Lengths out of lengths: nothing is joined, nothing is lost, nothing is cut twice."""

import math
from itertools import product

import pytest
from hypothesis import given, strategies as st

from foredge.plan.shelf.fit import Cut, fit, units_for


def cuts(*lengths: float) -> list[Cut]:
    return [Cut(float(mm), place, "tape") for place, mm in enumerate(lengths)]


def test_two_remnants_are_not_one_length() -> None:
    found = fit(cuts(90, 90), [100, 60, 60])
    assert [cut.length_mm for cut in found.homeless] == [90]
    assert sorted(found.left_mm) == [10, 60, 60]


def test_the_tighter_length_is_taken_where_that_helps() -> None:
    # First fit would cut the 50 off the long length and leave no room for the 95.
    assert fit(cuts(50, 50, 95), [100, 50, 50]).homeless == ()


def test_units_are_opened_one_by_one() -> None:
    assert units_for(cuts(600, 600), 0, 1000) == (2, False)
    assert units_for(cuts(500, 500), 0, 1000) == (1, False)
    assert units_for(cuts(600), 400, 1000) == (1, False)
    assert units_for(cuts(600), 400.01, 1000) == (2, False)
    assert units_for([], 2000, 1000) == (2, False)
    assert units_for([], 0, 1000) == (0, False)


def test_a_piece_longer_than_a_unit_is_bought_in_one_length() -> None:
    assert units_for(cuts(1500), 0, 1000) == (2, True)


LENGTHS = st.lists(st.integers(1, 60), max_size=5)


@given(LENGTHS, LENGTHS)
def test_what_is_cut_and_what_is_left_is_what_there_was(wanted: list[int], had: list[int]) -> None:
    found = fit(cuts(*wanted), had)
    assert found.short_mm == math.fsum(cut.length_mm for cut in found.homeless)
    assert all(mm >= 0 for mm in found.left_mm)
    assert sum(wanted) - found.short_mm == pytest.approx(sum(had) - sum(found.left_mm))


@given(LENGTHS, st.integers(1, 200))
def test_of_one_length_nothing_is_missing_where_the_sum_fits(wanted: list[int], had: int) -> None:
    assert (fit(cuts(*wanted), [had]).homeless == ()) == (sum(wanted) <= had)


def test_what_no_quick_way_finds() -> None:
    # Both quick ways put the 60 beside the 40, or the 50s apart.
    assert fit(cuts(60, 50, 50, 30, 30), [110, 110]).homeless == ()
    assert fit(cuts(5, 5, 5, 4, 4, 4, 3, 3, 3), [12, 12, 12]).homeless == ()


def test_many_pieces_are_not_tried_in_every_way() -> None:
    assert len(fit(cuts(*[7] * 3000), [10] * 2999).homeless) == 1


@given(st.lists(st.integers(1, 30), max_size=4), st.lists(st.integers(1, 60), max_size=3))
def test_what_is_missing_is_the_least_that_can_be(wanted: list[int], had: list[int]) -> None:
    homeless = len(had)
    least = min(
        sum(mm for mm, place in zip(wanted, ways, strict=True) if place == homeless)
        for ways in product(range(len(had) + 1), repeat=len(wanted))
        if all(
            sum(mm for mm, place in zip(wanted, ways, strict=True) if place == one) <= length
            for one, length in enumerate(had)
        )
    )
    assert fit(cuts(*wanted), had).short_mm == least
