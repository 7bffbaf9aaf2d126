"""Input that cannot mean anything is refused with one sentence."""

from __future__ import annotations

from typing import Any

import pytest

from foredge.plan.schedule import Calendar, Lag, Task, solve

HANDS = {"hands": 1}
FOLD = Task("fold", 20, HANDS)
SEW = Task("sew", 60, HANDS)
BENCH = Calendar({"bench": [(0, 120)]})


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"tasks": [FOLD, FOLD]}, "two tasks have the id 'fold'"),
        ({"tasks": [Task("fold", -5, {})]}, "the duration of task 'fold' is -5, less than zero"),
        ({"tasks": [Task("fold", 2.5, {})]}, "the duration of task 'fold' is 2.5, not a whole"),
        ({"tasks": [Task("fold", True, {})]}, "the duration of task 'fold' is True, not a whole"),
        ({"tasks": [Task("fold", 5, {"press": 1})]}, "task 'fold' needs the resource 'press'"),
        ({"tasks": [Task("fold", 5, {"hands": -1})]}, "the demand of task 'fold' for 'hands' is"),
        ({"tasks": [Task("fold", 5, HANDS, ("bench",))]}, "'fold' runs within 'bench', which is"),
        ({"tasks": [Task("fold", 5, HANDS, "bench")]}, "'within' of task 'fold' is a tuple"),
        ({"tasks": [Task("fold", 5, {}, holds=("hands",))]}, "'fold' holds 'hands', which it"),
        ({"capacity": {"hands": -1}}, "the capacity of 'hands' is -1, less than zero"),
        ({"capacity": {"hands": "1"}}, "the capacity of 'hands' is '1', not a whole number"),
        ({"lags": [Lag("fold", "glue", 0)]}, "from 'fold' to 'glue' names 'glue', which is no"),
        ({"lags": [Lag("glue", "fold", 0)]}, "from 'glue' to 'fold' names 'glue', which is no"),
        ({"lags": [Lag("fold", "fold", 0)]}, "from 'fold' to 'fold' ties a task to itself"),
        ({"lags": [Lag("fold", "sew", 1.0)]}, "at_least of the lag from 'fold' to 'sew' is 1.0"),
        ({"lags": [Lag("fold", "sew", 1, "2")]}, "at_most of the lag from 'fold' to 'sew' is '2'"),
        ({"method": "fast"}, "unknown method 'fast': use one of default, optimal"),
        ({"seed": "x"}, "the seed is 'x', not a whole number"),
        ({"calendar": Calendar({"bench": [(9, 9)]})}, "a window of 'bench' ends at 9, not after"),
        ({"calendar": Calendar({"bench": [(-1, 9)]})}, "the start of a window of 'bench' is -1"),
    ],
)
def test_wrong_input_is_named(change: dict[str, Any], sentence: str) -> None:
    given: dict[str, Any] = {"tasks": [FOLD, SEW], "capacity": HANDS, "lags": [], **change}
    with pytest.raises(ValueError, match=sentence):
        solve(**given)


def test_right_input_passes() -> None:
    tasks = [FOLD, Task("sew", 60, HANDS, ("bench",), split=True, holds=("hands",))]
    result = solve(tasks, HANDS, [Lag("fold", "sew", 20)], calendar=BENCH)
    assert result.start == {"fold": 0, "sew": 20}
    assert result.finish == 80


def test_optimal_without_the_library_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(__import__("sys").modules, "ortools.sat.python", None)
    with pytest.raises(ImportError, match=r"pip install 'foredge\[optimal\]'"):
        solve([FOLD], HANDS, [], method="optimal")


def test_default_never_loads_the_library() -> None:
    import subprocess
    import sys

    code = (
        "import sys; from foredge.plan.schedule import Task, solve;"
        "solve([Task('a', 3, {'r': 1}), Task('b', 3, {'r': 1})], {'r': 1}, []);"
        "print('ortools' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONPATH": ":".join(p for p in sys.path if p)},
    )
    assert done.stdout.strip() == "False"
