"""Faces on the sheet: cut off, mirrored, scaled."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from foredge.contract import Label, Line, Shape, signed_area
from foredge.picture.place import Box, Place

BOX = Box(0.0, 0.0, 10.0, 6.0)


def test_a_strap_round_the_book_ends_at_its_edges() -> None:
    strap = ((-1000.0, 2.0), (1000.0, 2.0), (1000.0, 4.0), (-1000.0, 4.0))
    cut = BOX.cut(strap)
    assert abs(signed_area(cut)) == pytest.approx(10 * 2)
    assert all(BOX.holds(point) for point in cut)


@given(st.lists(st.tuples(st.floats(-30, 30), st.floats(-30, 30)), min_size=3, max_size=3))
def test_nothing_is_left_outside(triangle: list[tuple[float, float]]) -> None:
    grown = BOX.grown(1e-9)
    assert all(grown.holds(point) for point in BOX.cut(tuple(triangle)))


def test_a_line_is_cut_where_it_leaves() -> None:
    assert list(BOX.cut_line(((-5.0, 3.0), (15.0, 3.0)))) == [((0.0, 3.0), (10.0, 3.0))]
    assert list(BOX.cut_line(((-5.0, 8.0), (15.0, 8.0)))) == []
    inside = ((1.0, 1.0), (2.0, 2.0), (3.0, 1.0))
    assert list(BOX.cut_line(inside)) == [inside]


def test_a_face_seen_from_its_other_side_is_mirrored() -> None:
    place = Place(100.0, 50.0, 0.5, mirror=10.0)
    assert place.point((0.0, 0.0)) == (105.0, 50.0)
    assert place.point((10.0, 4.0)) == (100.0, 52.0)


def test_lines_keep_their_width_to_scale_and_areas_their_colour() -> None:
    items = (Line(((0, 0), (4, 0)), width=0.8), Shape((BOX.ring,), colour="#102030"))
    line, shape = Place(0.0, 0.0, 0.5).items(items)
    assert isinstance(line, Line) and line.width == 0.4
    assert isinstance(shape, Shape) and shape.colour == "#102030"


def test_words_are_no_part_of_a_face() -> None:
    with pytest.raises(TypeError):
        list(Place(0.0, 0.0, 1.0).items((Label((0, 0), "x"),)))
