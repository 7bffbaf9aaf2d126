"""Yield in folios, grain, creases and off-cuts."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings, strategies as st

from text_block_books import errors, made, rules, value

A4 = {"chart-paper": {"width": "210 mm", "height": "297 mm", "grain": "height", "count": 200}}
A5_LEAF = {"width": "148 mm", "height": "210 mm"}


def test_folios_lie_with_their_fold_along_the_grain() -> None:
    result = made()
    assert value(result, "yield.along") == 2
    assert value(result, "folios_per_sheet") == 2
    folio = next(piece for piece in result.pieces if piece.name == "text_block.folio")
    assert folio.grain == "height"


def test_office_paper_folded_once_has_its_grain_across_and_says_so() -> None:
    result = made(A4, leaf=A5_LEAF, trim="none")
    problem = rules(result)["grain-across-spine"]
    assert "runs across the spine: 1 folio to a sheet" in problem.text
    assert value(result, "yield.along") == 0 and value(result, "folios_per_sheet") == 1
    folio = next(piece for piece in result.pieces if piece.name == "text_block.folio")
    assert folio.grain == "width"


def test_grain_along_refuses_what_only_fits_across() -> None:
    result = made(A4, leaf=A5_LEAF, trim="none", grain="along")
    assert errors(result) == ["no-folio-in-grain"]
    assert "1 would fit across" in rules(result)["no-folio-in-grain"].text


def test_grain_is_never_turned_for_yield_alone() -> None:
    stock = {"chart-paper": {"width": "310 mm", "height": "640 mm", "grain": "height"}}
    leaf = {"width": "150 mm", "height": "300 mm"}
    assert value(made(stock, leaf=leaf, trim="none"), "folios_per_sheet") == 2
    small = {"chart-paper": {"width": "440 mm", "height": "610 mm", "grain": "height"}}
    kept = made(small, trim="none")
    assert (value(kept, "yield.along"), value(kept, "yield.across")) == (2, 4)
    assert value(kept, "folios_per_sheet") == 2
    assert "grain-across-spine" not in rules(kept)
    turned = made(small, trim="none", grain="either")
    assert value(turned, "folios_per_sheet") == 4
    assert "grain-across-spine" in rules(turned)


def test_unknown_grain_warns_and_puts_the_test_in_the_work() -> None:
    result = made({"chart-paper": {"grain": "unknown"}})
    assert "grain-unknown" in rules(result)
    first = result.operations[0]
    assert first.id == "text-block.check-grain"
    assert any("rolls up" in step.template for step in first.steps)


def test_a_folio_larger_than_the_sheet_says_by_how_much() -> None:
    result = made(leaf={"width": "260 mm", "height": "445 mm"}, trim="none")
    assert errors(result) == ["folio-larger-than-sheet"]
    assert "520 mm by 445 mm" in rules(result)["folio-larger-than-sheet"].text
    assert "it lacks 5 mm along the fold" in rules(result)["folio-larger-than-sheet"].text
    # The other stages can still read every size.
    assert all(math.isfinite(quantity.value) for quantity in result.quantities)


def test_too_few_sheets_are_counted_for_all_copies() -> None:
    assert "paper-short" not in rules(made())
    problem = rules(made(top={"copies": 3}))["paper-short"]
    assert "60 sheets" in problem.text and "has 24" in problem.text


lengths = st.floats(40, 1200).map(lambda mm: round(mm, 1))


@settings(max_examples=40, deadline=None)
@given(lengths, lengths, st.sampled_from(["width", "height"]), st.integers(40, 300))
def test_folios_and_off_cuts_make_up_the_sheet(
    width: float, height: float, grain: str, leaf: int
) -> None:
    stock = {"chart-paper": {"width": f"{width} mm", "height": f"{height} mm", "grain": grain}}
    size = {"width": f"{leaf} mm", "height": f"{leaf + 30} mm"}
    result = made(stock, leaf=size, trim="none", gatherings={"count": 1, "folios": 4})
    across, along = 2 * leaf, leaf + 30
    turned = math.floor(height / across) * math.floor(width / along)
    upright = math.floor(width / across) * math.floor(height / along)
    good, bad = (turned, upright) if grain == "width" else (upright, turned)
    assert (value(result, "yield.along"), value(result, "yield.across")) == (good, bad)
    used = value(result, "folios_per_sheet")
    assert used == (good or bad)
    strips = {
        q.name.rsplit(".", 1)[0]
        for q in result.quantities
        if q.name and q.name.startswith("text_block.offcut.")
    }
    left = sum(
        result.quantity(f"{strip}.width").value * result.quantity(f"{strip}.height").value
        for strip in strips
    )
    if used:
        # Strips under half a millimetre are dust, and are not listed.
        assert used * across * along + left == pytest.approx(width * height, abs=0.5 * 2400)


def test_an_old_crease_becomes_a_fold_where_it_costs_nothing() -> None:
    stock = {"chart-paper": {"creases": [{"along": "width", "at": "300 mm"}]}}
    result = made(stock)
    assert value(result, "crease") == 300
    assert value(result, "folios_per_sheet") == value(made(), "folios_per_sheet")
    cut = next(o for o in result.operations if o.id == "text-block.cut-folios")
    assert any("old crease" in step.template for step in cut.steps)
    assert "crease-in-leaf" not in rules(result)


def test_a_crease_that_would_cost_a_folio_is_left_and_noted() -> None:
    stock = {"chart-paper": {"height": "620 mm", "creases": [{"along": "width", "at": "300 mm"}]}}
    result = made(stock)
    assert "crease-in-leaf" in rules(result)
    assert not any(q.name == "text_block.crease" for q in result.quantities)
    across = {"chart-paper": {"creases": [{"along": "height", "at": "220 mm"}]}}
    assert "crease-in-leaf" in rules(made(across))
    assert "crease-in-leaf" in rules(made({"chart-paper": {
        "creases": [{"along": "width", "at": "300 mm"}]}}, crease="ignore"))  # fmt: skip


def test_a_crease_beside_the_sheet_runs_through_nothing() -> None:
    stock = {"chart-paper": {"creases": [{"along": "width", "at": "9000 mm"}]}}
    assert "crease-in-leaf" not in rules(made(stock))


def test_off_cuts_weigh_what_their_area_does() -> None:
    result = made()
    folio = value(result, "folio.width") * value(result, "folio.height") * 2
    expected = (440 * 600 - folio) * 90e-6 * value(result, "sheets")
    assert value(result, "offcuts.mass") == pytest.approx(expected)


def test_a_whole_sheet_folded_down_turns_its_grain_each_time() -> None:
    result = made()
    facts = dict(result.facts)
    assert (value(result, "folded.twice.width"), value(result, "folded.twice.height")) == (
        220, 300,
    )  # fmt: skip
    assert facts["text_block.folded.once.grain"] == "along"
    assert facts["text_block.folded.twice.grain"] == "across"
    assert facts["text_block.folded.three_times.grain"] == "along"
    unknown = made({"chart-paper": {"grain": "unknown"}})
    assert dict(unknown.facts)["text_block.folded.once.grain"] == "unknown"


def test_a_slightly_smaller_leaf_that_doubles_the_yield_is_shown() -> None:
    problem = rules(made())["leaf-wastes-paper"]
    less = float(problem.text.split()[2])
    assert "would give 4 folios from a sheet instead of 2" in problem.text
    # It is true: that leaf does give four, and one a little larger does not.
    for cut, folios in ((less + 0.5, 4), (less - 0.6, 2)):
        leaf = {"width": f"{150 - cut} mm", "height": "205 mm"}
        assert value(made(leaf=leaf), "folios_per_sheet") == folios


def test_no_thrift_is_advised_that_makes_another_book() -> None:
    assert "leaf-wastes-paper" not in rules(made(leaf={"width": "170 mm", "height": "205 mm"}))
