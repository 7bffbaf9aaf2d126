"""The plan of the work: evenings, waits, long and split steps, daylight, slack, clocks."""

from __future__ import annotations

import pytest

from foredge.contract import Bench, WorkPlan
from unit.plan.evenings.asking import DAY, TWO_EVENINGS, plan, rules
from work_books import ALL_DAY, op, planned, share


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


def parts_of(work: WorkPlan, name: str) -> list[int]:
    """Minutes of each stretch of ``case.<name>``."""
    step = work.step(f"case.{name}")
    assert step is not None
    return [one.end - one.begin for one in step.stretches]


def test_nothing_is_begun_for_a_few_minutes_where_that_saves_nothing() -> None:
    """The glue is the long way; the boards would be begun one minute before the session ends."""
    work = plan(
        op("soak", 119),
        op("boards", 40, after=("soak",), splits=True),
        op("dry", 20, wait=3 * DAY, after=("soak",)),
        op("paint", 60, after=("dry", "boards")),
        bench=TWO_EVENINGS,
    )
    assert parts_of(work, "boards") == [40]


def test_the_last_minutes_are_used_where_the_end_hangs_on_them() -> None:
    work = plan(
        op("soak", 115),
        op("boards", 125, after=("soak",), splits=True),
        bench=TWO_EVENINGS,
    )
    assert parts_of(work, "boards") == [5, 120]


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


def test_a_slower_hand() -> None:
    bench = Bench(sessions=(ALL_DAY,), slower=share(1.5))
    assert plan(op("fold", 20, splits=True), bench=bench).finish == 30


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
