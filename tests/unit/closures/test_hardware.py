"""Buttons, clasps, magnets."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from closure_books import fastened, operation, rules, value
from foredge.contract import Severity
from foredge.quantity import band
from foredge_closures.magnet_pocket import share_of_pull


def test_a_loop_slips_over_its_button() -> None:
    result = fastened(
        "{use: button-loop, button: 18 mm, button_thickness: 5 mm, cord: cord, "
        "button_from_fore_edge: 25 mm}"
    )
    reach = 12 + 20 * 1.12 + 25
    assert value(result, "reach") == pytest.approx(reach)
    assert value(result, "length") == pytest.approx(2 * (reach + 9 + 5))
    assert value(result, "hole") == pytest.approx(2 * 1.5 + 1)


def test_a_loop_beside_the_relief_does_not_wait_for_it() -> None:
    result = fastened("{use: button-loop, button: 18 mm}", relief=12.0, made_on="finished-book")
    assert result.work.quantity("finishing.closure.cut").gates == frozenset()


def test_small_parts_are_warned_of() -> None:
    for closure in ("{use: button-loop, button: 18 mm}",
                    "{use: clasp, plate_width: 9 mm, plate_height: 9 mm}",
                    "{use: magnets, diameter: 8 mm, thickness: 1 mm}"):  # fmt: skip
        hazards = {h for o in fastened(closure).work.operations for h in o.cautions}
        assert "small-parts" in hazards


CLASP = "{use: clasp, plate_width: 14 mm, plate_height: 20 mm, reach: %s, over_relief: %s}"


def test_a_clasp_over_the_relief_reaches_further() -> None:
    plain = fastened(CLASP % ("22 mm", "false"), relief=12.0, made_on="covered-case")
    over = fastened(CLASP % ("22 mm", "true"), relief=12.0, made_on="covered-case")
    assert value(plain, "reach") == pytest.approx(21.5)
    assert value(over, "reach") == pytest.approx(33.5)
    assert rules(plain) == {} and "clasp-short" in rules(over)
    assert "clasp-loose" in rules(fastened(CLASP % ("30 mm", "false")))


def test_a_clasp_is_only_chosen_when_the_book_is_done() -> None:
    result = fastened(CLASP % ("33 mm", "true"), relief=12.0, made_on="finished-book")
    (fit,) = result.work.operations
    assert {"case.case-in", "sculpt.dry", "finishing.varnish"} <= set(fit.after)
    assert fit.stops_for == ("G3",)


@pytest.mark.parametrize(("pin", "through"), [("2.9 mm", False), ("3.0 mm", True)])
def test_pins_that_come_through(pin: str, through: bool) -> None:
    closure = f"{{use: clasp, plate_width: 14 mm, plate_height: 20 mm, pin: {pin}}}"
    assert ("clasp-pin-through" in rules(fastened(closure))) == through


def test_a_plate_fits_flush_and_not_beyond_the_board() -> None:
    tall = "{use: clasp, plate_width: 14 mm, plate_height: 214 mm}"
    assert "closure-off-board" in rules(fastened(tall))
    assert rules(fastened("{use: clasp, plate_width: 14 mm, plate_height: 213 mm}")) == {}


MAGNET = "{use: magnets, diameter: 8 mm, thickness: %s mm%s}"


@pytest.mark.parametrize(
    ("thick", "web", "told"),
    [
        (1.0, "", None),
        (1.5, "", Severity.WARNING),  # 0.8 mm left, 1 mm is only advice
        (2.3, "", Severity.ERROR),  # with its cap it comes out on the other side
        (1.5, ", web: 0.8 mm", None),
        (1.5, ", web: 0.9 mm", Severity.ERROR),  # what the maker asked for
    ],
)
def test_what_a_pocket_leaves(thick: float, web: str, told: Severity | None) -> None:
    found = rules(fastened(MAGNET % (thick, web))).get("magnet-pocket-too-deep")
    assert (found.severity if found else None) is told


def test_magnets_are_sunk_before_the_covering_hides_them() -> None:
    sink = operation(fastened(MAGNET % (1, "")), "sink")
    assert sink.after == ("case.cut-boards",)
    assert {"case.cover", "case.cover-spine", "sculpt.seal-front-1"} <= set(sink.before_any)
    assert {"magnets", "small-parts", "blade", "hammer"} <= set(sink.cautions)


def test_poles_are_marked_where_they_matter() -> None:
    def words(keeper: str) -> str:
        result = fastened(MAGNET % (1, f", keeper: {keeper}"))
        return " ".join(step.template for o in result.work.operations for step in o.steps)

    assert "Mark the upper face" in words("magnet")
    assert "either pole" in words("steel") and "Mark the upper face" not in words("steel")
    marked = words("magnet, marked: true")
    assert "all marks must face one way" in marked and "Mark the upper face" not in marked
    bought = fastened(MAGNET % (1, ", keeper: steel")).work.uses
    assert [use.material for use in bought] == ["round magnet", "steel disc"]


@given(st.floats(0, 20), st.floats(0.2, 5))
def test_each_halving_halves_the_pull(gap: float, halving: float) -> None:
    assert share_of_pull(gap + halving, halving) == pytest.approx(share_of_pull(gap, halving) / 2)


def test_the_pull_is_known_only_roughly() -> None:
    spread = band(fastened(MAGNET % (1, "")).work.quantity("finishing.closure.pull"))
    assert 0 < spread.low < 0.5 < spread.high < 1
