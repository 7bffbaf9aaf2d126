"""The order of coats as a whole: each rule, and the near miss that it leaves alone."""

from __future__ import annotations

from typing import Any

import pytest

from finishing_books import RELIEF, book, finished, pressed, registry
from foredge.contract import Build, Problem, StageResult
from foredge.spec.yaml_reader import Positions
from foredge.tables import load_tables


def found(rule: str, *coats: str, relief: bool = False, more: str = "") -> list[Problem]:
    """What ``rule`` says of a book with these coats."""
    of = book(*coats, embellishment=RELIEF if relief else "", more=more)
    upstream = pressed(relief=relief)
    result = finished(of, upstream)
    assert not [one for one in result.problems if one.severity.value == "error"]
    sculpt = StageResult(facts=(("sculpt.dry", "sculpt.check-dry"),)) if relief else StageResult()
    whole = result + sculpt
    build = Build(
        name="x",
        file="x.yaml",
        book=of,
        stages=(),
        whole=whole,
        order=result.operations,
        bands={},
        positions=Positions({}, {}),
        tables=load_tables(),
    )
    plugin: Any = registry().find("rule", rule)
    return list(plugin.plugin.test(build))


WAX, VARNISH, SPRAY = "{use: wax}", "{use: brush-varnish}", "{use: spray-varnish}"
BASE, INK, GLITTER = "{use: base-coat}", "{use: wash, of: ink}", "{use: glitter}"


@pytest.mark.parametrize(
    ("rule", "coats", "place"),
    [
        ("coat-over-wax", (WAX, VARNISH), 1),
        ("coat-over-wax", (BASE, WAX, SPRAY), 2),
        ("coat-over-varnish", (BASE, VARNISH, "{use: dry-brush}"), 2),
        ("coat-uncovered", (BASE, GLITTER), 1),
        ("coat-uncovered", (GLITTER, WAX), 0),
        ("coat-uncovered", (GLITTER, "{use: brush-varnish, on: front}"), 0),
        ("coat-uncovered", ("{use: metal-leaf, leaf: copper}",), 0),
        ("coat-over-unfixed", (INK, VARNISH), 1),
        ("coat-hides-work", ("{use: metallic}", BASE), 1),
        ("faces-stick", (BASE, "{use: brush-varnish, sheen: gloss}"), 1),
        ("faces-stick", ("{use: seal, using: decoupage-glue}", BASE), 0),
    ],
)
def test_an_order_that_goes_wrong(rule: str, coats: tuple[str, ...], place: int) -> None:
    (problem,) = found(rule, *coats)
    assert problem.rule == rule and problem.path == ("finishing", place)
    assert problem.severity.value != "error"


@pytest.mark.parametrize(
    ("rule", "coats"),
    [
        ("coat-over-wax", (BASE, VARNISH, WAX)),
        ("coat-over-wax", (WAX, WAX)),
        ("coat-over-wax", ("{use: wax, on: front}", "{use: brush-varnish, on: back}")),
        ("coat-over-varnish", (INK, SPRAY, BASE)),
        ("coat-over-varnish", (BASE, VARNISH, WAX)),
        ("coat-uncovered", (GLITTER, VARNISH)),
        ("coat-uncovered", (GLITTER, "{use: brush-varnish, on: [front, back]}",
                            "{use: brush-varnish, on: faces}")),
        ("coat-uncovered", ("{use: metal-leaf, leaf: gold}",)),
        ("coat-over-unfixed", (INK, SPRAY, VARNISH)),
        ("coat-over-unfixed", ("{use: wash}", VARNISH)),
        ("coat-over-unfixed", ("{use: wash, of: ink, on: front}", "{use: wax, on: back}")),
        ("coat-hides-work", (BASE, "{use: metallic}")),
        ("coat-hides-work", ("{use: wash}", "{use: base-coat, share: 20 %}")),
        ("faces-stick", (BASE, "{use: brush-varnish, sheen: gloss}", VARNISH)),
        ("faces-stick", ("{use: brush-varnish, sheen: gloss}", WAX)),
        ("faces-stick", ("{use: brush-varnish, sheen: gloss, on: spine}",)),
    ],
)  # fmt: skip
def test_an_order_that_is_sound(rule: str, coats: tuple[str, ...]) -> None:
    assert found(rule, *coats) == []


def test_paint_on_bare_clay_is_noted_and_a_sealer_answers_it() -> None:
    (problem,) = found("relief-unsealed", BASE, relief=True)
    assert problem.severity.value == "note"
    assert found("relief-unsealed", "{use: seal}", BASE, relief=True) == []
    assert found("relief-unsealed", BASE) == []


@pytest.mark.parametrize(
    ("degrees", "severity"), [("8", "error"), ("9", "warning"), ("15", "warning"), ("16", None)]
)
def test_a_cold_room(degrees: str, severity: str | None) -> None:
    room = f"bench: {{room: {{temperature: {degrees} degC}}}}\n"
    problems = found("room-cold", BASE, more=room)
    assert [problem.severity.value for problem in problems] == ([severity] if severity else [])
    assert found("room-cold", SPRAY, more=room) == []


def done(**times: str) -> str:
    listed = ", ".join(
        f"{{operation: {name.replace('__', '.').replace('_', '-')}, at: {at}}}"
        if at
        else name.replace("__", ".").replace("_", "-")
        for name, at in times.items()
    )
    return f"done: [{listed}]\n"


@pytest.mark.parametrize(
    ("times", "expected"),
    [
        ({"finishing__seal": ""}, 1),
        ({"sculpt__check_dry": "2026-12-04 20:00", "finishing__seal": "2026-12-03 20:00"}, 1),
        ({"sculpt__check_dry": "2026-12-04 20:00", "finishing__seal": "2026-12-04 20:30"}, 0),
        ({"sculpt__check_dry": "2026-12-04 20:00", "finishing__seal": "2026-12-04"}, 0),
        ({"sculpt__check_dry": "", "finishing__seal": ""}, 0),
        ({"sculpt__check_dry": ""}, 0),
    ],
)
def test_sealing_damp_clay(times: dict[str, str], expected: int) -> None:
    problems = found("coat-over-damp-clay", "{use: seal}", relief=True, more=done(**times))
    assert len(problems) == expected


@pytest.mark.parametrize(
    ("closed", "expected"), [("2026-12-06 20:00", 1), ("2026-12-08 20:00", 0), ("2026-12-08", 0)]
)
def test_closing_before_the_coats_are_hard(closed: str, expected: int) -> None:
    times = {"finishing__brush_varnish": "2026-12-01 20:00", "finishing__rest_closed": closed}
    assert len(found("closed-early", VARNISH, more=done(**times))) == expected
