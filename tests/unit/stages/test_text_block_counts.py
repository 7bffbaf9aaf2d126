"""Gatherings by count, by pages, or as many as the shelf gives."""

from __future__ import annotations

import pytest

from foredge_stages.text_block.counts import collation
from text_block_books import errors, made, refused, rules, value


def test_pages_are_rounded_up_to_whole_gatherings_and_the_rest_is_said() -> None:
    result = made(gatherings={"pages": 100, "folios": 4})
    assert (value(result, "gatherings"), value(result, "pages")) == (7, 112)
    assert "100 pages wanted, 112 made: 12 more stay blank" in rules(result)["pages-left-over"].text
    assert "Name 3 gatherings" in rules(result)["pages-left-over"].remedy


def test_shorter_gatherings_leave_one_folio_out() -> None:
    result = made(gatherings={"pages": 104, "folios": 4, "shorter": [3, 5]})
    assert (value(result, "pages"), value(result, "folios")) == (104, 26)
    assert "pages-left-over" not in rules(result) and "end-gathering-weak" not in rules(result)
    collate = next(o for o in result.operations if o.id == "text-block.collate-gatherings")
    assert any("3, 5" in step.template for step in collate.steps)


@pytest.mark.parametrize("place", [1, 10])
def test_a_thin_gathering_at_either_end_warns(place: int) -> None:
    result = made(gatherings={"count": 10, "folios": 4, "shorter": [place]})
    assert "end-gathering-weak" in rules(result)


def test_a_shorter_gathering_that_does_not_exist_is_an_error() -> None:
    assert errors(made(gatherings={"count": 4, "folios": 4, "shorter": [5]})) == ["no-gathering"]
    assert "no-gathering" in errors(made(gatherings={"count": 4, "folios": 1, "shorter": [2]}))


def test_shorter_gatherings_may_not_eat_wanted_pages() -> None:
    result = made(gatherings={"pages": 112, "folios": 4, "shorter": [3]})
    assert errors(result) == ["pages-too-few"]


def test_fill_takes_whole_gatherings_and_shares_them_between_copies() -> None:
    result = made(gatherings={"fill": "stock", "folios": 5})
    assert (value(result, "gatherings"), value(result, "folios")) == (9, 45)
    shared = made(gatherings={"fill": "stock", "folios": 5}, top={"copies": 2})
    assert value(shared, "gatherings") == 4


def test_fill_needs_a_count_and_enough_sheets() -> None:
    endless = made({"chart-paper": {"count": None}}, gatherings={"fill": "stock"})
    assert errors(endless) == ["fill-without-count"]
    few = made({"chart-paper": {"count": 1}}, gatherings={"fill": "stock", "folios": 4})
    assert "stock-too-small" in errors(few)


@pytest.mark.parametrize("said", [{"folios": 4}, {"count": 3, "pages": 48}])
def test_exactly_one_way_of_counting(said: dict[str, int]) -> None:
    assert "gatherings-one-way" in errors(made(gatherings=said))


def test_folios_follow_the_paper_where_the_spec_is_silent() -> None:
    assert value(made(gatherings={"count": 4}), "gathering.folios") == 4
    heavy = made({"chart-paper": {"material": "watercolour"}}, gatherings={"count": 4})
    assert value(heavy, "gathering.folios") == 3
    plain = made({"chart-paper": {"material": "tissue"}}, gatherings={"count": 4})
    assert value(plain, "gathering.folios") == 4


def test_folios_outside_what_suits_the_paper_warn() -> None:
    assert "folios-in-gathering" in rules(made(gatherings={"count": 4, "folios": 9}))
    assert "folios-in-gathering" not in rules(made(gatherings={"count": 4, "folios": 5}))


def test_a_count_of_none_is_refused_before_the_stage_runs() -> None:
    assert refused(gatherings={"count": 0})
    assert refused(gatherings={"count": 2.5})


def test_collation_pairs_every_page_once() -> None:
    for folios in range(1, 9):
        pages = [page for pair in collation(folios, 17) for page in pair]
        assert sorted(pages) == list(range(17, 17 + 4 * folios, 2))
