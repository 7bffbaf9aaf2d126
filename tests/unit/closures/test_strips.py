"""Straps, ribbons and elastics: lengths, slits and beds."""

from __future__ import annotations

import pytest

from closure_books import fastened, operation, rules, value


def test_a_strap_goes_round_as_often_as_asked_and_is_tucked_in() -> None:
    once = fastened("{use: wrap-strap, overlap: 50 mm}")
    thrice = fastened("{use: wrap-strap, overlap: 50 mm, turns: 3}")
    girth = 2 * 158 + 2 * 20 * 1.12
    assert value(once, "girth") == pytest.approx(girth)
    assert value(once, "length") == pytest.approx(girth + 50)
    assert value(thrice, "length") == pytest.approx(3 * girth + 50)
    assert thrice.adds_thickness.value == pytest.approx(3 * once.adds_thickness.value)


def test_relief_and_what_is_pasted_in_make_it_longer() -> None:
    plain = value(fastened("{use: wrap-strap}"), "length")
    raised = value(fastened("{use: wrap-strap}", relief=10.0, made_on="covered-case"), "length")
    filled = value(fastened("{use: wrap-strap}", swell=10.0), "length")
    assert raised - plain == pytest.approx(filled - plain) == pytest.approx(2 * 10 * 1.12)


def test_the_slit_takes_the_strip_and_the_bed_its_thickness() -> None:
    result = fastened("{use: wrap-strap, strap: belt}")
    assert value(result, "width") == 20 and value(result, "slit") == 21
    said = [step.values.get("deep") for step in operation(result, "set").steps]
    assert [deep.value for deep in said if deep is not None] == [1.5]


def test_a_bed_that_leaves_little_warns_and_one_that_goes_through_is_an_error() -> None:
    belt = "{use: wrap-strap, strap: belt}"
    assert rules(fastened(belt, board=3.0)) == {}
    assert "closure-bed-thin" in rules(fastened(belt, board=2.2))
    assert "leaves nothing" in rules(fastened(belt, board=1.5))["closure-bed-through"].text


def test_a_slit_beyond_the_board_is_an_error() -> None:
    assert "closure-off-board" in rules(fastened("{use: ribbon-tie, from_fore_edge: 148 mm}"))
    assert rules(fastened("{use: ribbon-tie, from_fore_edge: 60 mm}")) == {}


@pytest.mark.parametrize(("pairs", "ribbons"), [(1, 2), (2, 4)])
def test_ties_in_both_boards(pairs: int, ribbons: int) -> None:
    result = fastened(f"{{use: ribbon-tie, ribbon: ribbon, pairs: {pairs}, bow: 200 mm}}")
    (piece,) = result.work.pieces
    assert (piece.count.value, piece.width.value, piece.stock) == (ribbons, 10, "ribbon")
    assert value(result, "length") == pytest.approx(12 + 20 * 1.12 / 2 + 200)
    assert len(result.work.drawings) == 2


def test_an_elastic_is_shorter_at_rest_than_its_loop() -> None:
    result = fastened("{use: elastic, stretch: 80 %, from_ends: 15 mm}")
    assert value(result, "loop") == pytest.approx(214 + 2 * 20 + 2 * 15)
    assert value(result, "length") == pytest.approx(0.8 * value(result, "loop"))
    assert value(result, "cut") == pytest.approx(
        value(result, "length") + 2 * (2.5 + 0.5 + 40), abs=0.5
    )


def test_an_elastic_waits_for_a_relief_that_is_made_before_casing_in() -> None:
    early = fastened("{use: elastic}", relief=12.0, made_on="covered-case")
    assert [o.id for o in early.work.operations] == ["finishing.set-closure"]
    assert "sculpt.dry" in operation(early, "set").after
    assert not early.work.pieces[0].blank


def test_and_is_fitted_at_the_end_when_the_relief_comes_after() -> None:
    late = fastened("{use: elastic}", relief=12.0, made_on="finished-book")
    assert "sculpt.dry" not in operation(late, "set").after
    assert operation(late, "set").stops_for == ()
    assert "sculpt.dry" in operation(late, "fit").after
    assert late.work.pieces[0].blank
