"""The verifier accepts what is right and names what is wrong."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, strategies as st

from foredge.plan.schedule import Calendar, Lag, Schedule, Task, solve, verify

TASKS = [
    Task("mix", 20, {"hands": 1}, ("bench",)),
    Task("glue", 30, {"hands": 1}, ("bench",)),
    Task("press", 100, {"press": 1}),
    Task("sew", 90, {"hands": 1, "frame": 1}, ("bench",), split=True, holds=("frame",)),
]
CAPACITY = {"hands": 1, "press": 1, "frame": 1}
LAGS = [Lag("mix", "glue", 20, 45), Lag("glue", "press", 0, 10, from_finish=True)]
BENCH = Calendar({"bench": [(0, 60), (200, 260), (400, 460), (600, 660)]})
GOOD = solve(TASKS, CAPACITY, LAGS, calendar=BENCH)


def faults(**change: object) -> list[str]:
    return verify(TASKS, CAPACITY, LAGS, replace(GOOD, **change), BENCH)  # type: ignore[arg-type]


def moved(name: str, *pieces: tuple[int, int]) -> dict[str, object]:
    segments = {**GOOD.segments, name: list(pieces)}
    start = {**GOOD.start, name: pieces[0][0]}
    return {
        "start": start,
        "segments": segments,
        "finish": max(p[-1][1] for p in segments.values()),
    }


def test_the_solved_schedule_is_clean() -> None:
    assert GOOD.feasible
    assert faults() == []


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (moved("press", (900, 1000)), "task 'press' starts 850 minutes after task 'glue' finishes"),
        (moved("mix", (600, 620)), "task 'glue' starts -580 minutes after task 'mix' starts, less"),
        (moved("mix", (50, 70)), "task 'mix' runs from 50 to 70, outside 'bench'"),
        (moved("mix", (-20, 0)), "task 'mix' starts at -20, before minute 0"),
        (moved("mix", (0, 10)), "task 'mix' is worked on for 10 of 20 minutes"),
        (moved("mix", (0, 10), (30, 40)), "task 'mix' may not be split but has 2 segments"),
        (moved("sew", (0, 60), (200, 230)), "2 of 'hands' are used at minute 0, and there are 1"),
        (moved("sew", (400, 450), (600, 640)), "'sew' pauses from 450 to 600 inside its windows"),
        ({"finish": 1}, "the finish is given as 1, but the last task ends at"),
        ({"start": {**GOOD.start, "mix": 1}}, "task 'mix' starts at 1, its first segment at"),
        ({"start": {}}, "task 'glue' is not in the schedule"),
        ({"start": {**GOOD.start, "dye": 1}}, "the schedule has an unknown task 'dye'"),
        ({"segments": {}}, "task 'mix' has no segments"),
    ],
)
def test_a_corrupted_schedule_is_rejected(change: dict[str, object], sentence: str) -> None:
    assert any(sentence in fault for fault in faults(**change))


def test_what_a_split_task_holds_counts_over_the_break() -> None:
    tasks = [
        Task("sew", 90, {"frame": 1}, ("bench",), split=True, holds=("frame",)),
        Task("tape", 10, {"frame": 1}),
    ]
    segments = {"sew": [(0, 60), (200, 230)], "tape": [(100, 110)]}
    schedule = Schedule({"sew": 0, "tape": 100}, 230, False, True, "", segments)
    assert verify(tasks, {"frame": 1}, [], schedule, BENCH) == [
        "2 of 'frame' are used at minute 100, and there are 1"
    ]


def minutewise(tasks: list[Task], capacity: int, lags: list[Lag], start: dict[str, int]) -> bool:
    """The rules again, a minute at a time."""
    for lag in lags:
        gap = start[lag.after] - start[lag.before]
        if gap < lag.at_least or (lag.at_most is not None and gap > lag.at_most):
            return False
    ends = {t.id: start[t.id] + t.duration for t in tasks}
    return all(
        sum(t.demand["r"] for t in tasks if start[t.id] <= m < ends[t.id]) <= capacity
        for m in range(max(ends.values()))
    )


@given(st.data())
def test_any_schedule_is_judged_as_by_counting_minutes(data: st.DataObject) -> None:
    whole = st.integers(0, 6)
    tasks = [Task(name, data.draw(whole), {"r": data.draw(st.integers(0, 3))}) for name in "abcd"]
    start = {task.id: data.draw(st.integers(0, 12)) for task in tasks}
    lags = [
        Lag(*data.draw(st.sampled_from(["ab", "bc", "ca", "db"])), data.draw(st.integers(-4, 4)), 6)
    ]
    segments = {t.id: [(start[t.id], start[t.id] + t.duration)] for t in tasks}
    finish = max(pieces[-1][1] for pieces in segments.values())
    schedule = Schedule(start, finish, False, True, "", segments)
    clean = verify(tasks, {"r": 4}, lags, schedule) == []
    assert clean == minutewise(tasks, 4, lags, start)
