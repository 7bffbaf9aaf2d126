"""Tapes: how many, where, their holes, and the thread over them."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings, strategies as st

from foredge.contract import StageResult
from foredge.testing import check_plugin
from foredge_sewings.tapes import PLUGIN
from text_block_books import errors, made, rules, value


def taped(height: int = 205, **options: object) -> StageResult:
    sewing = {"use": "tapes", "thread": "linen", "tape": "tape", **options}
    leaf = {"width": "100 mm", "height": f"{height} mm"}
    return made(sewing=sewing, leaf=leaf, end_papers={"use": "tipped"})


def stations(result: StageResult) -> list[float]:
    return [q.value for q in result.quantities if (q.name or "").startswith("text_block.station.")]


def test_contract() -> None:
    check_plugin(PLUGIN)


def test_two_holes_a_tape_and_two_kettles() -> None:
    for tapes in (2, 3, 4, 5):
        result = taped(count=tapes)
        assert len(stations(result)) == value(result, "stations") == 2 * tapes + 2


def test_holes_of_a_tape_are_a_millimetre_further_apart_than_it_is_wide() -> None:
    places = stations(taped())
    for first in range(1, len(places) - 1, 2):
        assert places[first + 1] - places[first] == pytest.approx(14, abs=0.5)


def test_tapes_lie_evenly_about_the_middle() -> None:
    places = stations(taped())
    middle = 209 / 2
    for head, tail in zip(places, reversed(places), strict=True):
        assert head - middle == pytest.approx(middle - tail, abs=0.51)


def test_outer_tapes_go_where_the_maker_wants_them() -> None:
    places = stations(taped(outer="30 mm"))
    assert (places[1] + places[2]) / 2 == pytest.approx(2 + 30, abs=0.5)
    assert (places[-2] + places[-3]) / 2 == pytest.approx(209 - 2 - 30, abs=0.5)


def test_one_tape_lies_in_the_middle() -> None:
    places = stations(taped(count=1))
    assert (places[1] + places[2]) / 2 == pytest.approx(209 / 2, abs=0.5)


@settings(max_examples=25, deadline=None)
@given(st.integers(110, 430), st.integers(1, 6))
def test_stations_run_from_head_to_tail_or_it_is_an_error(height: int, tapes: int) -> None:
    result = taped(height, count=tapes)
    places = stations(result)
    sound = all(a < b for a, b in pairwise(places))
    assert sound == ("stations-do-not-fit" not in errors(result))
    if sound:
        assert places[0] > 2 and places[-1] < height + 2


def test_too_many_tapes_for_the_leaf_are_an_error() -> None:
    assert "stations-do-not-fit" in errors(taped(110, count=9))
    assert "stations-do-not-fit" in errors(taped(110, count=80_000))


def test_a_tape_is_cut_to_reach_over_both_boards() -> None:
    result = taped()
    piece = next(p for p in result.pieces if p.name == "text_block.tape")
    assert (piece.count.value, piece.width.value, piece.stock) == (3, 13, "tape")
    sewn = 10 * value(result, "gathering.pitch")
    assert piece.height.value == pytest.approx(sewn + 2 * 38, abs=0.5)
    assert value(taped(lap="20 mm"), "tape.length") < piece.height.value


def test_a_narrow_tape_warns() -> None:
    assert "tape-narrow" in rules(taped(width="8 mm"))
    assert "tape-narrow" not in rules(taped())


def test_thread_goes_over_each_tape_and_climbs_at_the_kettles() -> None:
    result = taped()
    places, pitch = stations(result), value(result, "gathering.pitch")
    kettle = 2 * pitch + 6 * value(result, "thread.diameter")
    expected = 10 * (places[-1] - places[0]) + 10 * 3 * 2 + 9 * pitch + 9 * kettle
    assert value(result, "thread.path") == pytest.approx(expected)


def test_tapes_lie_in_the_joint_and_carry_the_block() -> None:
    result = taped()
    assert value(result, "joint.tapes") == pytest.approx(0.3)
    assert dict(result.facts)["text_block.supported"] == "yes"
