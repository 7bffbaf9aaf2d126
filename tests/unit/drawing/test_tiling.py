from itertools import combinations

import pytest
from hypothesis import given, strategies as st

from foredge.drawing.sheets import Window
from foredge.drawing.tiling import OVERLAP, Room, crosses, grid, shelves

A4 = Room(190.0, 250.0)
lengths = st.floats(0.5, 1200)
parts = st.builds(Window, st.floats(-50, 50), st.floats(-50, 50), lengths, lengths)


def inside(window: Window, x: float, y: float) -> bool:
    return (
        window.x - 1e-6 <= x <= window.x + window.width + 1e-6
        and window.y - 1e-6 <= y <= window.y + window.height + 1e-6
    )


@given(parts, st.floats(0, 1), st.floats(0, 1))
def test_tiles_cover_the_drawing_and_nothing_else(part: Window, u: float, v: float) -> None:
    tiles = grid(part, A4).tiles
    x, y = part.x + u * part.width, part.y + v * part.height
    assert any(inside(tile.window, x, y) for tile in tiles)
    for tile in tiles:
        one = tile.window
        assert one.width <= A4.width and one.height <= A4.height
        assert inside(part, one.x, one.y)
        assert inside(part, one.x + one.width, one.y + one.height)


@given(parts)
def test_no_tile_is_to_spare(part: Window) -> None:
    """Fewer columns or rows would leave something out, whatever their overlap."""
    whole = grid(part, A4)
    step = A4.width - OVERLAP, A4.height - OVERLAP
    assert len(whole.tiles) == whole.rows * whole.columns
    assert whole.columns == 1 or part.width > (whole.columns - 1) * step[0] + OVERLAP
    assert whole.rows == 1 or part.height > (whole.rows - 1) * step[1] + OVERLAP


@given(parts)
def test_neighbours_share_the_overlap_and_the_line_to_be_laid_to(part: Window) -> None:
    whole = grid(part, A4)
    at = {(tile.row, tile.column): tile for tile in whole.tiles}
    for (row, column), tile in at.items():
        beside, below = at.get((row, column + 1)), at.get((row + 1, column))
        assert (tile.right is None) == (beside is None)
        assert (tile.foot is None) == (below is None)
        if beside is not None:
            assert tile.right == beside.window.x
            shared = tile.window.x + tile.window.width - beside.window.x
            assert shared == pytest.approx(OVERLAP)
        if below is not None:
            assert tile.foot == below.window.y


@given(parts)
def test_each_pair_of_neighbours_has_two_crosses_in_common(part: Window) -> None:
    whole = grid(part, A4)
    marks = {tile.name: set(crosses(tile, whole)) for tile in whole.tiles}
    assert len(marks) == len(whole.tiles)
    for tile in whole.tiles:
        assert all(inside(tile.window, x, y) for x, y in marks[tile.name])
    for one, other in combinations(whole.tiles, 2):
        if abs(one.row - other.row) + abs(one.column - other.column) == 1:
            assert len(marks[one.name] & marks[other.name]) >= 2


def test_names_are_rows_by_letter_and_columns_by_number() -> None:
    names = [tile.name for tile in grid(Window(0, 0, 400, 600), A4).tiles]
    assert names == ["A1", "A2", "A3", "B1", "B2", "B3", "C1", "C2", "C3"]


def test_a_page_narrower_than_the_margin_is_refused() -> None:
    with pytest.raises(ValueError, match="leave nothing"):
        grid(Window(0, 0, 50, 50), Room(10.0, 50.0))


@given(st.lists(st.tuples(st.floats(1, 190), st.floats(1, 250)), max_size=25))
def test_things_on_shelves_keep_clear_and_all_are_there(sizes: list[tuple[float, float]]) -> None:
    pages = shelves(sizes, A4, 6.0)
    assert sorted(slot.which for page in pages for slot in page) == list(range(len(sizes)))
    for page in pages:
        for slot in page:
            width, height = sizes[slot.which]
            assert slot.x + width <= A4.width + 1e-5 and slot.y + height <= A4.height + 1e-5
        for one, other in combinations(page, 2):
            (wide, high), (width, height) = sizes[one.which], sizes[other.which]
            apart_x = other.x - one.x - wide, one.x - other.x - width
            apart_y = other.y - one.y - high, one.y - other.y - height
            assert max(*apart_x, *apart_y) >= 6.0 - 1e-5


def test_small_things_share_a_page() -> None:
    assert len(shelves([(60.0, 80.0)] * 9, A4, 5.0)) == 1
    assert len(shelves([(60.0, 80.0)] * 10, A4, 5.0)) == 2


def test_what_fits_no_page_is_refused() -> None:
    with pytest.raises(ValueError, match="does not fit"):
        shelves([(191.0, 10.0)], A4, 5.0)
