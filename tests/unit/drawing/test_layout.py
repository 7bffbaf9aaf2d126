import math

import pytest
from hypothesis import given, strategies as st

from foredge.drawing.layout import FLATNESS, expand
from foredge.drawing.model import (
    Arc,
    CheckBar,
    Cross,
    GrainArrow,
    Hatch,
    Item,
    Label,
    Line,
    Measured,
    Shape,
)


def lines(item: Item) -> list[Line]:
    return [one for one in expand([item]) if isinstance(one, Line)]


def words(item: Item) -> Label:
    (label,) = (one for one in expand([item]) if isinstance(one, Label))
    return label


def test_a_dimension_lies_to_the_left_of_its_direction() -> None:
    item = Measured((10, 50), (60, 50), "50 mm", offset=8)
    assert Line(((10, 42), (60, 42)), "dimension") in lines(item)
    label = words(item)
    assert label.at[0] == 35 and label.at[1] < 42 and label.turn == 0


@pytest.mark.parametrize(
    ("start", "end", "turn"),
    [
        ((0, 0), (50, 0), 0),
        ((50, 0), (0, 0), 0),
        ((0, 0), (0, 50), -90),
        ((0, 50), (0, 0), -90),
        ((0, 0), (50, 50), 45),
        ((50, 50), (0, 0), 45),
    ],
)
def test_words_of_a_dimension_are_read_from_below_or_from_the_right(
    start: tuple[float, float], end: tuple[float, float], turn: float
) -> None:
    assert words(Measured(start, end, "x")).turn == pytest.approx(turn)


def test_arrows_point_at_the_ends_from_inside_and_from_outside_where_it_is_narrow() -> None:
    def heads(length: float) -> list[Shape]:
        item = Measured((0, 0), (length, 0), "x", offset=5)
        return [one for one in expand([item]) if isinstance(one, Shape)]

    wide, narrow = heads(50), heads(4)
    assert [head.rings[0][0] for head in wide] == [(0, -5), (50, -5)]
    assert [head.rings[0][0] for head in narrow] == [(0, -5), (4, -5)]
    assert all(x > 0 for x, _ in wide[0].rings[0][1:])
    assert all(x < 0 for x, _ in narrow[0].rings[0][1:])


@given(st.floats(0.5, 400), st.floats(-360, 360), st.floats(-360, 360))
def test_an_arc_keeps_to_its_circle(radius: float, start: float, sweep: float) -> None:
    (arc,) = lines(Arc((3, 4), radius, start, sweep))
    for (ax, ay), (bx, by) in zip(arc.points, arc.points[1:], strict=False):
        assert math.hypot(ax - 3, ay - 4) == pytest.approx(radius)
        middle = math.hypot((ax + bx) / 2 - 3, (ay + by) / 2 - 4)
        assert radius - middle <= FLATNESS * 1.001


def test_a_hatch_covers_its_area_and_not_its_hole() -> None:
    square = ((0, 0), (40, 0), (40, 40), (0, 40))
    hole = ((10, 10), (30, 10), (30, 30), (10, 30))
    whole = lines(Hatch((square,), 0.5, 30))
    holed = lines(Hatch((square, hole), 0.5, 30))

    def area(found: list[Line]) -> float:
        return 0.5 * sum(math.dist(*line.points) for line in found)

    assert area(whole) == pytest.approx(1600, rel=0.01)
    assert area(holed) == pytest.approx(1200, rel=0.01)
    assert lines(Hatch((), 1)) == []


def test_grain_arrow_has_a_head_at_both_ends() -> None:
    shaft, *heads = lines(GrainArrow((0, 0), 20, 90))
    ends = {(round(x, 9), round(y, 9)) for x, y in shaft.points}
    assert ends == {(0, -10), (0, 10)}
    assert {(round(h.points[1][0], 9), round(h.points[1][1], 9)) for h in heads} == ends


@pytest.mark.parametrize(("unit", "length"), [("mm", 100.0), ("in", 4 * 25.4)])
def test_check_bar_is_as_long_as_it_says(unit: str, length: float) -> None:
    (frame,) = lines(CheckBar((5, 5), unit))  # type: ignore[arg-type]
    xs = [x for x, _ in frame.points]
    assert max(xs) - min(xs) == pytest.approx(length)


def test_registration_mark_is_centred() -> None:
    across, down = lines(Cross((7, 9), 6))
    assert across.points == ((4, 9), (10, 9))
    assert down.points == ((7, 6), (7, 12))
