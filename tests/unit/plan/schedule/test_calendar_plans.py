"""Random bench plans: nothing outside sessions, nothing over capacity, every lag kept."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings, strategies as st

from foredge.plan.schedule import Calendar, Lag, Schedule, Task, solve, verify

DAY = 1440
EVENINGS = [(d * DAY + 1170, d * DAY + 1290) for d in range(60) if d % 7 in (1, 3)]
DAYLIGHT = [(d * DAY + 480, d * DAY + 1230) for d in range(60)]
CALENDAR = Calendar({"bench": EVENINGS, "daylight": DAYLIGHT})
CAPACITY = {"hands": 1, "press": 1}

plans = st.integers(2, 9).flatmap(
    lambda count: st.tuples(
        st.lists(
            st.tuples(
                st.integers(1, 12).map(lambda k: 10 * k),
                st.sampled_from([("bench",), ("bench",), ("bench", "daylight"), ()]),
                st.booleans(),
                st.booleans(),
            ),
            min_size=count,
            max_size=count,
        ),
        st.lists(
            st.tuples(
                st.integers(0, count - 1),
                st.integers(0, count - 1),
                st.sampled_from([0, 0, 60, 720, 2880]),
                st.sampled_from([None, None, 30, 6000]),
                st.booleans(),
            ),
            max_size=count,
        ),
    )
)
Plan = tuple[
    list[tuple[int, tuple[str, ...], bool, bool]], list[tuple[int, int, int, int | None, bool]]
]


def built(plan: Plan) -> tuple[list[Task], list[Lag]]:
    tasks = []
    for k, (minutes, within, split, pressed) in enumerate(plan[0]):
        demand = {"hands": int("bench" in within), "press": int(pressed)}
        held = ("press",) if k % 2 and split else ()
        tasks.append(Task(f"t{k}", minutes, demand, within, split, held))
    lags = [
        Lag(f"t{min(i, j)}", f"t{max(i, j)}", least, None if extra is None else least + extra, late)
        for i, j, least, extra, late in plan[1]
        if i != j
    ]
    return tasks, lags


def check(tasks: list[Task], lags: list[Lag], result: Schedule) -> None:
    assert verify(tasks, CAPACITY, lags, result, CALENDAR) == []
    for task in tasks:
        for begin, end in result.segments[task.id]:
            if "bench" in task.within:
                assert any(a <= begin and end <= b for a, b in EVENINGS)
        assert result.slack[task.id] >= 0
    last = [t.id for t in tasks if result.segments[t.id][-1][1] == result.finish]
    assert any(result.slack[name] == 0 for name in last)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans)
def test_every_plan_called_feasible_keeps_everything(plan: Plan) -> None:
    tasks, lags = built(plan)
    result = solve(tasks, CAPACITY, lags, calendar=CALENDAR)
    if result.feasible:
        check(tasks, lags, result)
    else:
        assert result.reason


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans)
def test_the_exact_method_is_never_later(plan: Plan) -> None:
    tasks, lags = built(plan)
    quick = solve(tasks, CAPACITY, lags, calendar=CALENDAR)
    exact = solve(tasks, CAPACITY, lags, calendar=CALENDAR, method="optimal")
    if exact.feasible:
        check(tasks, lags, exact)
    if quick.feasible:
        assert exact.feasible
        assert exact.finish <= quick.finish
        assert not quick.proven or quick.finish == exact.finish
    elif quick.proven:
        assert not exact.feasible


@settings(max_examples=40, deadline=None)
@given(st.lists(st.integers(1, 12), min_size=1, max_size=8))
def test_waiting_runs_through_the_night(tens: list[int]) -> None:
    """Each coat dries a day; the next session that has room for the next coat takes it."""
    tasks = [Task(f"c{k}", 10 * n, {"hands": 1}, ("bench",)) for k, n in enumerate(tens)]
    lags = [Lag(f"c{k}", f"c{k + 1}", DAY, from_finish=True) for k in range(len(tens) - 1)]
    result = solve(tasks, {"hands": 1}, lags, calendar=CALENDAR)
    expected, moment = {}, 0
    for task in tasks:
        start = min(max(a, moment) for a, b in EVENINGS if max(a, moment) + task.duration <= b)
        expected[task.id] = start
        moment = start + task.duration + DAY
    assert result.start == expected
    assert result.proven
