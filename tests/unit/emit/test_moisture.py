"""Water and balance as the sheet tells them."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from foredge.compile import compile_spec
from foredge.contract import Build
from foredge.emit.markdown import BuildSheet
from foredge.emit.moisture import balance_lines, moisture_rows, ready_lines
from foredge.emit.work import step_numbers
from foredge.registry import collect

CHECKOUT = Path(__file__).parents[3]
REGISTRY, _ = collect(entry_points=False)


def built(path: str) -> Build:
    build = compile_spec(str(CHECKOUT / path), REGISTRY).build
    assert build is not None
    return build


@pytest.fixture(scope="module")
def tide() -> Build:
    return built("specs/saltmarsh-tide-book.yaml")


@pytest.fixture(scope="module")
def plain() -> Build:
    return built("tests/specs-valid/plain-journal.yaml")


def test_both_boards_are_one_row_and_coats_in_a_run_too(tide: Build) -> None:
    rows = moisture_rows(tide)
    assert len(rows) < len(tide.plan.moisture.wettings)
    assert rows[0].what == "both boards" and rows[0].side == "both sides"
    (coats,) = (row for row in rows if " to " in row.steps)
    assert coats.water == "little"


def test_every_wet_step_is_in_a_row(tide: Build) -> None:
    numbers = step_numbers(tide)
    wet = [numbers[one.id] for one in tide.order if one.wettings]
    places = {number: at for at, number in enumerate(numbers.values())}
    covered: set[str] = set()
    for row in moisture_rows(tide):
        first, _, last = row.steps.partition(" to ")
        span = range(places[first], places[last or first] + 1)
        covered |= {number for number, at in places.items() if at in span}
    assert set(wet) <= covered


def test_a_dated_plan_says_the_day_and_another_does_not(tide: Build) -> None:
    day = re.compile(r", (Mon|Tue|Wed|Thu|Fri|Sat|Sun) \d{1,2} [A-Z][a-z]{2}$")
    assert all(day.search(row.dry) for row in moisture_rows(tide))
    undated = replace(tide, plan=replace(tide.plan, work=None))
    assert not any(day.search(row.dry) for row in moisture_rows(undated))


def test_sentences_name_steps_that_are_there(tide: Build, plain: Build) -> None:
    for build in (tide, plain):
        lines = ready_lines(build)
        assert lines[-1].startswith("The book may be posted")
        for line in lines:
            (step,) = re.findall(r"step (\d+\.\d+)", line)
            assert step in step_numbers(build).values()


def test_boards_alike_are_told_once(plain: Build, tide: Build) -> None:
    (line,) = balance_lines(plain)
    assert line.startswith("both boards: outside 1.0 (covering); inside 1.0 (paste-down)")
    assert line.endswith("near enough even.")
    assert [line.partition(":")[0] for line in balance_lines(tide)] == ["front board", "back board"]


def test_the_section_stands_in_the_sheet(tide: Build) -> None:
    text = BuildSheet().emit(tide)["build-sheet.md"].decode("utf-8")
    (section,) = re.findall(r"^## Water and balance$(.*?)^## ", text, re.DOTALL | re.MULTILINE)
    assert section.count("\n| ") == len(moisture_rows(tide)) + 2
    assert len(re.findall("^- ", section, re.MULTILINE)) == len(
        (*ready_lines(tide), *balance_lines(tide))
    )


def test_a_book_nothing_wets_has_no_section(plain: Build) -> None:
    dry = replace(plain, plan=replace(plain.plan, moisture=type(plain.plan.moisture)()))
    assert b"Water and balance" not in BuildSheet().emit(dry)["build-sheet.md"]
