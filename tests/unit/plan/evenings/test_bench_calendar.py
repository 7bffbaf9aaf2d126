from datetime import date, timedelta

from hypothesis import given, strategies as st

from foredge.contract import Bench
from foredge.plan.evenings.bench_calendar import BenchCalendar, read_calendar
from foredge.plan.evenings.sessions import Session

DAY = 1440
EVENING = Session(frozenset({1, 3}), 1170, 1290)


def calendar(**more: object) -> BenchCalendar:
    found, problems = read_calendar(Bench(**more))  # type: ignore[arg-type]
    assert found is not None
    assert not problems
    return found


def test_windows_count_from_the_first_day() -> None:
    # 1 December 2026 is a Tuesday.
    bench = calendar(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",))
    assert bench.windows(7) == [(1170, 1290), (2 * DAY + 1170, 2 * DAY + 1290)]
    bench = calendar(start="2026-12-02", sessions=("Tue and Thu 19:30-21:30",))
    assert bench.windows(7) == [(DAY + 1170, DAY + 1290), (6 * DAY + 1170, 6 * DAY + 1290)]


def test_without_a_first_day_the_week_begins_on_monday() -> None:
    assert calendar(sessions=("Tue 19:30-21:30",)).windows(8) == [(DAY + 1170, DAY + 1290)]


def test_sessions_of_a_day_that_touch_are_one() -> None:
    bench = calendar(sessions=("Mon 19:00-20:00", "Mon 20:00-21:00", "Mon 20:30-20:45"))
    assert bench.windows(1) == [(1140, 1260)]
    assert bench.week == 120


def test_days_off() -> None:
    bench = calendar(start="2026-12-01", sessions=("Mon-Sun 19:00-20:00",), off=("2026-12-03",))
    assert [begin // DAY for begin, _ in bench.windows(5)] == [0, 1, 3, 4]


def test_nothing_is_planned_before_now() -> None:
    bench = BenchCalendar((EVENING,), date(2026, 12, 1), now=1200)
    assert bench.windows(3) == [(1200, 1290), (2 * DAY + 1170, 2 * DAY + 1290)]
    assert BenchCalendar((EVENING,), date(2026, 12, 1), now=1290).windows(2) == []


def test_light_is_all_day_where_nobody_says() -> None:
    assert BenchCalendar((EVENING,)).light(2) == [(0, DAY), (DAY, 2 * DAY)]
    assert BenchCalendar((EVENING,), daylight=(540, 960)).light(1) == [(540, 960)]


def test_a_bench_without_sessions_has_no_calendar() -> None:
    assert read_calendar(Bench(start="2026-12-01")) == (None, [])


def test_days_off_that_are_likely_slips() -> None:
    _, problems = read_calendar(
        Bench(
            start="2026-12-01",
            sessions=("Mon 19:00-20:00",),
            off=("2026-11-30", "2026-12-24", "2026-12-24", "2026-12-23", "2027-01-01"),
        )
    )
    assert [(one.rule, one.path[-1]) for one in problems] == [
        ("off-before-start", 0),
        ("off-out-of-order", 2),
        ("off-out-of-order", 3),
    ]
    _, (problem,) = read_calendar(Bench(sessions=("Mon 19:00-20:00",), off=("2026-12-24",)))
    assert problem.rule == "off-without-start"


@given(st.dates(date(2020, 1, 1), date(2040, 1, 1)), st.integers(1, 400))
def test_every_window_lies_on_its_weekday(start: date, days: int) -> None:
    """The weekday comes from the calendar itself, leap years and clock changes included."""
    bench = BenchCalendar((EVENING,), start)
    windows = bench.windows(days)
    for begin, end in windows:
        assert (start + timedelta(days=begin // DAY)).weekday() in (1, 3)
        assert end - begin == 120
    assert len(windows) == sum((start + timedelta(days=d)).weekday() in (1, 3) for d in range(days))
