"""How far cutting plans lie above the best there can be, set by set: run it as a script.

    PYTHONPATH=compiler:tests python tests/benchmarks/cutting_excess.py [effort [name ...]]

Planted sets are made from whole sheets, so their least sheet area is known. For the others the
excess is over the strongest lower bound we have: the best of the area bound and of dual feasible
functions in pairs, one for each axis (Fekete and Schepers 2001, Boschetti and Mingozzi 2003,
Carlier, Clautiaux and Moukrim 2007; see ``bounds`` and ``scales`` for the papers), counted for
turning pieces with the smaller of both values and for mixed sheets as a covering problem. It may
still be out of reach; the share over the bare area of the pieces is shown beside it. On the
published drawings of the classical classes the best bounds and the best plans known are 0.9 %
apart over all 500 tasks (7173 and 7239 sheets, free cuts, no turning; from memory).
Seconds are processor time of one core.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass

from foredge.plan.cutting import plan_cuts
from foredge.plan.cutting.bounds import least_cost
from foredge.plan.cutting.job import make_job
from unit.plan.cutting import instances
from unit.plan.cutting.instances import Task


@dataclass(frozen=True, slots=True)
class TaskSet:
    """Tasks of one make-up; ``planted``: all pieces come from whole sheets."""

    name: str
    planted: bool
    tasks: list[Task]


def task_sets() -> Iterator[TaskSet]:
    """Every set, first with the grain fixed, then with pieces that turn."""
    groups = range(1, 11)
    for turn in (False, True):
        how = "turning" if turn else "fixed"
        for items in (20, 60, 100):
            drawn = [instances.classical(g, items, 0, turn=turn) for g in groups]
            yield TaskSet(f"equal-{items}-{how}", False, drawn)
        tens, dozen = range(10), range(12)
        equal = [instances.planted_equal(k, 4 + k % 7, 5 + k % 5, turn=turn) for k in tens]
        yield TaskSet(f"equal-planted-{how}", True, equal)
        repeated = [instances.many_equal(k, turn=turn) for k in range(6)]
        yield TaskSet(f"equal-repeated-{how}", False, repeated)
        mixed = [
            instances.planted_mixed(k, 3 + k % 4, 5 + k % 6, 4 + k % 5, turn=turn) for k in dozen
        ]
        yield TaskSet(f"mixed-planted-{how}", True, mixed)
        for items in (20, 50, 100):
            drawn = [instances.mixed_classes(g, items, 0, turn=turn) for g in groups]
            yield TaskSet(f"mixed-{items}-{how}", False, drawn)
        short = [instances.few(instances.mixed_classes(g, 40, 1, turn=turn), 10) for g in groups]
        yield TaskSet(f"mixed-few-{how}", False, short)
        odd = [instances.planted_remnants(k, 5 + k % 4, 5, 4 + k % 4, turn=turn) for k in dozen]
        yield TaskSet(f"remnants-planted-{how}", True, odd)
        drawn = [instances.drawn_remnants(k, turn=turn) for k in tens]
        yield TaskSet(f"remnants-{how}", False, drawn)


def least_area(task: Task, planted: bool) -> float:
    """The known optimum of a planted task, or the lower bound of another, in mm2."""
    sheets, pieces = task
    if planted:
        return float(sum(piece.width * piece.height * piece.count for piece in pieces))
    job, _ = make_job(sheets, pieces, 0.0)
    return least_cost(job) // job.unit / job.scale**2


def report(tasks: TaskSet, effort: float) -> str:
    """One line: mean excess, how many are at the optimum or bound, pieces left over, seconds."""
    excess, bare, seconds, left = [], [], [], 0
    for sheets, pieces in tasks.tasks:
        begin = time.process_time()
        plan = plan_cuts(sheets, pieces, effort=effort)
        seconds.append(time.process_time() - begin)
        if plan.unplaced:
            left += sum(rest.count for rest in plan.unplaced)
            continue
        excess.append(plan.area / least_area((sheets, pieces), tasks.planted) - 1)
        bare.append(plan.area / least_area((sheets, pieces), True) - 1)
    mean, over_area = (100 * sum(shares) / max(len(shares), 1) for shares in (excess, bare))
    reached = sum(value < 1e-9 for value in excess)
    over = "optimum" if tasks.planted else "bound"
    return (
        f"{tasks.name:26} {mean:6.2f} % over the {over:7}  reached {reached:2} of {len(excess):2}"
        f"  {over_area:6.2f} % over the area"
        f"  left {left:2}  mean {sum(seconds) / len(seconds):.2f} s  slowest {max(seconds):.2f} s"
    )


def main() -> None:
    """Print the line of every set named, or of all."""
    effort = float(sys.argv[1]) if len(sys.argv) > 1 else 1.0
    for tasks in task_sets():
        if len(sys.argv) < 3 or tasks.name in sys.argv[2:]:
            print(report(tasks, effort), flush=True)


if __name__ == "__main__":
    main()
