"""The cutting plan of whole books: what is cut from which sheet, in which round."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

import pytest
import yaml

from demo import DEMOS, Run, compiled, registry
from foredge.compile import Compiled, compile_spec
from foredge.contract import Cutting, Flat
from foredge.plan.cutting import CutPlan, Unplaced, faults
from foredge.plan.sheets.pool import pool_of, rests_on_gate

ROOT = Path(__file__).parents[4]
VALID = ROOT / "tests" / "specs-valid"
each_demo = pytest.mark.parametrize("run", DEMOS, ids=str)
SALTMARSH = Run("saltmarsh-tide-book.yaml")


def changed(folder: Path, stock: dict[str, Any], **top: Any) -> Compiled:
    data = yaml.safe_load((VALID / "plain-journal.yaml").read_text())
    for name, fields in stock.items():
        data["stock"].setdefault(name, {}).update(fields)
    data.update(top)
    file = folder / "book.yaml"
    file.write_text(yaml.safe_dump(data, sort_keys=False))
    return compile_spec(str(file), registry())


def cutting(run: Compiled) -> Cutting:
    assert run.build is not None, run.diagnostics
    return run.build.plan.cutting


def placed(cuts: Cutting) -> dict[str, int]:
    """Pieces that are cut, by name, over all sheets."""
    found: dict[str, int] = {}
    for sheet in cuts.sheets:
        for placement in sheet.layout.placements:
            name = placement.piece.name
            found[name] = found.get(name, 0) + sheet.same
    return found


@each_demo
def test_every_piece_with_a_stock_is_cut_once_for_each_copy(run: Run) -> None:
    build = compiled(run)
    wanted = {
        piece.name: int(piece.count.value * build.book.copies.value)
        for piece in build.whole.pieces
        if isinstance(build.book.stock.get(piece.stock or ""), Flat)
    }
    assert placed(build.plan.cutting) == wanted


@each_demo
def test_every_layout_passes_the_independent_checker(run: Run) -> None:
    build = compiled(run)
    for sheet in build.plan.cutting.sheets:
        placed = Counter(placement.piece for placement in sheet.layout.placements)
        rest = [Unplaced(piece, piece.count - count) for piece, count in placed.items()]
        item = build.book.stock[sheet.stock]
        assert isinstance(item, Flat)
        kerf = 0.0 if item.kerf is None else item.kerf.value
        plan = CutPlan(used=[sheet.layout], unplaced=rest)
        assert faults(plan, [sheet.layout.sheet], list(placed), kerf) == []


@each_demo
def test_the_grain_of_every_piece_lies_as_the_sheet_has_it(run: Run) -> None:
    build = compiled(run)
    sources = {piece.name: piece for piece in build.whole.pieces}
    for sheet in build.plan.cutting.sheets:
        item = build.book.stock[sheet.stock]
        assert isinstance(item, Flat)
        for placement in sheet.layout.placements:
            piece = sources[placement.piece.name]
            if piece.grain == "any" or item.grain == "unknown":
                continue
            upright = piece.grain == item.grain
            width = piece.width.value if upright else piece.height.value
            assert placement.width == pytest.approx(width)


@each_demo
def test_the_text_block_counts_the_sheets_that_the_plan_cuts(run: Run) -> None:
    build = compiled(run)
    paper = build.book.sections["text_block"].paper
    used = {need.stock: need.used for need in build.plan.cutting.needs}
    folio = {placement.piece.name for placement in build.plan.cutting.sheets[0].layout.placements}
    if folio == {"text_block.folio"}:
        assert used[paper] >= build.quantity("text_block.sheets").value


def test_what_waits_for_a_gate_is_cut_after_what_does_not() -> None:
    build = compiled(SALTMARSH)
    kraft = [sheet for sheet in build.plan.cutting.sheets if sheet.stock == "wrapping-kraft"]
    first, later = kraft
    assert not first.gates and not first.of
    large = max(first.layout.off_cuts, key=lambda off: off.area)
    assert later.gates == {"G1", "G2"} and later.of == f"wrapping-kraft 1{large.name}"


def test_a_reading_never_moves_what_is_cut_already(tmp_path: Path) -> None:
    spec = (ROOT / "specs" / "saltmarsh-tide-book.yaml").read_text()
    file = tmp_path / "saltmarsh-tide-book.yaml"
    file.write_text(spec + "\nmeasured: {board: 3.4 mm, joint_cloth: 0.72 mm}\n")
    before = compiled(SALTMARSH).plan.cutting.sheets
    after = cutting(compile_spec(str(file), registry())).sheets
    firm = [sheet.layout for sheet in before if not sheet.gates]
    assert firm == [sheet.layout for sheet in after[: len(before)] if sheet.layout in firm]


def test_a_blank_does_not_wait_for_the_gate_it_is_cut_before() -> None:
    build = compiled(SALTMARSH)
    sizes = {piece.name: piece.width for piece in build.whole.pieces}
    assert not rests_on_gate(sizes["case.layer"])
    assert rests_on_gate(sizes["case.covering"])


def test_sheets_cut_alike_are_told_once() -> None:
    build = compiled(SALTMARSH)
    (paper,) = [sheet for sheet in build.plan.cutting.sheets if sheet.stock == "chart-paper"]
    assert paper.same == 20 and len(paper.layout.placements) == 2


def test_copies_are_cut_together(tmp_path: Path) -> None:
    one = cutting(changed(tmp_path, {}))
    three = cutting(changed(tmp_path, {"cloth": {"width": "900 mm", "height": "800 mm"}}, copies=3))
    assert placed(three) == {name: 3 * count for name, count in placed(one).items()}
    # Two end-papers a book, three to a sheet: two sheets for three books, not three.
    ends = {need.stock: need.used for need in three.needs}["end-sheets"]
    assert ends == 2


def test_what_the_shelf_lacks_is_bought_in_whole_sheets(tmp_path: Path) -> None:
    cuts = cutting(changed(tmp_path, {"paper": {"count": 5}}))
    need = next(need for need in cuts.needs if need.stock == "paper")
    # 24 folios, three to a sheet: eight sheets, five on the shelf.
    assert (need.used, need.shelf, need.buy) == (8, 5, 3)
    assert need.first == "text_block.folio"
    assert sum(sheet.bought for sheet in cuts.sheets) == 3


def test_other_sizes_of_the_same_stuff_are_used(tmp_path: Path) -> None:
    more = [{"width": "300 mm", "height": "420 mm", "count": 6}]
    cuts = cutting(changed(tmp_path, {"paper": {"count": 4, "more": more}}))
    used = {need.size: need.used for need in cuts.needs if need.stock == "paper"}
    assert used == {0: 4, 1: 6}
    assert not any(need.buy for need in cuts.needs)


def test_nothing_lies_on_a_stain_an_edge_or_a_crease(tmp_path: Path) -> None:
    zone = {"x": "100 mm", "y": "60 mm", "width": "30 mm", "height": "40 mm"}
    fields = {
        "width": "900 mm",
        "keep_out": [zone],
        "edge": "5 mm",
        "creases": [{"along": "height", "at": "700 mm"}],
    }
    cuts = cutting(changed(tmp_path, {"cloth": fields}))
    (sheet,) = [sheet for sheet in cuts.sheets if sheet.stock == "cloth"]
    for one in sheet.layout.placements:
        right, tail = one.x + one.width, one.y + one.height
        assert one.x >= 5 and one.y >= 5 and right <= 895 and tail <= 395
        assert right <= 100 or one.x >= 130 or tail <= 60 or one.y >= 100
        assert not one.x < 700 < right


def test_an_old_crease_becomes_the_fold_of_a_folio(tmp_path: Path) -> None:
    crease = [{"along": "height", "at": "210 mm"}]
    cuts = cutting(changed(tmp_path, {"paper": {"creases": crease}}))
    (sheet,) = [sheet for sheet in cuts.sheets if sheet.stock == "paper"]
    middles = {one.x + one.width / 2 for one in sheet.layout.placements}
    assert middles == {210.0}


def test_the_kerf_is_lost_between_pieces(tmp_path: Path) -> None:
    # 594 mm give three folios of 194 mm; with 10 mm lost at each cut, only two.
    cuts = cutting(changed(tmp_path, {"paper": {"kerf": "10 mm"}}))
    need = next(need for need in cuts.needs if need.stock == "paper")
    assert need.used == 12


def test_of_two_ways_an_unknown_grain_takes_one_for_all_pieces(tmp_path: Path) -> None:
    run = changed(tmp_path, {"board": {"grain": "unknown", "width": "290 mm", "height": "200 mm"}})
    (sheet,) = [sheet for sheet in cutting(run).sheets if sheet.stock == "board"]
    assert len({(one.width, one.height) for one in sheet.layout.placements}) == 1
    assert [one.rule for one in run.diagnostics] == ["grain-unknown"]


def test_left_overs_narrower_than_asked_are_waste(tmp_path: Path) -> None:
    wide = cutting(changed(tmp_path, {}, bench={"keep_from": "150 mm"}))
    for sheet in wide.sheets:
        for off in sheet.layout.off_cuts:
            assert min(off.width, off.height) >= 150


def test_the_pool_counts_only_whole_sheets_it_may_need(tmp_path: Path) -> None:
    build = changed(tmp_path, {}).build
    assert build is not None
    item = build.book.stock["paper"]
    assert isinstance(item, Flat)
    pool = pool_of(build, "paper", item, "height")
    assert [sheet.count for sheet in pool.sheets] == [24]
    assert [one.piece.count for one in pool.wanted] == [24]
