"""Openings and calendars against a minute-by-minute count."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given, strategies as st

from foredge.plan.schedule import Calendar
from foredge.plan.schedule.calendar import merged
from foredge.plan.schedule.openings import Openings

HORIZON = 40

windows = st.lists(
    st.tuples(st.integers(0, HORIZON - 1), st.integers(1, 9)).map(
        lambda w: (w[0], min(HORIZON, w[0] + w[1]))
    ),
    min_size=1,
    max_size=5,
)


def minutes(given_windows: list[tuple[int, int]]) -> set[int]:
    return {m for start, end in given_windows for m in range(start, end)}


def runs(open_minutes: set[int], duration: int, split: bool) -> dict[int, int]:
    """Each possible start and its finish."""
    result = {}
    for start in sorted(open_minutes):
        work = [m for m in sorted(open_minutes) if m >= start][:duration]
        if len(work) == duration and (split or work[-1] - start == duration - 1):
            result[start] = work[-1] + 1
    return result


@given(windows, st.integers(1, 12), st.booleans())
def test_starts_and_finishes_by_counting_minutes(
    some: list[tuple[int, int]], duration: int, split: bool
) -> None:
    openings = Openings(merged(some), duration, split)
    expected = runs(minutes(some), duration, split)
    for moment in range(-1, HORIZON + 2):
        later = [s for s in expected if s >= moment]
        earlier = [s for s in expected if s <= moment]
        assert openings.first_start(moment) == (min(later) if later else None)
        assert openings.last_start(moment) == (max(earlier) if earlier else None)
        done_after = [s for s, finish in expected.items() if finish >= moment]
        done_before = [s for s, finish in expected.items() if finish <= moment]
        assert openings.first_start_to_finish(moment) == (min(done_after) if done_after else None)
        assert openings.last_start_to_finish(moment) == (max(done_before) if done_before else None)
    for start, finish in expected.items():
        assert openings.finish(start) == finish
        pieces = openings.segments(start)
        assert minutes(pieces) <= minutes(some)
        assert sum(end - begin for begin, end in pieces) == duration
        assert (pieces[0][0], pieces[-1][1]) == (start, finish)


@given(windows, st.integers(1, 12), st.booleans())
def test_the_mirror_turns_finishes_into_starts(
    some: list[tuple[int, int]], duration: int, split: bool
) -> None:
    openings = Openings(merged(some), duration, split)
    mirror = openings.mirrored(HORIZON)
    for start, finish in runs(minutes(some), duration, split).items():
        assert mirror.first_start(HORIZON - finish) == HORIZON - finish
        assert mirror.finish(HORIZON - finish) == HORIZON - start


@given(windows, windows)
def test_two_calendars_meet_where_both_are_open(
    bench: list[tuple[int, int]], daylight: list[tuple[int, int]]
) -> None:
    calendar = Calendar({"bench": bench, "daylight": daylight})
    both = calendar.open_for(("bench", "daylight"))
    assert minutes(both) == minutes(bench) & minutes(daylight)
    assert both == sorted(both)
    assert all(a[1] < b[0] for a, b in pairwise(both))


def test_a_milestone_may_stand_at_both_ends_of_a_window() -> None:
    openings = Openings([(10, 20)], 0, split=False)
    assert openings.first_start(0) == 10
    assert openings.first_start(20) == 20
    assert openings.first_start(21) is None
    assert openings.segments(20) == [(20, 20)]
