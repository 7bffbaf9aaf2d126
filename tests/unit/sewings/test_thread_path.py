"""The picture of the thread's way agrees with the stations and with what is told to be sewn."""

from __future__ import annotations

from itertools import pairwise

import pytest

from foredge.contract import Circle, Drawing, Line, Shape, StageResult
from foredge.drawing.textbox import overlaps
from text_block_books import made, value

STRUCTURES = ("link-stitch", "tapes", "long-stitch")


def sewn(use: str, gatherings: int = 10) -> tuple[StageResult, Drawing]:
    result = made(
        sewing={"use": use, "thread": "linen"},
        gatherings={"count": gatherings, "folios": 3},
        end_papers={"use": "tipped"},
    )
    (drawing,) = (d for d in result.drawings if d.name == "text-block-thread-path")
    return result, drawing


def rows(drawing: Drawing) -> list[list[Line]]:
    """The stretches of each gathering, from head to tail."""
    upright = [
        i
        for i in drawing.items
        if isinstance(i, Line) and len(i.points) == 2 and i.points[0][0] == i.points[1][0]
    ]
    places = sorted({line.points[0][0] for line in upright})
    return [[line for line in upright if line.points[0][0] == x] for x in places]


@pytest.mark.parametrize("use", STRUCTURES)
def test_every_station_of_three_gatherings_is_there_to_scale(use: str) -> None:
    result, drawing = sewn(use)
    stations = sorted(
        q.value for q in result.quantities if (q.name or "").startswith("text_block.station.")
    )
    found = rows(drawing)
    assert len(found) == 3
    for row in found:
        lengths = [line.points[1][1] - line.points[0][1] for line in row]
        assert lengths == pytest.approx([b - a for a, b in pairwise(stations)])
    holes = [i for i in drawing.items if isinstance(i, Circle)]
    assert len(holes) == 3 * len(stations)
    assert overlaps(drawing) == []


def outside(drawing: Drawing) -> list[int]:
    return [place for place, line in enumerate(rows(drawing)[0]) if line.role == "outline"]


def test_thread_lies_outside_over_each_tape_and_only_there() -> None:
    result, drawing = sewn("tapes")
    tapes = [i for i in drawing.items if isinstance(i, Shape)]
    assert len(outside(drawing)) == len(tapes) == value(result, "tapes")
    assert outside(drawing) == [1, 3, 5][: len(tapes)]


def test_link_stitch_stays_in_the_fold_and_links_at_the_inner_stations() -> None:
    result, drawing = sewn("link-stitch")
    assert outside(drawing) == []
    loops = [
        i
        for i in drawing.items
        if isinstance(i, Line) and len(i.points) == 5 and i.points[0] == i.points[-1]
    ]
    assert len(loops) == 2 * (value(result, "stations") - 2)


def test_long_stitch_ends_outside_at_both_ends() -> None:
    result, drawing = sewn("long-stitch")
    many = int(value(result, "stations"))
    assert outside(drawing) == list(range(1, many - 1, 2))


@pytest.mark.parametrize("use", STRUCTURES)
@pytest.mark.parametrize("gatherings", [1, 2])
def test_a_thin_book_has_fewer_columns(use: str, gatherings: int) -> None:
    _, drawing = sewn(use, gatherings)
    assert len(rows(drawing)) == gatherings
