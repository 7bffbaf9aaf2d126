"""The scheduling engine against published instances, networkx and CP-SAT."""

from __future__ import annotations

from functools import cache
from statistics import mean

import networkx as nx
import pytest
from hypothesis import given, settings, strategies as st

from foredge.plan.schedule import Lag, Task, solve, verify
from published.schedule_instances import (
    J30,
    WITH_MAXIMUM_LAGS as PUBLISHED_WITH_MAXIMUM_LAGS,
    read,
)
from unit.plan.schedule.exhaustive import solved_by_cp_sat
from unit.plan.schedule.instances import Instance, j30_style, with_maximum_lags

METHODS = ("default", "optimal")

# PSPLIB, set j30, instance 1_1: Kolisch, R., Sprecher, A. (1997), "PSPLIB - a project scheduling
# problem library", European Journal of Operational Research 96, pp. 205-216. The optimum 43 is
# the library's own (file j30opt). Columns: job, duration, demand of four resources, successors.
J301_1 = """
1 0  0 0 0 0  2 3 4
2 8  4 0 0 0  6 11 15
3 4  10 0 0 0  7 8 13
4 6  0 0 0 3  5 9 10
5 3  3 0 0 0  20
6 8  0 0 0 8  30
7 5  4 0 0 0  27
8 9  0 1 0 0  12 19 27
9 2  6 0 0 0  14
10 7  0 0 0 1  16 25
11 9  0 5 0 0  20 26
12 2  0 7 0 0  14
13 6  4 0 0 0  17 18
14 3  0 8 0 0  17
15 9  3 0 0 0  25
16 10  0 0 0 5  21 22
17 6  0 0 0 8  22
18 5  0 0 0 7  20 22
19 3  0 1 0 0  24 29
20 7  0 10 0 0  23 25
21 2  0 0 0 6  28
22 7  2 0 0 0  23
23 2  3 0 0 0  24
24 3  0 9 0 0  30
25 3  4 0 0 0  30
26 7  0 0 4 0  31
27 8  0 0 0 7  28
28 3  0 8 0 0  31
29 7  0 7 0 0  32
30 2  0 7 0 0  32
31 2  0 0 2 0  32
32 0  0 0 0 0
"""
J301_1_CAPACITY = (12, 13, 4, 12)
J301_1_MPM_TIME = 38  # critical path without resources, in the head of the published file
J301_1_OPTIMUM = 43

# Set UBO10 with maximum lags, instance psp2: Franck, B., Neumann, K., Schwindt, C. (2001), OR
# Spektrum 23, pp. 297-324. Start-to-start lags; a negative one is a maximum lag the other way.
UBO10_LAGS = """
0 4 0  0 3 0  0 1 0  0 2 0  1 5 9  2 5 -3  2 6 8  3 7 24  4 9 22  5 8 4  6 10 3
7 10 -2  7 11 8  7 3 -26  8 11 10  9 11 9  9 4 -25  10 11 5
"""
UBO10_TASKS = """
0 0 0 0 0 0 0  1 4 4 3 7 7 2  2 4 1 9 6 4 1  3 10 2 0 0 4 2  4 10 0 7 4 7 10  5 3 6 6 3 6 6
6 1 10 1 4 7 10  7 8 9 0 10 4 6  8 10 4 0 0 0 0  9 9 0 8 0 0 0  10 5 4 1 6 9 6  11 0 0 0 0 0 0
"""


def j301_1() -> Instance:
    tasks, lags = [], []
    for line in J301_1.split("\n"):
        if line:
            job, minutes, *numbers = line.split()
            demand = {f"R{k + 1}": int(n) for k, n in enumerate(numbers[:4])}
            tasks.append(Task(job, int(minutes), demand))
            lags += [Lag(job, other, int(minutes)) for other in numbers[4:]]
    return tasks, {f"R{k + 1}": c for k, c in enumerate(J301_1_CAPACITY)}, lags


def ubo10_psp2() -> Instance:
    rows = UBO10_TASKS.split()
    tasks = [
        Task(rows[k], int(rows[k + 1]), {f"R{r}": int(rows[k + 1 + r]) for r in range(1, 6)})
        for k in range(0, len(rows), 7)
    ]
    arcs = UBO10_LAGS.split()
    lags = [Lag(arcs[k], arcs[k + 1], int(arcs[k + 2])) for k in range(0, len(arcs), 3)]
    return tasks, {f"R{r}": 10 for r in range(1, 6)}, lags


@pytest.mark.parametrize("method", METHODS)
def test_published_j30_instance_has_its_published_optimum(method: str) -> None:
    tasks, capacity, lags = j301_1()
    assert len(tasks) == 32
    assert solve(tasks, dict.fromkeys(capacity, 99), lags, method=method).finish == J301_1_MPM_TIME
    result = solve(tasks, capacity, lags, method=method)
    assert result.finish == J301_1_OPTIMUM
    assert verify(tasks, capacity, lags, result) == []


@pytest.mark.parametrize("method", METHODS)
def test_published_instance_with_maximum_lags(method: str) -> None:
    tasks, capacity, lags = ubo10_psp2()
    assert (len(tasks), len(lags)) == (12, 18)
    status, best = solved_by_cp_sat(tasks, capacity, lags)
    result = solve(tasks, capacity, lags, method=method)
    assert status == "optimal"
    assert result.finish == best
    assert verify(tasks, capacity, lags, result) == []


