"""Work that has begun: what is done is not planned again."""

from __future__ import annotations

from unit.plan.evenings.asking import DAY, TWO_EVENINGS, plan, rules
from work_books import op, planned


def test_what_is_done_is_not_planned_and_its_wait_goes_on() -> None:
    steps = (op("glue", 30, wait=DAY), op("cover", 40, after=("glue",)))
    work = plan(*steps, bench=TWO_EVENINGS, done={"glue": "2026-12-01 20:00"})
    assert [step.operation for step in work.steps] == ["case.cover"]
    assert work.steps[0].start == 2 * DAY + 1170
    over = plan(*steps, bench=TWO_EVENINGS, done={"glue": ""})
    assert over.steps[0].start == 1170
    long_ago = plan(*steps, bench=TWO_EVENINGS, done={"glue": "2026-11-20"})
    assert long_ago.steps[0].start == 1170


def test_nothing_is_planned_before_what_is_done() -> None:
    work = plan(
        op("glue"), op("cover", after=("glue",)), op("sew"),
        bench=TWO_EVENINGS, done={"glue": "2026-12-09"},
    )  # fmt: skip
    assert min(step.start for step in work.steps) == 9 * DAY + 1170


def test_what_comes_before_something_done_is_taken_as_done() -> None:
    steps = (op("fold"), op("sew", after=("fold",)), op("cover", after=("sew",)))
    work = plan(*steps, bench=TWO_EVENINGS, done={"sew": ""})
    assert work.taken_as_done == ("case.fold",)
    assert [step.operation for step in work.steps] == ["case.cover"]


def test_what_was_left_out_has_a_rescue() -> None:
    steps = (op("press", rescue="press it now"), op("sew", after=("press",)))
    _, (problem,) = planned(*steps, bench=TWO_EVENINGS, done={"sew": ""})
    assert problem.rule == "done-out-of-order"
    assert problem.path == ("done", 0)
    assert problem.remedy.endswith("press it now")
    assert rules(*steps, bench=TWO_EVENINGS, done={"sew": "", "press": ""}) == []


def test_a_name_under_done_that_is_nothing() -> None:
    _, (problem,) = planned(op("sew"), done={"sow": ""})
    assert problem.rule == "done-unknown"
    assert "case.sew" in problem.remedy


def test_everything_done() -> None:
    work = plan(op("sew"), bench=TWO_EVENINGS, done={"sew": ""})
    assert (work.steps, work.evenings, work.chain.operations) == ((), (), ())
