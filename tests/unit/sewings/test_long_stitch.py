"""Long stitch: pairs of stations, the way of the thread walked hole by hole, the strip."""

from __future__ import annotations

from itertools import pairwise

import pytest

from foredge.contract import Circle, Line, StageResult
from foredge.testing import check_plugin
from foredge_sewings.long_stitch import PLUGIN
from text_block_books import errors, made, quantity, rules, value


def long(**options: object) -> StageResult:
    stock = options.pop("stock", None)
    more = options.pop("more", {})
    sewing = {"use": "long-stitch", "thread": "linen", **options}
    return made(stock, sewing=sewing, end_papers={"use": "tipped"}, **more)  # type: ignore[arg-type]


def stations(result: StageResult) -> list[float]:
    return [q.value for q in result.quantities if (q.name or "").startswith("text_block.station.")]


def drawing(result: StageResult, name: str):
    return next(one for one in result.drawings if one.name == name)


def test_contract() -> None:
    check_plugin(PLUGIN)


def test_stations_are_even_in_number_and_evenly_spaced() -> None:
    for height in range(90, 320, 10):
        places = stations(long(more={"leaf": {"width": "80 mm", "height": f"{height} mm"}}))
        assert len(places) % 2 == 0 and len(places) >= 4
        assert places[0] == 2 + 13
        assert max(b - a for a, b in pairwise(places)) <= 40.5


@pytest.mark.parametrize(("asked", "taken"), [(1, 4), (2, 4), (5, 6), (7, 8)])
def test_an_odd_number_of_stations_warns_and_one_more_is_taken(asked: int, taken: int) -> None:
    result = long(stations=asked)
    assert len(stations(result)) == taken
    assert f"{taken} are taken in place of {asked}" in rules(result)["long-stitch-stations"].text
    assert "long-stitch-stations" not in rules(long(stations=taken))


def walk(holes: int, gatherings: int) -> list[tuple[int, int, str]]:
    """The thread, hole by hole: the gathering and station it passes, and the side it comes out."""
    side, passes = "outside", []
    for row in range(gatherings):
        way = range(holes) if row % 2 == 0 else reversed(range(holes))
        for hole in way:
            side = "inside" if side == "outside" else "outside"
            passes.append((row, hole, side))
    return passes


@pytest.mark.parametrize("holes", [4, 5, 6, 7, 8])
def test_only_with_even_stations_does_each_gathering_end_outside(holes: int) -> None:
    """Why an odd number is refused: the thread walked on paper."""
    ends = {side for row, hole, side in walk(holes, 6)[holes - 1 :: holes]}
    assert (ends == {"outside"}) == (holes % 2 == 0)


def test_thread_by_its_path() -> None:
    """Each stretch of the walk measured on its own, in place of the sums of the plugin."""
    result = long()
    places, pitch = stations(result), value(result, "gathering.pitch")
    path = walk(len(places), 10)
    inside = outside = climbs = 0.0
    for before, after in pairwise(path):
        length = abs(places[after[1]] - places[before[1]])
        if before[0] != after[0]:
            assert before[2] == "outside" and length == 0
            climbs += pitch
        elif before[2] == "inside":
            inside += length
        else:
            outside += length
    assert value(result, "thread.inside") == pytest.approx(inside)
    assert value(result, "thread.outside") == pytest.approx(outside)
    assert value(result, "thread.climbs") == pytest.approx(climbs)
    through = 0.32 + 0.12 * 1.2 + 4 * value(result, "leaf.thickness")
    assert value(result, "thread.crossings") == pytest.approx(len(path) * through, rel=0.2)
    parts = sum(
        value(result, f"thread.{key}")
        for key in ("inside", "outside", "crossings", "climbs", "kettles")
    )
    assert value(result, "thread.path") == pytest.approx(parts)


def test_the_strip_reaches_over_gatherings_and_onto_both_boards() -> None:
    result = long(flange="30 mm")
    width, height = value(result, "sewing_strip.width"), value(result, "sewing_strip.height")
    sewn = 10 * value(result, "gathering.pitch")
    assert width == pytest.approx(sewn + 60, abs=0.5) and width >= sewn + 60
    assert height == 205 - 2 * value(result, "sewing_strip.short")
    assert value(result, "sewing_strip.short") < 13
    assert quantity(result, "sewing_strip.width").gates == frozenset()


def test_the_piercing_template_has_a_hole_for_every_station_of_every_gathering() -> None:
    result = long()
    sheet = drawing(result, "text-block-sewing-strip")
    holes = sorted((c.centre for c in sheet.items if isinstance(c, Circle)), key=lambda p: p)
    places, pitch = stations(result), value(result, "gathering.pitch")
    assert sheet.true_scale and len(holes) == 10 * len(places)
    assert holes[len(places)][0] - holes[0][0] == pytest.approx(pitch)
    first = [y for x, y in holes[: len(places)]]
    assert [b - a for a, b in pairwise(first)] == pytest.approx(
        [b - a for a, b in pairwise(places)]
    )
    # The strip's head lies below that of the folded leaf by the trim and what it is short.
    assert first[0] - 20 == pytest.approx(places[0] - 2 - value(result, "sewing_strip.short"))


def test_the_diagram_shows_inside_and_outside_by_turns() -> None:
    result = long()
    picture = drawing(result, "text-block-thread-path")
    drawn = [i for i in picture.items if isinstance(i, Line) and i.points[0][0] == i.points[1][0]]
    row = [line.role for line in drawn[: len(stations(result)) - 1]]
    assert row[0] == "hidden" and row[-1] == "hidden"
    assert all(a != b for a, b in pairwise(row))


def test_the_strip_is_made_before_sewing_and_carries_the_block() -> None:
    result = long()
    sew = next(o for o in result.operations if o.id == "text-block.sew")
    assert "text-block.make-sewing-strip" in sew.after
    assert dict(result.facts)["text_block.supported"] == "yes"
    assert value(result, "joint.tapes") > 0


def test_stations_off_the_leaf_are_an_error() -> None:
    assert "stations-do-not-fit" in errors(long(end_distance="150 mm"))
    assert "stations-do-not-fit" in errors(long(stations=90_000))
    assert "station-near-edge" in rules(long(end_distance="7 mm"))


def test_the_strip_takes_the_place_of_the_super() -> None:
    result = long()
    assert "text_block.super" not in {piece.name for piece in result.pieces}
    assert value(result, "joint.super") == 0
    steps = [s.template for o in result.operations for s in o.steps]
    assert not [words for words in steps if "the super" in words.lower()]
    bare = long(more={"lining": {"layers": 0}})
    names = [operation.id for operation in bare.operations]
    assert "text-block.line-spine" not in names
    trim = next(o for o in bare.operations if o.id == "text-block.trim")
    assert set(trim.after) <= set(names)
