"""A strip that is cut off first, so that a crease becomes a fold, is kept like any off-cut."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings, strategies as st

from foredge.contract import CutSheet, Flat
from foredge.emit.cutting import cut_views
from foredge.emit.cutting_drawings import cut_drawings
from foredge.plan.cutting import CutPlan, Piece, Rect, Sheet, Unplaced, faults, plan_cuts
from foredge.plan.sheets.strip import strips_kept
from money_books import build_with

CREASE = [{"along": "height", "at": "210 mm"}]


def sheet_of(folder: Path, paper: dict[str, Any], **top: Any) -> CutSheet:
    build = build_with(folder, {"paper": paper}, **top)
    return next(one for one in build.plan.cutting.sheets if one.stock == "paper")


def test_the_strip_beside_a_crease_is_lettered_and_drawn(tmp_path: Path) -> None:
    """Folios 285 mm wide about a crease at 210 mm: 67.5 mm are cut off the left side first."""
    build = build_with(tmp_path, {"paper": {"creases": CREASE}})
    sheet = next(one for one in build.plan.cutting.sheets if one.stock == "paper")
    strip = next(off for off in sheet.layout.off_cuts if off.x == 0 and off.width == 67.5)
    assert strip.height == 594
    view = next(one for one in cut_views(build) if one.stock == "paper")
    assert f"Left: off-cut {strip.name}." in view.lines[0].text
    assert any(left.startswith(f"{strip.name}: 67.5 × 594 mm") for left in view.left)
    drawing = next(one for one in cut_drawings(build) if one.name == view.key)
    words = {getattr(item, "text", "") for item in drawing.items}
    assert f"off-cut {strip.name}" in words
    letters = [off.name for off in sheet.layout.off_cuts]
    assert len(set(letters)) == len(letters)


def test_a_strip_too_narrow_to_keep_stays_waste(tmp_path: Path) -> None:
    sheet = sheet_of(tmp_path, {"creases": CREASE}, bench={"keep_from": "68 mm"})
    assert not any(off.x == 0 and off.width == 67.5 for off in sheet.layout.off_cuts)
    assert sheet.layout.cuts[0].first.off_cut is None


def test_a_spoiled_strip_stays_waste(tmp_path: Path) -> None:
    stain = {"x": "20 mm", "y": "100 mm", "width": "20 mm", "height": "20 mm"}
    sheet = sheet_of(tmp_path, {"creases": CREASE, "keep_out": [stain]})
    for off in sheet.layout.off_cuts:
        right, tail = off.x + off.width, off.y + off.height
        assert right <= 20 or off.x >= 40 or tail <= 100 or off.y >= 120


def test_a_torn_edge_is_not_kept_with_the_strip() -> None:
    torn = (Rect(0, 0, 5, 200), Rect(0, 0, 200, 5))
    sheet = Sheet("s", 200, 200, 1, keep_out=(*torn, Rect(0, 0, 60, 200)))
    (used,) = plan_cuts([sheet], [Piece("p", 140, 195, 1, False)], min_off_cut=20).used
    assert not used.off_cuts
    (strip,) = strips_kept(used, torn, 20).off_cuts
    assert (strip.x, strip.y, strip.width, strip.height) == (5, 5, 55, 195)


@pytest.mark.parametrize("fields", [{}, {"edge": "5 mm"}, {"kerf": "2 mm"}])
def test_the_layout_still_passes_the_independent_checker(
    tmp_path: Path, fields: dict[str, str]
) -> None:
    build = build_with(tmp_path, {"paper": {"creases": CREASE, **fields}})
    for sheet in build.plan.cutting.sheets:
        item = build.book.stock[sheet.stock]
        assert isinstance(item, Flat)
        placed = [one.piece for one in sheet.layout.placements]
        rest = [Unplaced(one, one.count - placed.count(one)) for one in dict.fromkeys(placed)]
        kerf = 0.0 if item.kerf is None else item.kerf.value
        plan = CutPlan(used=[sheet.layout], unplaced=rest)
        assert faults(plan, [sheet.layout.sheet], list(dict.fromkeys(placed)), kerf) == []


@settings(deadline=None, max_examples=60)
@given(
    strip=st.integers(1, 60),
    stain=st.tuples(st.integers(0, 190), st.integers(0, 190), st.integers(1, 40)),
    least=st.integers(0, 40),
    size=st.tuples(st.integers(20, 120), st.integers(20, 120)),
)
def test_what_is_kept_is_clean_large_enough_and_never_twice(
    strip: int, stain: tuple[int, int, int], least: int, size: tuple[int, int]
) -> None:
    spoiled = Rect(stain[0], stain[1], stain[2], stain[2])
    sheet = Sheet("s", 200, 200, 1, keep_out=(spoiled, Rect(0, 0, strip, 200)))
    pieces = [Piece("p", *size, 2, True)]
    for used in plan_cuts([sheet], pieces, effort=0.05, min_off_cut=least).used:
        kept = strips_kept(used, [spoiled], least)
        assert kept.off_cuts[: len(used.off_cuts)] == used.off_cuts
        placed = len(kept.placements)
        plan = CutPlan([kept], [Unplaced(pieces[0], 2 - placed)])
        assert faults(plan, [sheet], pieces, 0.0) == []
        for off in kept.off_cuts:
            assert min(off.width, off.height) >= least
            assert (
                off.x + off.width <= spoiled.x
                or off.x >= spoiled.x + spoiled.width
                or off.y + off.height <= spoiled.y
                or off.y >= spoiled.y + spoiled.height
            )
        assert strips_kept(kept, [spoiled], least) == kept
