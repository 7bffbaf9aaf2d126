"""What must follow soon, and what cannot."""

from __future__ import annotations

from unit.plan.evenings.asking import DAY, TWO_EVENINGS, plan, rules
from work_books import op, planned


def test_what_must_follow_soon_does() -> None:
    """Casing in and pressing end in one session, though casing in would fit the one before."""
    work = plan(
        op("cover", 90),
        op("case-in", 20, after=("cover",)),
        op("press", 20, after=("case-in",), soon=("case-in", 15)),
        bench=TWO_EVENINGS,
    )
    press, joined = work.step("case.press"), work.step("case.case-in")
    assert press is not None
    assert joined is not None
    assert 0 <= press.start - joined.finish <= 15
    assert joined.start == 2 * DAY + 1170


def test_what_cannot_follow_soon_enough_is_a_warning() -> None:
    late = op("lay", 20, after=("mix",), soon=("mix", 2 * DAY - 121))
    before = (op("mix", 110), late)
    made, (problem,) = planned(*before, bench=TWO_EVENINGS)
    assert problem.rule == "sessions-too-far-apart"
    assert "it spoils" in problem.text
    assert made.plan.work is not None
    assert made.plan.work.steps
    near = op("lay", 20, after=("mix",), soon=("mix", 2 * DAY - 120))
    assert rules(op("mix", 110), near, bench=TWO_EVENINGS) == []


def test_what_can_be_kept_is_kept_beside_what_cannot() -> None:
    """The second layer of clay is too late; pressing still follows pasting down."""
    made, (problem,) = planned(
        op("mix", 100),
        op("layer-1", 20, wait=6 * DAY, after=("mix",), soon=("mix", 3 * DAY)),
        op("layer-2", 20, after=("layer-1",), soon=("mix", 4 * DAY)),
        op("case-in", 100, after=("layer-2",)),
        op("press", 20, after=("case-in",), soon=("case-in", 15)),
        bench=TWO_EVENINGS,
    )
    assert problem.rule == "sessions-too-far-apart"
    assert "'case.layer-2'" in problem.text
    work = made.plan.work
    assert work is not None
    pasted, pressed = work.step("case.case-in"), work.step("case.press")
    assert pasted is not None
    assert pressed is not None
    assert pressed.start - pasted.finish <= 15