@pytest.mark.parametrize(("method", "allowed"), [("default", 4.0), ("optimal", 2.0)])
@pytest.mark.parametrize("text", J30)
def test_hard_published_j30_instances(text: str, method: str, allowed: float) -> None:
    """Per cent over the published optimum; these took the first exact methods minutes to hours."""
    optimum, case = read(text)
    result = solve(*case, method=method)
    assert verify(*case, result) == []
    assert 0 <= 100 * (result.finish / optimum - 1) <= allowed


@pytest.mark.parametrize(("method", "allowed"), [("default", 10.0), ("optimal", 1.0)])
@pytest.mark.parametrize("text", PUBLISHED_WITH_MAXIMUM_LAGS)
def test_hard_published_instances_with_maximum_lags(text: str, method: str, allowed: float) -> None:
    optimum, case = read(text)
    result = solve(*case, method=method)
    assert result.feasible
    assert verify(*case, result) == []
    assert not result.proven or result.finish == optimum
    assert 0 <= 100 * (result.finish / optimum - 1) <= allowed


@pytest.mark.parametrize("method", METHODS)
def test_a_maximum_lag_and_a_negative_minimum_lag_are_the_same(method: str) -> None:
    tasks, capacity, lags = ubo10_psp2()
    turned = [
        Lag(lag.after, lag.before, -1000, -lag.at_least) if lag.at_least < -20 else lag
        for lag in lags
    ]
    assert turned != lags
    first = solve(tasks, capacity, lags, method=method)
    assert solve(tasks, capacity, turned, method=method).finish == first.finish


@st.composite
def networks(draw: st.DrawFn) -> tuple[list[int], list[tuple[int, int, int]]]:
    count = draw(st.integers(1, 12))
    duration = draw(st.lists(st.integers(0, 20), min_size=count, max_size=count))
    pairs = [(i, j) for j in range(count) for i in range(j)]
    chosen = draw(st.lists(st.sampled_from(pairs), unique=True)) if pairs else []
    return duration, [(i, j, draw(st.integers(0, 30))) for i, j in chosen]


@settings(max_examples=80, deadline=None)
@given(networks())
def test_without_resources_it_is_the_longest_path(
    network: tuple[list[int], list[tuple[int, int, int]]],
) -> None:
    """networkx: Hagberg, A., Schult, D., Swart, P. (2008), Proc. SciPy 2008, pp. 11-15."""
    duration, arcs = network
    graph = nx.DiGraph()
    graph.add_weighted_edges_from(arcs)
    graph.add_weighted_edges_from((i, "end", minutes) for i, minutes in enumerate(duration))
    tasks = [Task(f"t{i}", minutes) for i, minutes in enumerate(duration)]
    result = solve(tasks, {}, [Lag(f"t{i}", f"t{j}", weight) for i, j, weight in arcs])
    assert result.finish == nx.dag_longest_path_length(graph)
    assert result.proven
    for i in range(len(duration)):
        before = graph.subgraph(nx.ancestors(graph, i) | {i})
        assert result.start[f"t{i}"] == nx.dag_longest_path_length(before)
    assert bool(result.critical)


J30_STYLE = j30_style(16)
WITH_MAXIMUM_LAGS = [with_maximum_lags(20, (0.1, 0.2, 0.5)[k % 3], k) for k in range(12)]


@cache
def references(kind: str) -> list[tuple[str, int]]:
    """What CP-SAT says of each generated case, by a model of the test's own."""
    cases = J30_STYLE if kind == "j30" else WITH_MAXIMUM_LAGS
    return [solved_by_cp_sat(*case) for case in cases]


def excesses(kind: str, cases: list[Instance], method: str) -> list[float]:
    """Finish over the proven optimum, in per cent, of every case that has an optimum."""
    found = []
    for (tasks, capacity, lags), (status, best) in zip(cases, references(kind), strict=True):
        result = solve(tasks, capacity, lags, method=method)
        if status == "infeasible":
            assert not result.feasible
            assert result.proven or method == "default"
        elif status == "optimal" and result.feasible:
            assert verify(tasks, capacity, lags, result) == []
            assert not result.proven or result.finish == best
            found.append(100 * (result.finish / best - 1))
    return found


@pytest.mark.parametrize(("method", "allowed"), [("default", 1.0), ("optimal", 0.2)])
def test_mean_excess_on_j30_style_projects(method: str, allowed: float) -> None:
    """Generated after Kolisch, Sprecher and Drexl (1995), see ``instances``."""
    found = excesses("j30", J30_STYLE, method)
    assert len(found) >= 15
    assert min(found) >= 0
    assert mean(found) <= allowed


@pytest.mark.parametrize(("method", "allowed"), [("default", 1.0), ("optimal", 0.2)])
def test_mean_excess_with_maximum_lags(method: str, allowed: float) -> None:
    """Tight and ample resources; no project that has a schedule goes without one."""
    found = excesses("max", WITH_MAXIMUM_LAGS, method)
    assert len(found) == sum(status == "optimal" for status, _ in references("max")) >= 8
    assert min(found) >= 0
    assert mean(found) <= allowed
