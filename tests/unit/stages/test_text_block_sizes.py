"""The folio follows from the finished leaf: trim, creep, rough edges, folding down."""

from __future__ import annotations

import pytest

from text_block_books import band_of, made, rules, value


def test_trim_and_creep_are_added_to_the_finished_leaf() -> None:
    result = made(trim={"head": "3 mm", "tail": "4 mm", "fore_edge": "5 mm"})
    creep = value(result, "creep")
    assert value(result, "fold.height") == 205 + 3 + 4
    # Up to the next half millimetre, once.
    assert 155 + creep <= value(result, "fold.width") < 155 + creep + 0.5
    assert value(result, "folio.width") == 2 * value(result, "fold.width")


def test_an_edge_left_out_of_trim_takes_the_usual_allowance() -> None:
    assert value(made(trim={"head": "0 mm"}), "fold.height") == 205 + 0 + 2


def test_untrimmed_leaves_are_cut_to_the_finished_size() -> None:
    result = made(trim="none")
    assert (value(result, "fold.width"), value(result, "fold.height")) == (150, 205)


def test_untrimmed_the_block_is_as_wide_as_its_innermost_leaf() -> None:
    result = made(trim="none")
    assert value(result, "block.width") == pytest.approx(150 + value(result, "creep"))


def test_creep_lies_between_a_sharp_and_a_round_fold() -> None:
    result = made(paper="ledger")
    band = band_of(result, "creep")
    assert 0.9 * 3 * 0.1 < band.low < value(result, "creep") < band.high < 1.6 * 3 * 0.1
    assert value(made(gatherings={"count": 2, "folios": 1}), "creep") == 0


def test_torn_folios_get_more_paper_than_cut_ones() -> None:
    cut, torn = made(), made(edges_torn=True)
    assert value(torn, "folio.width") - value(cut, "folio.width") == 25
    assert value(made(edges_torn=True, trim="none"), "folio.width") == 2 * 150


def test_the_maker_can_set_the_rough_allowance() -> None:
    trim = {"head": "0 mm", "tail": "0 mm", "fore_edge": "0 mm"}
    assert value(made(rough="25 mm", trim=trim), "folio.width") == 2 * 150 + 25


def test_a_piece_folded_three_times_is_four_leaves_by_two() -> None:
    result = made(folded=3, leaf={"width": "100 mm", "height": "140 mm"})
    assert value(result, "folio.width") == 4 * value(result, "fold.width")
    assert value(result, "folio.height") == 2 * value(result, "fold.height")
    assert value(result, "folios_per_sheet") % 4 == 0


def test_creep_that_shows_on_an_untrimmed_edge_is_noted() -> None:
    thick = {"ledger": {"thickness": "0.4 mm"}}
    result = made(thick, paper="ledger", trim="none", gatherings={"count": 4, "folios": 6})
    assert "creep-untrimmed" in rules(result)
    assert "creep-untrimmed" not in rules(made(thick, paper="ledger"))


def test_a_tear_that_the_knife_may_miss_is_noted() -> None:
    assert "torn-edge-trim" in rules(made(edges_torn=True))
    wide = {"head": "6 mm", "tail": "6 mm", "fore_edge": "6 mm"}
    assert "torn-edge-trim" not in rules(made(edges_torn=True, trim=wide))
