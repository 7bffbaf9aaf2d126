import json

from jsonschema import Draft202012Validator

from foredge.contract import Bench
from foredge.data import schema_text
from foredge.emit.quantities_json import Quantities
from work_books import op, planned

STEPS = (op("glue", 30, wait=720), op("cover", 40, after=("glue",)))
SESSIONS = ("Tue and Thu 19:30-21:30",)


def written(**more: object) -> dict[str, object]:
    made, _ = planned(*STEPS, **more)  # type: ignore[arg-type]
    document = json.loads(Quantities().emit(made)["quantities.json"])
    schema = json.loads(schema_text("quantities.schema.json"))
    assert list(Draft202012Validator(schema).iter_errors(document)) == []
    schedule: dict[str, object] = document["schedule"]
    return schedule


def test_with_dates() -> None:
    schedule = written(bench=Bench(start="2026-12-01", sessions=SESSIONS))
    assert schedule["steps"]["case.glue"] == {  # type: ignore[index]
        "begin": "2026-12-01T19:30",
        "critical": True,
        "end": "2026-12-01T20:00",
        "ready": "2026-12-02T08:00",
        "slack": 90,
    }
    assert schedule["finish"] == "2026-12-03T20:10"
    assert schedule["proven"] is True
    assert [evening["resting"] for evening in schedule["evenings"]] == [["case.glue"], []]  # type: ignore[attr-defined]


def test_without_dates_minutes_from_monday() -> None:
    schedule = written(bench=Bench(sessions=SESSIONS))
    assert schedule["start"] == ""
    assert schedule["steps"]["case.glue"]["begin"] == 1440 + 1170  # type: ignore[index]


def test_without_sessions_the_chain() -> None:
    schedule = written()
    assert schedule["shortest"] == 790
    assert schedule["chain"] == ["case.glue", "case.cover"]
    assert schedule["finish"] is None
    assert schedule["steps"] == {}
