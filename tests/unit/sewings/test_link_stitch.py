"""Link stitch: stations, path, advice."""

from __future__ import annotations

from itertools import pairwise

import pytest

from foredge.contract import StageResult
from foredge.testing import check_plugin
from foredge_sewings.link_stitch import PLUGIN
from text_block_books import errors, made, rules, value


def link(**options: object) -> StageResult:
    stock = options.pop("stock", None)
    sewing = {"use": "link-stitch", "thread": "linen", **options}
    return made(stock, sewing=sewing, end_papers={"use": "tipped"})  # type: ignore[arg-type]


def stations(result: StageResult) -> list[float]:
    return [q.value for q in result.quantities if (q.name or "").startswith("text_block.station.")]


def test_contract() -> None:
    check_plugin(PLUGIN)


def test_stations_are_evenly_spaced_inside_the_finished_leaf() -> None:
    places = stations(link())
    assert places[0] == 2 + 13 and places[-1] == 209 - 2 - 13
    steps = [b - a for a, b in pairwise(places)]
    assert max(steps) <= 35.5 and max(steps) - min(steps) <= 0.5
    assert len(places) == value(link(), "stations") == 7


def test_the_maker_sets_count_spacing_and_ends() -> None:
    assert len(stations(link(stations=4))) == 4
    assert len(stations(link(spacing="60 mm"))) < 7
    ends = stations(link(end_distance="20 mm", tail_distance="30 mm"))
    assert (ends[0], ends[-1]) == (22, 209 - 2 - 30)


@pytest.mark.parametrize("few", [1, 2])
def test_two_stations_are_the_least(few: int) -> None:
    assert len(stations(link(stations=few))) == 2
    assert value(link(stations=few), "thread.links") == 0


def test_more_stations_than_the_fold_takes_are_refused_quickly() -> None:
    assert "stations-do-not-fit" in errors(link(stations=90_000))


def test_an_end_station_near_the_edge_warns_and_off_the_leaf_is_an_error() -> None:
    assert (
        "7 mm from the finished head and tail"
        in rules(link(end_distance="7 mm"))["station-near-edge"].text
    )
    assert "station-near-edge" not in rules(link(end_distance="8 mm"))
    crossed = link(end_distance="150 mm")
    assert "stations-do-not-fit" in errors(crossed)
    assert "station-off-leaf" in errors(link(tail_distance="230 mm"))


def test_every_gathering_is_linked_to_the_one_below() -> None:
    """The path by hand: 10 gatherings, 7 stations, the pitch of one gathering."""
    result = link()
    pitch, d = value(result, "gathering.pitch"), value(result, "thread.diameter")
    places = stations(result)
    drop = 2 * pitch + 6 * d
    expected = 10 * (places[-1] - places[0]) + 9 * 5 * drop + 9 * pitch + 9 * drop
    assert value(result, "thread.path") == pytest.approx(expected)


def test_thread_to_have_ready_covers_path_tails_joins_and_reserve() -> None:
    result = link()
    joins = value(result, "thread.joins")
    assert joins == value(result, "thread.needle_lengths") - 1 >= 1
    expected = (value(result, "thread.path") + 300 + joins * 60) * 1.15
    assert value(result, "thread.length") == pytest.approx(expected)


def test_needle_lengths_cover_the_path() -> None:
    result = link()
    lengths, joins = value(result, "thread.needle_lengths"), value(result, "thread.joins")
    assert lengths * 1000 >= value(result, "thread.path") + 300 + joins * 60
    assert (lengths - 1) * (1000 - 60) < value(result, "thread.path") + 300


def test_a_curved_needle_is_asked_for_and_nothing_holds_the_block_but_thread() -> None:
    result = link()
    sew = next(o for o in result.operations if o.id == "text-block.sew")
    assert any("curved" in str(v) for step in sew.steps for v in step.values.values())
    assert dict(result.facts)["text_block.supported"] == "no"
    assert value(result, "joint.tapes") == 0


def test_wax_is_only_for_dry_thread() -> None:
    def waxes(material: str) -> bool:
        result = link(stock={"linen": {"material": material}})
        cut = next(o for o in result.operations if o.id == "text-block.cut-thread")
        return any("beeswax" in step.template for step in cut.steps)

    assert waxes("linen") and not waxes("waxed-linen")
