"""Casing-in: at once, and hinge first."""

from __future__ import annotations

from typing import Any

import pytest

from case_books import CASE, book, mm
from foredge.contract import CasingInJob, Part, StageResult
from foredge.testing import check_plugin, check_result
from foredge_casing_in import at_once, hinge_first

MODULES = {"at-once": at_once, "hinge-first": hinge_first}


class Relief:
    """Options of a relief that is on the covered case when the book is cased in."""

    made_on = "covered-case"


def join(use: str, options: str = "", *, relief: bool = False, height: float = 211) -> StageResult:
    from dataclasses import replace

    of = book(f"{CASE}  casing_in: {{use: {use}{options}}}\n")
    if relief:
        of = replace(of, embellishment=(Part(None, Relief(), ("embellishment", 0)),))
    result: StageResult = MODULES[use].PLUGIN.join(
        CasingInJob(
            of,
            of.sections["case"].casing_in,
            board_width=mm(147, "board width"),
            board_height=mm(height, "board height"),
            joint=mm(8, "joint"),
            paste_down_width=mm(150, "paste-down width"),
            paste_down_height=mm(205, "paste-down height"),
            square_head=mm(3, "head"),
            square_tail=mm(2, "tail"),
            square_fore=mm(4, "fore"),
            hinge="sewn",
            covered="case.line-spine",
            block_ready="text-block.line-spine",
        )
    )
    check_result(result)
    return result


def text(result: StageResult) -> str:
    return "\n".join(s.template for o in result.operations for s in o.steps)


@pytest.mark.parametrize("module", MODULES.values(), ids=MODULES)
def test_contract(module: Any) -> None:
    check_plugin(module.PLUGIN)


@pytest.mark.parametrize("use", MODULES)
def test_ends_in_the_press(use: str) -> None:
    result = join(use)
    last = result.operations[-1]
    assert last.id == "case.press"
    assert last.wait is not None and last.wait.value == 12 * 3600
    facts = dict(result.facts)
    assert facts["case.cased_in"] == "case.case-in"
    assert last.after == ("case.case-in",)


@pytest.mark.parametrize("use", MODULES)
def test_moisture_stays_out_of_the_block(use: str) -> None:
    words = text(join(use))
    assert "waxed paper or film" in words
    assert "waste paper" in words


@pytest.mark.parametrize("use", MODULES)
def test_no_glue_on_the_spine(use: str) -> None:
    assert "o glue on the spine" in text(join(use))


@pytest.mark.parametrize("use", MODULES)
def test_paste_down_is_trimmed_for_its_stretch(use: str) -> None:
    # 1.5 % across the grain: 150 / 1.015 = 147.8 mm; along it nothing is taken off.
    result = join(use)
    assert result.quantity("case.paste_down.width").value == 148
    assert result.quantity("case.paste_down.height").value == 205


def test_hinge_sets_before_the_rest() -> None:
    result = join("hinge-first")
    hinge, rest, _ = result.operations
    assert rest.after == (hinge.id,)
    assert hinge.wait is not None and hinge.wait.value == 2 * 3600
    assert "clamps" in hinge.resources
    assert "release sheet" in text(result)
    assert join("hinge-first", ", strip: 30 mm").quantity("case.hinge_strip").value == 30


def test_both_wet_the_same_area() -> None:
    def water(use: str) -> float:
        adhesive = ", adhesive: pva"
        return sum(
            wetting.water.value
            for operation in join(use, adhesive).operations
            for wetting in operation.wettings
            if wetting.water is not None
        )

    assert water("at-once") == pytest.approx(water("hinge-first"))


@pytest.mark.parametrize("use", MODULES)
def test_no_weight_on_a_relief(use: str) -> None:
    result = join(use, relief=True)
    assert [problem.rule for problem in result.problems] == ["press-relief"]
    assert "Put no weight on the relief" in text(result)
    assert "{weight}" not in text(result)
    assert join(use).problems == ()


def test_a_big_book_gets_more_weight() -> None:
    def weight(height: float) -> float:
        press = join("at-once", height=height).operations[-1]
        return next(q.value for step in press.steps for q in step.quantities())

    assert weight(211) == 10_000
    assert weight(320) == 40_000
