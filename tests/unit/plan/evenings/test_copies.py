"""Several copies, and what they share: presses, weights, room to dry."""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from foredge.contract import Bench
from unit.plan.evenings.asking import TWO_EVENINGS, plan
from work_books import ALL_DAY, number, op


def test_copies_take_their_time_and_a_batch_does_not() -> None:
    work = plan(op("fold", 20), op("mix", 20, batch=True), copies=3, bench=TWO_EVENINGS)
    assert sum(s.end - s.begin for s in work.step("case.fold").stretches) == 60  # type: ignore[union-attr]
    assert sum(s.end - s.begin for s in work.step("case.mix").stretches) == 20  # type: ignore[union-attr]


def test_copies_that_fit_no_session_together_are_done_in_turn() -> None:
    cover = plan(op("cover", 50), copies=3, bench=TWO_EVENINGS).step("case.cover")
    assert cover is not None
    assert [s.end - s.begin for s in cover.stretches] == [100, 50]


@pytest.mark.parametrize(("presses", "nights"), [(1, 3), (2, 2), (3, 1)])
def test_one_press_holds_one_book_a_night(presses: int, nights: int) -> None:
    bench = Bench(sessions=(ALL_DAY,), presses=number(presses))
    press = op("press", 10, wait=720, resources=("hands", "press"))
    step = plan(press, copies=3, bench=bench).step("case.press")
    assert step is not None
    assert len(step.stretches) == nights
    for one, other in pairwise(step.stretches):
        assert other.begin >= one.end + 720


def test_two_jobs_do_not_share_a_press() -> None:
    both = [op(name, 10, wait=720, resources=("hands", "press")) for name in ("block", "case")]
    one, two = (plan(*both, bench=Bench(sessions=(ALL_DAY,), presses=number(n))) for n in (1, 2))
    assert one.finish >= 10 + 720 + 10
    assert two.finish == 20


def test_weights_are_counted_where_the_bench_counts_them() -> None:
    both = [op(name, 10, wait=720, resources=("hands", "weights")) for name in ("a", "b")]
    assert plan(*both, bench=Bench(sessions=(ALL_DAY,))).finish == 20
    one = Bench(sessions=(ALL_DAY,), weights=number(1))
    assert plan(*both, bench=one).finish >= 10 + 720 + 10
    assert plan(*both, bench=replace(one, weights=number(2))).finish == 20


@pytest.mark.parametrize(("space", "apart"), [(1, True), (2, False)])
def test_two_things_lie_out_to_dry_only_where_there_is_room(space: int, apart: bool) -> None:
    both = [op(name, 10, wait=720) for name in ("a", "b")]
    bench = Bench(sessions=(ALL_DAY,), space=number(space))
    assert (plan(*both, bench=bench).finish >= 10 + 720 + 10) is apart
    assert plan(*both, bench=Bench(sessions=(ALL_DAY,))).finish == 20
    # What is in the press takes no room beside it.
    pressed = op("press", 10, wait=720, resources=("hands", "press"))
    assert plan(pressed, op("c", 10, wait=720), bench=replace(bench, space=number(1))).finish == 20


def test_copies_are_pasted_and_pressed_one_by_one() -> None:
    work = plan(
        op("case-in", 30),
        op(
            "press", 10, 720, after=("case-in",), soon=("case-in", 15),
            resources=("hands", "press"),
        ),
        copies=2,
        bench=Bench(sessions=(ALL_DAY,), presses=number(1)),
    )  # fmt: skip
    pasted, pressed = (work.step(f"case.{name}") for name in ("case-in", "press"))
    assert pasted is not None
    assert pressed is not None
    for one, other in zip(pasted.stretches, pressed.stretches, strict=True):
        assert 0 <= other.begin - one.end <= 15
