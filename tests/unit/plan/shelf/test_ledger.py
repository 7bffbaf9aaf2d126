"""Need against shelf: what is short, by how much, and where it shows first."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from demo import DEMOS, Run, compiled
from foredge.contract import MASS, VOLUME
from money_books import PLAIN, build_with, compiled_with, line, rules

THREAD = {"kind": "thread", "size": "60/3", "material": "linen"}
TAPES = yaml.safe_load(PLAIN.read_text("utf-8"))["text_block"] | {
    "sewing": {"use": "tapes", "thread": "thread", "tape": "tape"}
}
each_demo = pytest.mark.parametrize("run", DEMOS, ids=str)


def tape(**more: Any) -> dict[str, Any]:
    return {"tape": {"kind": "tape", "width": "13 mm", **more}}


@each_demo
def test_every_use_of_every_step_is_in_the_ledger(run: Run) -> None:
    """Masses and lengths of all steps come out again, mixtures less their water."""
    build = compiled(run)
    lines = build.plan.ledger.lines
    steps = {step for one in lines for step in one.steps}
    using = {one.id for one in build.order if one.uses}
    assert using <= steps
    for one in lines:
        assert one.band.low <= one.need.value <= one.band.high or one.band.exact
        assert (one.short is None) == (one.shelf is None or one.buy is None)


def test_thread_is_short_by_the_high_end(tmp_path: Path) -> None:
    need = line(build_with(tmp_path), "thread")
    assert need.short is None and need.most.value == pytest.approx(need.band.high)
    between = (need.need.value + need.band.high) / 2
    run = compiled_with(tmp_path, {"thread": {"length": f"{between:.3f} mm"}})
    assert run.build is not None
    found = line(run.build, "thread")
    assert found.short is not None
    assert found.short.value == pytest.approx(need.band.high - between, abs=1e-2)
    assert found.first == "text-block.cut-thread"
    assert rules(run) == ["stock-short"]
    enough = compiled_with(tmp_path, {"thread": {"length": f"{need.band.high + 0.01:.3f} mm"}})
    assert rules(enough) == []


def test_thread_may_be_knotted_and_tape_may_not(tmp_path: Path) -> None:
    halves = {"length": "1200 mm", "more": ["1200 mm"]}
    assert rules(compiled_with(tmp_path, {"thread": halves})) == []
    run = compiled_with(tmp_path, tape(length="80 mm", more=["80 mm"] * 9), text_block=TAPES)
    assert rules(run) == ["stock-short"]
    assert run.build is not None
    found = line(run.build, "tape")
    assert found.shelf is not None and found.need.value < found.shelf.value
    assert found.pieces_short.startswith("2 × ")


def test_tape_is_bought_in_whole_lengths_of_which_none_is_joined(tmp_path: Path) -> None:
    sold = tape(price="0.90 EUR", sold_by="120 mm")
    found = line(build_with(tmp_path, sold, text_block=TAPES), "tape")
    assert found.shelf is None and found.buy is not None
    assert found.buy.units == 2  # a length of 120 mm holds one tape of 85 mm


def test_copies_multiply_the_need(tmp_path: Path) -> None:
    one, three = build_with(tmp_path), build_with(tmp_path, copies=3)
    for name in ("thread", "White glue (PVA)"):
        assert line(three, name).need.value == pytest.approx(3 * line(one, name).need.value)
        assert line(three, name).band.high == pytest.approx(3 * line(one, name).band.high)


def test_sheets_come_from_the_cutting_plan_and_are_told_once(tmp_path: Path) -> None:
    run = compiled_with(tmp_path, {"paper": {"count": 2}, "cloth": {"count": 1}}, copies=2)
    assert run.build is not None
    paper, cloth = line(run.build, "paper"), line(run.build, "cloth")
    assert paper.short is not None and paper.buy is not None
    assert paper.buy.units == paper.short.value == paper.need.value - 2
    told = [str(one) for one in run.diagnostics if "'paper'" in str(one)]
    assert len(told) == 1 and "[paper-short]" in told[0]
    assert cloth.short is not None and cloth.first == "case.cover"


def test_a_pack_of_sheets_is_bought_whole(tmp_path: Path) -> None:
    pack = {"paper": {"count": 1, "price": "4.00 EUR", "sold_by": 10}}
    paper = line(build_with(tmp_path, pack), "paper")
    assert paper.short is not None and paper.buy is not None and paper.buy.units is not None
    assert 10 * paper.buy.units >= paper.short.value > 10 * (paper.buy.units - 1)


def test_glue_in_millilitres_is_held_against_grams(tmp_path: Path) -> None:
    bare = line(build_with(tmp_path), "White glue (PVA)")
    assert (bare.need.dimension, bare.stock) == (MASS, None)
    jar = {"glue": {"kind": "supply", "material": "pva", "volume": "5 ml"}}
    found = line(build_with(tmp_path, jar), "glue")
    assert found.need.dimension == VOLUME
    assert found.need.value / 1000 * 1.08 == pytest.approx(bare.need.value)  # density 1.08 g/ml
    assert found.short is not None


def test_a_paint_by_mass_cannot_be_compared(tmp_path: Path) -> None:
    jar = {"paint": {"kind": "supply", "material": "wax polish", "mass": "50 g"}}
    run = compiled_with(tmp_path, jar, finishing=[{"use": "wax", "on": ["front"]}])
    assert "stock-not-comparable" in rules(run)
    assert run.build is not None and line(run.build, "paint").shelf is None


def test_what_is_done_takes_nothing_more(tmp_path: Path) -> None:
    short = {"thread": {"length": "1 m"}}
    before = ["check-grain", "cut-folios", "fold-folios", "collate-gatherings",
              "press-gatherings", "make-end-papers", "punch", "cut-thread"]  # fmt: skip
    done = [f"text-block.{step}" for step in before]
    assert "stock-short" in rules(compiled_with(tmp_path, short))
    assert "stock-short" not in rules(compiled_with(tmp_path, short, done=done))


def test_a_mixture_is_bought_as_its_parts() -> None:
    build = compiled(Run("clockmakers-daybook.yaml"))
    names = [one.material for one in build.plan.ledger.lines]
    assert not [name for name in names if " to 1" in name or " to 6" in name]
    cover = next(one for one in build.order if one.id == "case.cover")
    (use,) = cover.uses
    assert use.material == "PVA and wheat paste, 1 to 1"
    # By volume one to one; paste is one part of flour to six of water by volume.
    pva, paste, flour = 1.08, 1.03, 0.58
    share = paste / (pva + paste) * flour / (flour + 6)
    found = line(build, "Wheat flour")
    assert "case.cover" in found.steps
    assert found.need.value == pytest.approx(use.amount.value * share, rel=1e-3)


def test_pulp_comes_from_the_off_cuts() -> None:
    build = compiled(Run("saltmarsh-tide-book.yaml"))
    pulp = line(build, "Dry paper for pulp")
    assert pulp.from_off_cuts and pulp.shelf is not None and pulp.buy is None
    assert pulp.shelf.value == pytest.approx(build.quantity("text_block.offcuts.mass").value)


def test_every_need_has_a_name_and_can_be_explained() -> None:
    from foredge.explain import explain

    build = compiled(Run("saltmarsh-tide-book.yaml"))
    names = [one.name or "" for one in build.plan.ledger.quantities]
    assert len(set(names)) == len(names) and all(names)
    assert "spread of White glue" in explain(build, "stock.white-glue.need")


def test_a_size_that_runs_out_is_named_and_pointed_at(tmp_path: Path) -> None:
    """Two boards of 300 × 200 mm, and only a size that is sold: it is short, not the item."""
    small = {"width": "160 mm", "height": "220 mm", "count": 1, "price": "0.80 EUR"}
    board = {"width": "160 mm", "height": "210 mm", "price": "3.00 EUR", "more": [small]}
    run = compiled_with(tmp_path, {"board": board}, copies=2)
    assert run.build is not None
    board_short = [one for one in run.diagnostics if "'board' (" in str(one)]
    (told,) = [one for one in board_short if one.rule == "stock-short"]
    said = (tmp_path / "book.yaml").read_text("utf-8").splitlines()[told.span.line - 1]
    assert said.strip().removeprefix("- ") == "count: 1"
    assert "'board' (160 by 220 mm) is 2 boards short" in str(told)
    assert "Have 2 more ready before you begin" in str(told)
    (row,) = [one for one in run.build.plan.ledger.shopping if one.stock == "board"]
    assert (row.size, row.cheapest_of) == (1, 2)


def test_a_shortfall_is_told_in_figures_its_estimate_is_worth(tmp_path: Path) -> None:
    glue = {"kind": "supply", "material": "pva", "volume": "1 ml"}
    run = compiled_with(tmp_path, {"glue": glue}, copies=4)
    (told,) = [str(one) for one in run.diagnostics if "'glue'" in str(one)]
    assert run.build is not None
    found = line(run.build, "glue")
    assert found.short is not None and 10_000 < found.band.high - found.band.low < 100_000
    assert f"is {found.short.value / 1000:.0f} ml short" in told  # 5 ml or more either way
    assert f"may need {found.most.value / 1000:.0f} ml" in told
