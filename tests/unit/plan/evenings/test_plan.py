"""The plan of the work: evenings, waits, copies, presses, what is done, what does not fit."""

from __future__ import annotations

import os
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st
from msgspec import structs
from msgspec.structs import replace

from foredge.contract import Bench, Operation, WorkPlan
from foredge.plan.evenings.bench_calendar import read_calendar
from work_books import ALL_DAY, number, op, planned, share

DAY = 1440
TWO_EVENINGS = Bench(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",))


def plan(*operations: Operation, **more: object) -> WorkPlan:
    made, problems = planned(*operations, **more)
    assert problems == []
    assert made.plan.work is not None
    return made.plan.work


def rules(*operations: Operation, **more: object) -> list[str]:
    return [problem.rule for problem in planned(*operations, **more)[1]]


def test_without_sessions_there_is_only_the_shortest_time() -> None:
    work = plan(op("glue", 30, wait=720), op("cover", 40, after=("glue",)))
    assert work.chain.minutes == 30 + 720 + 40
    assert work.chain.hands_on == 70
    assert (work.steps, work.evenings, work.start) == ((), (), "")


def test_what_dries_is_left_until_it_is_dry() -> None:
    work = plan(op("glue", 30, wait=720), op("cover", 40, after=("glue",)), bench=TWO_EVENINGS)
    glue, cover = work.step("case.glue"), work.step("case.cover")
    assert glue is not None
    assert cover is not None
    assert (glue.start, glue.finish, glue.ready) == (1170, 1200, 1920)
    assert cover.start == 2 * DAY + 1170
    assert str(work.when(cover.start)) == "2026-12-03 19:30:00"
    first, second = work.evenings
    assert first.resting == ("case.glue",)
    assert second.resting == ()
    assert work.proven


def test_an_evening_with_nothing_to_do_is_named() -> None:
    work = plan(op("clay", 30, wait=3 * DAY), op("seal", after=("clay",)), bench=TWO_EVENINGS)
    assert [evening.number for evening in work.idle] == [2]
    assert [len(evening.work) for evening in work.evenings] == [1, 0, 1]


def test_sewing_is_split_and_gluing_is_not() -> None:
    work = plan(op("glue", 100), op("sew", 100, after=("glue",), splits=True), bench=TWO_EVENINGS)
    sew = work.step("case.sew")
    assert sew is not None
    assert [(s.part, s.parts, s.end - s.begin) for s in sew.stretches] == [(1, 2, 20), (2, 2, 80)]
    work = plan(op("sew", 100), op("glue", 100, after=("sew",)), bench=TWO_EVENINGS)
    glue = work.step("case.glue")
    assert glue is not None
    assert [(s.begin, s.parts) for s in glue.stretches] == [(2 * DAY + 1170, 1)]


def test_a_step_longer_than_every_session() -> None:
    made, (problem,) = planned(op("cover", 121), bench=TWO_EVENINGS)
    assert problem.rule == "step-fits-no-session"
    assert problem.path == ("bench", "sessions")
    assert "'case.cover' takes 121 minutes" in problem.text
    assert "the longest session has 120" in problem.text
    assert rules(op("cover", 120), bench=TWO_EVENINGS) == []
    assert rules(op("sew", 500, splits=True), bench=TWO_EVENINGS) == []
    assert made.plan.work is not None  # the sheet can still say how long it takes


def test_outdoors_only_by_day() -> None:
    bench = Bench(sessions=("Mon 19:00-21:00", "Sat 15:00-17:00"), daylight="09:00-16:00")
    spray = plan(op("spray", 50, outdoors=True), bench=bench).step("case.spray")
    assert spray is not None
    assert spray.start == 5 * DAY + 15 * 60
    assert rules(op("spray", 61, outdoors=True), bench=bench) == ["step-fits-no-session"]
    dark = Bench(sessions=("Mon 19:00-21:00",), daylight="09:00-16:00")
    _, (problem,) = planned(op("spray", 50, outdoors=True), bench=dark)
    assert problem.text == "'case.spray' is done outdoors, and no session has daylight"
    unsaid = Bench(sessions=("Mon 19:00-21:00",))
    assert rules(op("spray", 50, outdoors=True), bench=unsaid) == ["daylight-unknown"]


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


def test_a_slower_hand() -> None:
    bench = Bench(sessions=(ALL_DAY,), slower=share(1.5))
    assert plan(op("fold", 20, splits=True), bench=bench).finish == 30


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


def test_too_many_copies_for_evenings() -> None:
    bench = Bench(sessions=(ALL_DAY,), presses=number(1))
    press = op("press", 1, wait=5, resources=("hands", "press"))
    made, (problem,) = planned(press, copies=300, bench=bench)
    assert problem.rule == "schedule-too-large"
    assert made.plan.work is not None


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


def test_when_it_may_be_closed_and_posted() -> None:
    facts = (("finishing.may_close", "case.open"), ("finishing.may_post", "case.shut"))
    work = plan(
        op("open", 5, wait=7 * DAY), op("shut", 5, wait=DAY, after=("open",)),
        bench=TWO_EVENINGS, facts=facts,
    )  # fmt: skip
    assert work.close == 1175 + 7 * DAY
    assert work.post == work.steps[1].ready


def test_slack() -> None:
    work = plan(
        op("boards", 20, wait=6 * DAY), op("paper", 20), op("join", 20, after=("boards", "paper")),
        bench=TWO_EVENINGS,
    )  # fmt: skip
    assert work.critical == ("case.boards", "case.join")
    paper = work.step("case.paper")
    assert paper is not None
    assert paper.latest == 2 * DAY + 1270


def test_the_sheets_order_is_kept_where_that_costs_nothing() -> None:
    steps = [op(name, 10) for name in ("a", "b", "c", "d")]
    work = plan(*steps, bench=TWO_EVENINGS)
    assert [step.operation for step in sorted(work.steps, key=lambda one: one.start)] == [
        f"case.{name}" for name in "abcd"
    ]


@pytest.mark.parametrize(
    ("start", "change"),
    [("2027-03-27", "clocks go forward in Europe"), ("2026-10-31", "clocks go back in America")],
)
@pytest.mark.parametrize("zone", ["UTC", "Europe/Berlin", "America/New_York"])
def test_the_weekend_on_which_the_clocks_change(
    start: str, change: str, zone: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Wall-clock time: 19:30 stays 19:30, whatever the zone of the machine."""
    monkeypatch.setenv("TZ", zone)
    bench = Bench(start=start, sessions=("Mon-Sun 19:30-21:30",))
    work = plan(op("glue", 30, wait=DAY), op("cover", 30, after=("glue",)), bench=bench)
    cover = work.step("case.cover")
    assert cover is not None
    assert work.when(cover.start).isoformat(timespec="minutes")[11:] == "20:00"
    assert cover.start == DAY + 1200


_NAMES = [f"s{k}" for k in range(7)]


@st.composite
def jobs(draw: st.DrawFn) -> tuple[list[Operation], Bench]:
    operations: list[Operation] = []
    for place in range(draw(st.integers(1, 7))):
        after = tuple(name for name in _NAMES[:place] if draw(st.integers(0, 3)) == 0)
        operations.append(
            op(
                _NAMES[place],
                draw(st.integers(1, 70)),
                draw(st.sampled_from([0, 0, 45, 720, 4000])),
                after=after,
                splits=draw(st.booleans()),
                resources=("hands", *(["press"] if draw(st.booleans()) else [])),
                outdoors=draw(st.integers(0, 4)) == 0,
            )
        )
    sessions = draw(
        st.lists(
            st.sampled_from(
                ["Mon-Fri 19:00-20:30", "Sat, Sun 10:00-12:00", "Tue and Thu 15:00-16:20"]
            ),
            min_size=1,
            max_size=3,
            unique=True,
        )
    )
    off = draw(st.lists(st.sampled_from(["2026-12-02", "2026-12-05", "2026-12-08"]), max_size=2))
    return operations, Bench(
        start="2026-12-01",
        sessions=tuple(sessions),
        off=tuple(sorted(set(off))),
        daylight="09:00-16:10",
        presses=number(draw(st.integers(1, 2))),
    )


@settings(max_examples=40, deadline=None)
@given(jobs(), st.integers(1, 3))
def test_no_work_outside_sessions_no_lag_broken_no_press_used_twice(
    job: tuple[list[Operation], Bench], copies: int
) -> None:
    """Checked from the plan alone, without the engine's own verifier."""
    operations, bench = job
    made, problems = planned(*operations, bench=bench, copies=copies)
    work = made.plan.work
    assert work is not None
    if problems:
        assert {one.rule for one in problems} <= {"step-fits-no-session"}
        assert work.steps == ()
        return
    calendar, _ = read_calendar(bench)
    assert calendar is not None
    windows = calendar.windows(work.finish // DAY + 1)
    known = {operation.id: operation for operation in operations}
    stretches = sorted((s.begin, s.end, s.operation) for t in work.steps for s in t.stretches)
    for begin, end, name in stretches:
        assert any(opens <= begin < end <= closes for opens, closes in windows)
        if known[name].outdoors:
            assert 540 <= begin % DAY < end % DAY <= 970
    for (_, end, _), (begin, _, _) in pairwise(stretches):
        assert end <= begin, "one pair of hands"
    steps = {step.operation: step for step in work.steps}
    assert steps.keys() == known.keys()
    for operation in operations:
        step = steps[operation.id]
        assert sum(s.end - s.begin for s in step.stretches) >= copies * (
            operation.hands_on.value / 60
        )
        for need in operation.after:
            assert step.start >= steps[need].ready
    assert [s for e in work.evenings for s in e.work] == sorted(
        (s for t in work.steps for s in t.stretches), key=lambda one: one.begin
    )


CODE = """
import sys
from foredge.compile import compile_spec
from foredge.registry import collect
registry, _ = collect(entry_points=False)
for spec in ("evenings", "sessions-near-enough"):
    print(compile_spec(f"tests/specs-valid/{spec}.yaml", registry).build.plan.work)
"""
ROOT = Path(__file__).parents[4]


def test_two_processes_make_one_plan() -> None:
    path = os.pathsep.join(str(ROOT / part) for part in ("compiler", "plugins"))
    outputs = {
        subprocess.run(
            [sys.executable, "-c", CODE],
            capture_output=True,
            check=True,
            cwd=ROOT,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": path},
        ).stdout
        for seed in ("0", "4711")
    }
    assert len(outputs) == 1
    assert b"Evening(" in outputs.pop()
