"""The calendar file, read back by the library that wrote it and line by line against RFC 5545."""

import os
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from icalendar import Calendar

from foredge.contract import Bench
from foredge.emit.calendar_ics import BenchCalendarFile
from work_books import op, planned

BENCH = Bench(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",))
STEPS = (
    op("glue", 30, wait=720, waiting="dries"),
    op("cover", 40, after=("glue",)),
    op("rest", 5, wait=1440, after=("cover",)),
)
NASTY = "Tide; table, of\nthe \\ BEGIN:VALARM “marsh”"


def content(title: str = "The Tide Table", **more: object) -> bytes:
    more.setdefault("bench", BENCH)
    made, _ = planned(*STEPS, title=title, **more)  # type: ignore[arg-type]
    return BenchCalendarFile().emit(made)["schedule.ics"]


def test_evenings_and_waits() -> None:
    calendar = Calendar.from_ical(content())
    events = {str(event["summary"]): event for event in calendar.walk("VEVENT")}
    assert list(events) == [
        "The Tide Table: session 1",
        "The Tide Table: session 2",
        "The Tide Table: 1.1 Glue, wait",
        "The Tide Table: 1.3 Rest, wait",
    ]
    evening = events["The Tide Table: session 2"]
    assert evening.decoded("dtstart") == datetime(2026, 12, 3, 19, 30)
    assert evening.decoded("dtend") == datetime(2026, 12, 3, 21, 30)
    assert str(evening["description"]) == "19:30 1.2 Cover\n20:10 1.3 Rest"
    wait = events["The Tide Table: 1.1 Glue, wait"]
    assert wait.decoded("dtstart") == datetime(2026, 12, 1, 20, 0)
    assert wait.decoded("dtend") == datetime(2026, 12, 2, 8, 0)


def test_the_end_of_drying_rings() -> None:
    alarms = Calendar.from_ical(content()).walk("VALARM")
    assert len(alarms) == 2
    for alarm in alarms:
        assert str(alarm["action"]) == "DISPLAY"
        assert alarm.decoded("trigger") == timedelta(0)
        assert alarm["trigger"].params["RELATED"] == "END"


def test_times_float_and_the_stamp_is_the_first_day() -> None:
    """RFC 5545, 3.3.5: form 1 has neither Z nor TZID; 3.8.7.2: DTSTAMP is in UTC."""
    text = content().decode()
    assert "TZID" not in text
    lines = text.replace("\r\n ", "").split("\r\n")
    starts = [line for line in lines if line.startswith(("DTSTART", "DTEND"))]
    assert starts
    assert all(not line.endswith("Z") for line in starts)
    stamps = {line for line in lines if line.startswith("DTSTAMP")}
    assert stamps == {"DTSTAMP:20261201T000000Z"}
    events = Calendar.from_ical(text).walk("VEVENT")
    assert all(event.decoded("dtstamp") == datetime(2026, 12, 1, tzinfo=UTC) for event in events)


def test_the_night_on_which_the_clocks_change() -> None:
    """28 March 2027, 02:00 to 03:00 is not there in Europe: the evening keeps its clock time."""
    bench = Bench(start="2027-03-27", sessions=("Mon-Sun 19:30-21:30",))
    events = Calendar.from_ical(content(bench=bench)).walk("VEVENT")
    assert [event.decoded("dtstart").strftime("%d %H:%M") for event in events[:2]] == [
        "27 19:30",
        "28 19:30",
    ]


def test_uids_are_the_same_each_time_and_no_two_alike() -> None:
    uids = [str(event["uid"]) for event in Calendar.from_ical(content()).walk("VEVENT")]
    assert len(set(uids)) == len(uids)
    again = [str(event["uid"]) for event in Calendar.from_ical(content("Other")).walk("VEVENT")]
    assert uids == again


def test_a_hostile_title_stays_text() -> None:
    text = content(NASTY).decode()
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    calendar = Calendar.from_ical(text)
    assert len(calendar.walk("VALARM")) == 2
    first = calendar.walk("VEVENT")[0]
    assert str(first["summary"]) == "Tide; table, of the \\ BEGIN:VALARM “marsh”: session 1"


@pytest.mark.parametrize(
    "bench", [Bench(), Bench(start="2026-12-01"), Bench(sessions=("Tue 19:30-21:30",))]
)
def test_no_dates_no_file(bench: Bench) -> None:
    made, _ = planned(*STEPS, bench=bench)
    assert BenchCalendarFile().emit(made) == {}


CODE = """
from work_books import op, planned
from unit.emit.test_calendar_ics import content
print(content().decode(), end="")
"""
ROOT = Path(__file__).parents[3]


def test_the_same_bytes_whatever_the_hash_and_the_zone() -> None:
    path = os.pathsep.join(str(ROOT / part) for part in ("compiler", "plugins", "tests"))
    outputs = {
        subprocess.run(
            [sys.executable, "-c", CODE],
            capture_output=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": path, "TZ": zone},
        ).stdout
        for seed, zone in (("0", "UTC"), ("4711", "Pacific/Auckland"))
    }
    assert len(outputs) == 1
    assert b"BEGIN:VCALENDAR" in outputs.pop()
