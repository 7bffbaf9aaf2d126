"""Recording: arithmetic, refusals, gates."""

import math

import pytest

from foredge.dimension import AREA, LENGTH, MASS, RATIO
from foredge.quantity import (
    DimensionError,
    Origin,
    Quantity,
    ceil,
    choose,
    count,
    floor,
    gate,
    given,
    leaf,
    maximum,
    minimum,
    number,
    opaque,
    root,
    rounded,
    rounded_up,
    total,
)

SPEC = Origin("spec")


def mm(value: float, low: float | None = None, high: float | None = None) -> Quantity:
    return leaf(value, LENGTH, f"leaf{value:g}", SPEC, low=low, high=high)


def test_arithmetic_keeps_dimensions() -> None:
    area = mm(3) * mm(4)
    assert (area.value, area.dimension) == (12, AREA)
    assert (area / mm(4)).dimension == LENGTH
    assert (2 * mm(3) + mm(1) - mm(2)).value == 5
    assert (-mm(3)).value == -3
    assert (1 - number(0.25)).value == 0.75
    assert (6 / number(4)).value == 1.5
    assert root(area).value == pytest.approx(math.sqrt(12))


def test_a_root_needs_even_powers() -> None:
    with pytest.raises(ValueError, match="square root"):
        root(mm(3))


@pytest.mark.parametrize("make", [lambda a, b: a + b, lambda a, b: a - b, maximum, minimum])
def test_different_dimensions_do_not_mix(make) -> None:
    with pytest.raises(DimensionError):
        make(mm(3), leaf(2, MASS, "m", SPEC))


def test_choose_refuses_to_compare_millimetres_with_grams() -> None:
    with pytest.raises(DimensionError):
        choose(mm(3), leaf(2, MASS, "m", SPEC), mm(1), mm(2))


@pytest.mark.parametrize(
    "use",
    [
        bool,
        float,
        int,
        lambda q: q < 3,
        lambda q: q >= q,
        lambda q: sorted([q, q]),
        lambda q: [1, 2][q],
        lambda q: max(q, q),
        lambda q: math.ceil(q),
    ],
)
def test_what_would_hide_the_derivation_is_refused(use) -> None:
    with pytest.raises(TypeError):
        use(mm(2))


def test_equality_and_hash_are_by_identity() -> None:
    one, other = mm(2), mm(2)
    assert one == one
    assert one != other
    assert len({one, other}) == 2


def test_recorded_functions() -> None:
    assert maximum(mm(3), mm(5)).value == 5
    assert minimum(mm(3), mm(5)).value == 3
    assert total([mm(1), mm(2), mm(3)]).value == 6
    assert ceil(mm(7) / mm(2)).value == 4
    assert floor(mm(7) / mm(2)).value == 3
    assert rounded(mm(148.37), 0.5).value == 148.5
    assert rounded(mm(148.24), 0.5).value == 148.0
    assert rounded_up(mm(148.01), 0.5).value == 148.5
    assert rounded_up(mm(148.5), 0.5).value == 148.5
    assert choose(mm(3), mm(2), mm(10), mm(20)).value == 10
    assert choose(mm(2), mm(2), mm(10), mm(20)).value == 20
    assert opaque(math.hypot, (mm(3), mm(4)), LENGTH).value == 5


def test_ceil_forgives_the_last_bit() -> None:
    assert ceil(number(0.1) * 3 / 0.3 * 2).value == 2


def test_ceil_wants_a_plain_number() -> None:
    with pytest.raises(DimensionError):
        ceil(mm(3.2))


def test_a_leaf_lies_in_its_band() -> None:
    with pytest.raises(ValueError, match="not between"):
        mm(5, 6, 7)


def test_a_name_keeps_the_computation() -> None:
    named = (mm(3) + mm(4)).named("case.joint", rule="because", source="common practice")
    assert (named.name, named.label, named.rule) == ("case.joint", "joint", "because")
    assert [arg.value for arg in named.args] == [3, 4]
    again = named.named("case.gap")
    assert (again.rule, again.source) == ("because", "common practice")


def test_gates_follow_the_derivation() -> None:
    thickness = gate(mm(3, 2.8, 3.2), None, "G1", "board", "board thickness")
    width = gate(mm(150, 149, 151), None, "G2", "block.width", "block width")
    both = width - thickness
    assert both.gates == {"G1", "G2"}
    assert not both.firm
    assert (thickness - thickness).gates == {"G1"}, "cancelling inputs still count"
    assert given(mm(1), both).gates == {"G1", "G2"}
    assert maximum(mm(400), width).gates == {"G2"}, "an argument that lost still counts"
    assert choose(mm(1), mm(2), thickness, mm(4)).gates == {"G1"}


def test_a_reading_makes_firm() -> None:
    read = gate(mm(3, 2.8, 3.2), mm(3.1), "G1", "board", "board thickness")
    assert read.value == 3.1
    assert read.firm
    assert read.data.read
    assert (2 * read).firm


def test_a_reading_has_the_dimension_of_its_estimate() -> None:
    with pytest.raises(DimensionError):
        gate(mm(3), leaf(3, MASS, "m", SPEC), "G1", "board", "board thickness")


def test_counts_are_whole_plain_numbers() -> None:
    assert count(10, "gatherings", SPEC).dimension == RATIO
    assert count(10, "gatherings", SPEC).integer
