"""Plans that are long, large or open, and what is said where there is none."""

from __future__ import annotations

import sys
from itertools import pairwise

import pytest
from msgspec import structs

from foredge.contract import Bench, WorkPlan
from unit.plan.evenings.asking import TWO_EVENINGS, plan, rules
from work_books import ALL_DAY, number, op, planned


def test_a_plan_of_more_than_two_years() -> None:
    _, problems = planned(op("sew", 60 * 300, splits=True), bench=TWO_EVENINGS)
    assert problems == []
    _, (problem,) = planned(op("sew", 60 * 500, splits=True), bench=TWO_EVENINGS)
    assert problem.rule == "schedule-too-long"


def test_sessions_that_do_not_do_in_two_years() -> None:
    """There are hours enough, but one by day each week."""
    bench = Bench(sessions=("Mon-Fri 19:00-21:00", "Sat 15:00-17:00"), daylight="09:00-16:00")
    spray = op("spray", 60, outdoors=True)
    assert rules(spray, copies=100, bench=bench) == []
    _, (problem,) = planned(spray, copies=106, bench=bench)
    assert problem.rule == "no-schedule"
    assert "need 6360 minutes of 'hands', and its windows offer 6240" in problem.text


def through_one_press(copies: int) -> tuple[WorkPlan, list[str]]:
    """Pressing and pasting in one press, round the clock."""
    made, problems = planned(
        op("case-in", 3), op(
            "press", 2, wait=5, after=("case-in",), soon=("case-in", 15),
            resources=("hands", "press"),
        ),
        copies=copies,
        bench=Bench(sessions=(ALL_DAY,), presses=number(1)),
    )  # fmt: skip
    assert made.plan.work is not None
    return made.plan.work, [problem.rule for problem in problems]


def test_many_copies_are_planned_without_a_search() -> None:
    """Three hundred rounds through one press: each pasted and pressed, none at the same time."""
    work, problems = through_one_press(300)
    assert problems == []
    pasted, pressed = work.step("case.case-in"), work.step("case.press")
    assert pasted is not None
    assert pressed is not None
    assert len(pressed.stretches) == 300
    for one, other in zip(pasted.stretches, pressed.stretches, strict=True):
        assert 0 <= other.begin - one.end <= 15
    for one, other in pairwise(pressed.stretches):
        assert other.begin >= one.end + 5


def test_too_many_copies_for_evenings() -> None:
    work, problems = through_one_press(900)
    assert problems == ["schedule-too-large"]
    assert work.steps == ()


def test_optimal_proves_what_quick_leaves_open() -> None:
    """Three copies, one press, two jobs in it: the quick search finds a plan and proves nothing."""
    press = {"resources": ("hands", "press")}
    steps = (
        op("fold", 25), op("flat", 5, 720, after=("fold",), **press), op("boards", 40, 2900),
        op("case-in", 25, after=("flat", "boards")),
        op("press", 10, 720, after=("case-in",), soon=("case-in", 15), **press),
    )  # fmt: skip
    quick = plan(*steps, bench=TWO_EVENINGS, copies=3)
    optimal = plan(*steps, bench=structs.replace(TWO_EVENINGS, plan="optimal"), copies=3)
    assert not quick.proven
    assert optimal.proven
    assert optimal.finish <= quick.finish


def test_optimal_needs_its_extra(monkeypatch: pytest.MonkeyPatch) -> None:
    bench = Bench(sessions=(ALL_DAY,), plan="optimal")
    assert rules(op("sew"), bench=bench) == []
    for name in [name for name in sys.modules if name.startswith("ortools")] + ["ortools"]:
        monkeypatch.setitem(sys.modules, name, None)
    _, (problem,) = planned(op("sew"), bench=bench)
    assert problem.rule == "optimal-not-installed"
    assert "foredge[optimal]" in problem.remedy
