"""How far a closure is from a relief: against distances known beforehand."""

import math

import pytest
from hypothesis import given, settings, strategies as st

from foredge_rules.apart import gap, inside

Square = tuple[tuple[tuple[float, float], ...], ...]


def square(x: float, y: float, side: float) -> Square:
    return (((x, y), (x + side, y), (x + side, y + side), (x, y + side)),)


def disc(x: float, y: float, radius: float, corners: int = 96) -> Square:
    turns = [2 * math.pi * place / corners for place in range(corners)]
    return (tuple((x + radius * math.cos(a), y + radius * math.sin(a)) for a in turns),)


@given(st.floats(0.01, 30))
def test_two_squares_side_by_side(free: float) -> None:
    assert gap(square(0, 0, 10), square(10 + free, 2, 10), 50) == pytest.approx(free)


@given(st.floats(0.01, 20), st.floats(0.01, 20))
def test_two_squares_corner_to_corner(across: float, down: float) -> None:
    found = gap(square(0, 0, 10), square(10 + across, 10 + down, 10), 50)
    assert found == pytest.approx(math.hypot(across, down))


@given(st.floats(-9, 15))
@settings(deadline=None, max_examples=30)
def test_two_discs(free: float) -> None:
    """Apart by what their middles are apart beyond the radii; the overlap goes as deep."""
    found = gap(disc(0, 0, 10), disc(20 + free, 0, 10), 50)
    assert found is not None
    assert found == pytest.approx(free, abs=0.05)


def test_beyond_what_is_asked_for_nothing_is_told() -> None:
    assert gap(square(0, 0, 10), square(12, 0, 10), 1.9) is None
    assert gap(square(0, 0, 10), square(12, 0, 10), 2.1) == pytest.approx(2)


def test_one_within_the_other() -> None:
    assert gap(square(4, 4, 2), square(0, 0, 10), 1) == pytest.approx(-4)
    assert gap(square(0, 0, 10), square(4, 4, 2), 1) == pytest.approx(-4)


def test_bars_that_cross_without_a_corner_in_each_other() -> None:
    bar = (((-20.0, 4.0), (20.0, 4.0), (20.0, 6.0), (-20.0, 6.0)),)
    assert gap(bar, square(0, 0, 10), 1) == 0


def test_a_hole_is_no_ground() -> None:
    """A button in the middle of a ring stands on bare board."""
    ring = (*square(0, 0, 30), *square(5, 5, 20))
    assert not inside((15, 15), ring)
    assert inside((2, 2), ring)
    assert gap(disc(15, 15, 3), ring, 20) == pytest.approx(7, abs=0.02)
