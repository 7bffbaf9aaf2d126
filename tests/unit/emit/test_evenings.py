import pytest

from foredge.contract import Bench
from foredge.emit.evenings import WorkView, evening_views
from foredge.emit.markdown import BuildSheet
from work_books import op, planned, time

BENCH = Bench(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",), daylight="09:00-22:00")
STEPS = (
    op("glue", 30, wait=3 * 1440, waiting="dries *flat*"),
    op("spray", 40, after=("glue",), outdoors=True),
    op("sew", 100, after=("spray",), splits=True),
)


def view(*steps: object, **more: object) -> WorkView:
    found = evening_views(planned(*(steps or STEPS), **more)[0])  # type: ignore[arg-type]
    assert found is not None
    return found


def test_evening_by_evening() -> None:
    told = view(bench=BENCH)
    assert [evening.title for evening in told.evenings] == [
        "Session 1, Tue 1 Dec 2026, 19:30 to 21:30",
        "Thu 3 Dec",
        "Session 3, Tue 8 Dec 2026, 19:30 to 21:30",
        "Session 4, Thu 10 Dec 2026, 19:30 to 21:30",
    ]
    first, idle, third, fourth = told.evenings
    assert first.steps == ("19:30 to 20:00: 1.1 Glue",)
    assert first.resting == (r"1.1 Glue, until Fri 4 Dec, 20:00: dries \*flat\*",)
    assert idle.idle
    assert third.steps == (
        "19:30 to 20:10: 1.2 Spray, outdoors",
        "20:10 to 21:30: 1.3 Sew (part 1 of 2)",
    )
    assert fourth.steps == ("19:30 to 19:50: 1.3 Sew (part 2 of 2)",)


def test_what_is_said_first() -> None:
    told = view(bench=BENCH).summary
    assert told[0] == "3 sessions with work, and 1 between them with nothing to do."
    assert "Last work done: Thu 10 Dec 2026, 19:50." in told[1]
    assert "No plan in these sessions ends earlier." in told


def test_evenings_without_dates() -> None:
    told = view(bench=Bench(sessions=BENCH.sessions, daylight=BENCH.daylight))
    assert told.evenings[0].title == "Session 1 (Tue, week 1), 19:30 to 21:30"
    assert told.evenings[0].resting[0].startswith("1.1 Glue, until Fri of week 1, 20:00")
    assert told.evenings[1].title == "Session 2"
    assert told.evenings[2].title == "Session 3 (Tue, week 2), 19:30 to 21:30"


def test_without_sessions_the_shortest_time() -> None:
    told = view()
    assert told.evenings == ()
    assert told.summary[0] == (
        "Work and waits take 3 days 3 h at the least, 2 h 50 min of it with your hands."
    )
    assert "`sessions: ['Tue and Thu 19:30-21:30']`" in told.summary[1]


def test_where_nothing_fits_nobody_is_told_to_add_sessions() -> None:
    told = view(op("cover", 500), bench=BENCH)
    assert len(told.summary) == 1


def test_everything_done() -> None:
    assert view(op("sew"), bench=BENCH, done={"sew": ""}).summary == ("Everything is done.",)


def test_what_is_taken_as_done_is_said() -> None:
    steps = (op("fold"), op("sew", after=("fold",)), op("cover", after=("sew",)))
    told = view(*steps, bench=BENCH, done={"sew": ""})
    assert told.summary[-1] == "Taken as done, because a later step is: 1.1."


def test_what_can_be_put_off() -> None:
    told = view(
        op("boards", 20, wait=6 * 1440),
        op("paper", 20),
        op("card", 20),
        op("join", 20, after=("boards", "paper", "card")),
        bench=BENCH,
    )
    assert told.summary[-1] == (
        "Each of these can be put off by itself without moving the end: by 2 days 1.2 to 1.3."
    )


@pytest.mark.parametrize("title", ["# A *tide* | table", "The Tide Table"])
def test_the_sheet_has_the_section(title: str) -> None:
    made, _ = planned(*STEPS, bench=BENCH, title=title)
    sheet = BuildSheet().emit(made)["build-sheet.md"].decode()
    assert sheet.count("## Session by session") == 1
    assert "### Session 1, Tue 1 Dec 2026, 19:30 to 21:30" in sheet
    assert "Thu 3 Dec: nothing to do." in sheet
    assert sheet.index("## Session by session") < sheet.index("## Part 1")


def test_a_break_where_the_work_runs_on() -> None:
    def steps(longest: float) -> tuple[str, ...]:
        bench = Bench(start="2026-12-01", sessions=BENCH.sessions, longest=time(longest))
        return view(op("cut", 40), op("fold", 30, after=("cut",)), bench=bench).evenings[0].steps

    assert len(steps(70)) == 2
    assert steps(69)[-1] == (
        "Break: the work runs on from 19:30 to 20:40; rest your hands every 1 h 9 min"
    )


def test_hands_on_time_is_told_in_hours_however_many() -> None:
    told = view(op("sew", 50 * 60, splits=True))
    assert "50 h of it with your hands" in told.summary[0]
