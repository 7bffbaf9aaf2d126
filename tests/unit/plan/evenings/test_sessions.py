import pytest

from foredge.contract import Bench
from foredge.plan.evenings.sessions import Session, read_daylight, read_sessions


def only(text: str) -> Session:
    (session,), problems = read_sessions(Bench(sessions=(text,)))
    assert not problems
    return session


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("Tue and Thu 19:30-21:30", {1, 3}),
        ("Mon-Fri 19:30-21:30", {0, 1, 2, 3, 4}),
        ("Sat, Sun 19:30-21:30", {5, 6}),
        ("Fri-Mon 19:30-21:30", {4, 5, 6, 0}),
        ("Mon-Wed and Fri, Sun 19:30-21:30", {0, 1, 2, 4, 6}),
        ("tue 19:30-21:30", {1}),
        ("Wed-Wed 19:30-21:30", {2}),
    ],
)
def test_days(text: str, days: set[int]) -> None:
    assert only(text) == Session(frozenset(days), 1170, 1290)


def test_a_session_must_end_after_it_begins() -> None:
    for text in ("Mon 21:30-19:30", "Mon 19:30-19:30"):
        sessions, (problem,) = read_sessions(Bench(sessions=(text,)))
        assert sessions == ()
        assert problem.rule == "session-backwards"
        assert problem.path == ("bench", "sessions", 0)


def test_a_good_session_beside_a_bad_one_is_kept_and_the_place_is_right() -> None:
    sessions, (problem,) = read_sessions(
        Bench(sessions=("Tue 19:00-20:00", "Mon-Wed-Fri 19:00-20:00"))
    )
    assert len(sessions) == 1
    assert problem.path == ("bench", "sessions", 1)
    assert "'Mon-Wed-Fri'" in problem.text


def test_daylight() -> None:
    assert read_daylight(Bench()) == (None, [])
    assert read_daylight(Bench(daylight="09:00-16:00")) == ((540, 960), [])
    nothing, (problem,) = read_daylight(Bench(daylight="16:00-09:00"))
    assert nothing is None
    assert problem.path == ("bench", "daylight")
