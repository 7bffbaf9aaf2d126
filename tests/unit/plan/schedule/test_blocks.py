"""One pass block by block, against the independent verifier and networkx."""

from __future__ import annotations

from random import Random

import networkx as nx
from hypothesis import given, settings, strategies as st

from foredge.plan.schedule import Calendar, Lag, Schedule, Task, solve, verify
from foredge.plan.schedule.blocks import OnePass
from foredge.plan.schedule.circles import circles
from foredge.plan.schedule.instance import Instance, compile_instance
from foredge.plan.schedule.large import LARGE, placed_once, too_large

DAY = 1440
EVENINGS = [(day * DAY + 1170, day * DAY + 1290) for day in range(700)]
CALENDAR = Calendar({"bench": EVENINGS})
CAPACITY = {"hands": 1, "press": 1}
Plan = tuple[list[Task], list[Lag]]


def rounds(count: int, minutes: int = 40, rest: int = 720) -> Plan:
    """Paste, then press within a quarter of an hour; the press holds what rests in it."""
    tasks, lags = [], []
    for k in range(count):
        tasks += [
            Task(f"paste {k}", minutes, {"hands": 1}, ("bench",)),
            Task(f"press {k}", 5, {"hands": 1, "press": 1}, ("bench",), holds=("press",)),
            Task(f"rest {k}", rest, {"press": 1}),
        ]
        lags += [
            Lag(f"paste {k}", f"press {k}", 0, 15, from_finish=True),
            Lag(f"press {k}", f"rest {k}", 0, 0, from_finish=True),
        ]
        if k:
            lags.append(Lag(f"paste {k - 1}", f"paste {k}", 0, from_finish=True))
    return tasks, lags


def test_a_plan_too_large_to_be_searched_is_placed() -> None:
    tasks, lags = rounds(LARGE // 3 + 1)
    assert too_large(compile_instance(tasks, CAPACITY, lags, CALENDAR))
    result = solve(tasks, CAPACITY, lags, calendar=CALENDAR)
    assert result.feasible
    assert not result.proven
    assert verify(tasks, CAPACITY, lags, result, CALENDAR) == []
    assert result.finish == EVENINGS[LARGE // 3][0] + 45 + 720, "one round an evening"
    assert solve(tasks, CAPACITY, lags, calendar=CALENDAR, method="optimal") == result


def test_where_the_windows_end_too_soon_nothing_is_claimed() -> None:
    tasks, lags = rounds(LARGE // 3 + 1)
    short = Calendar({"bench": EVENINGS[: LARGE // 3]})
    result = solve(tasks, CAPACITY, lags, calendar=short)
    assert (result.feasible, result.proven) == (False, False)
    assert "was found" in result.reason


def test_a_block_waits_until_all_of_it_fits() -> None:
    """Pasting alone would fit this evening; pressing must follow, and so both wait."""
    tasks, lags = rounds(1, minutes=60)
    tasks.append(Task("first", 70, {"hands": 1}, ("bench",)))
    lags.append(Lag("first", "paste 0", 0, from_finish=True))
    instance = compile_instance(tasks, CAPACITY, lags, CALENDAR)
    for soonest in (False, True):
        start = OnePass(instance).run(range(instance.size), soonest)
        assert start is not None
        assert start[:2] == [EVENINGS[1][0], EVENINGS[1][0] + 60]


def tied(seed: int) -> Plan:
    """Fourteen tasks with maximum lags, some split, some holding the press over a break."""
    rng = Random(f"blocks {seed}")
    tasks = [
        Task(
            f"t{k}",
            rng.randint(5, 90),
            {"hands": 1, "press": rng.randint(0, 1)},
            ("bench",),
            rng.random() < 0.4,
            ("press",) if rng.random() < 0.5 else (),
        )
        for k in range(14)
    ]
    lags = []
    for j in range(1, 14):
        least = rng.choice((0, 0, 720))
        most = rng.choice((None, None, least + 3000, least + 9000))
        lags.append(Lag(f"t{rng.randrange(j)}", f"t{j}", least, most, rng.random() < 0.5))
    return tasks, lags


def test_a_search_ends_no_later_than_one_pass() -> None:
    placed = 0
    for seed in range(7):
        tasks, lags = tied(seed)
        instance = compile_instance(tasks, CAPACITY, lags, CALENDAR)
        start = placed_once(instance)
        if start is None:
            continue
        placed += 1
        assert_keeps(tasks, lags, instance, start)
        searched = solve(tasks, CAPACITY, lags, calendar=CALENDAR)
        assert searched.feasible
        assert searched.finish <= max(instance.finishes(start))
        assert verify(tasks, CAPACITY, lags, searched, CALENDAR) == []
    assert placed >= 4


def assert_keeps(tasks: list[Task], lags: list[Lag], instance: Instance, start: list[int]) -> None:
    """The independent verifier accepts what one pass made."""
    segments = {
        name: opening.segments(begin) if opening else [(begin, begin + minutes)]
        for name, opening, begin, minutes in zip(
            instance.names, instance.openings, start, instance.duration, strict=True
        )
    }
    begins = dict(zip(instance.names, start, strict=True))
    finish = max(instance.finishes(start))
    made = Schedule(begins, finish, proven=False, feasible=True, segments=segments)
    assert verify(tasks, CAPACITY, lags, made, CALENDAR) == []


@settings(max_examples=80, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 9)), max_size=30))
def test_circles_are_the_strongly_connected_parts(arcs: list[tuple[int, int]]) -> None:
    before: list[set[int]] = [set() for _ in range(10)]
    for tail, head in arcs:
        before[head].add(tail)
    parts = circles(before)
    graph = nx.DiGraph(arcs)
    graph.add_nodes_from(range(10))
    assert {frozenset(part) for part in parts} == {
        frozenset(part) for part in nx.strongly_connected_components(graph)
    }
    place = {node: k for k, part in enumerate(parts) for node in part}
    assert all(place[tail] <= place[head] for tail, head in arcs)
