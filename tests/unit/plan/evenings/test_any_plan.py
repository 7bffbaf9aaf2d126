"""Plans of random work, checked from the plan alone; the same plan in every process."""

from __future__ import annotations

import os
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

from hypothesis import given, settings, strategies as st

from foredge.contract import Bench, Operation
from foredge.plan.evenings.bench_calendar import read_calendar
from unit.plan.evenings.asking import DAY
from work_books import number, op, planned

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
