"""Numbers of the plan's tables can be tapped like any other, and open their own derivation."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from demo import Run, compiled
from foredge.contract import Build
from foredge.emit.html_page import BenchPage
from foredge.emit.moisture import moisture_view
from foredge.emit.money import cost_view
from foredge.emit.shopping import shopping
from money_books import build_with

SALTMARSH = Run("saltmarsh-tide-book.yaml")


class _Rows(HTMLParser):
    """The table whose label is ``label``: a row as its cells' words and places of derivations."""

    def __init__(self, label: str) -> None:
        super().__init__()
        self.label, self.inside = label, False
        self.rows: list[list[tuple[str, int | None]]] = []
        self.words, self.place = "", None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        if tag == "table":
            self.inside = said.get("aria-label") == self.label
        if tag == "tr":
            self.rows += [[]] if self.inside else []
        if tag == "td":
            self.words, self.place = "", None
        if "data-q" in said:
            self.place = int(said["data-q"] or "")

    def handle_data(self, data: str) -> None:
        self.words += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "td" and self.inside:
            self.rows[-1].append((self.words, self.place))
        if tag == "table":
            self.inside = False


def page_of(build: Build) -> tuple[str, list[dict[str, Any]]]:
    text = BenchPage().emit(build)["build-sheet.html"].decode()
    found = re.search(r'id="derivations">(.*?)</script>', text, re.DOTALL)
    assert found is not None
    return text, json.loads(found[1])


def rows_of(text: str, label: str) -> list[list[tuple[str, int | None]]]:
    reader = _Rows(label)
    reader.feed(text)
    assert reader.rows, label
    return reader.rows[1:]


@pytest.fixture(scope="module")
def saltmarsh() -> tuple[Build, str, list[dict[str, Any]]]:
    build = compiled(SALTMARSH)
    return build, *page_of(build)


def told(entry: dict[str, Any]) -> str:
    value: str | list[str] = entry["v"]
    return value if isinstance(value, str) else value[0]


Page = tuple[Build, str, list[dict[str, Any]]]


def test_water_and_drying_open_what_they_were_computed_from(saltmarsh: Page) -> None:
    build, text, entries = saltmarsh
    view = moisture_view(build).rows
    rows = rows_of(text, "Water and balance")
    assert len(rows) == len(view)
    for row, said in zip(rows, view, strict=True):
        water, place = row[3]
        assert water == said.water
        assert (place is None) == (said.mass is None)
        if place is not None:
            assert told(entries[place]).split(" (")[0] == water.removeprefix("≈ ")
            assert entries[place]["l"].startswith("water, ") or "n" in entries[place]
        assert row[4][0] == said.dry and row[4][1] is not None


def test_hours_of_a_stage_and_needs_open_their_sums(saltmarsh: Page) -> None:
    build, text, entries = saltmarsh
    view = cost_view(build)
    assert view is not None
    *stages, whole = rows_of(text, "Hands-on time")
    for row, said in zip(stages, view.hours[:-1], strict=True):
        assert row[1][0] == said.one
        assert row[1][1] is not None
        entry = entries[row[1][1]]
        assert entry["l"] == f"hands-on time, {said.title}"
        assert entry["f"] and entry["i"]
    assert whole[1] == (view.hours[-1].one, None)
    for row, one in zip(rows_of(text, "Materials"), view.materials, strict=True):
        assert row[1][0] == one.need
        assert row[1][1] is not None
        assert entries[row[1][1]]["n"] == one.whole.name


def test_what_must_be_bought_opens_the_need(tmp_path: Path) -> None:
    stock = {"glue": {"kind": "supply", "material": "pva", "price": "4.50 EUR",
                      "sold_by": "250 ml"}, "thread": {"length": "1 m"}}  # fmt: skip
    build = build_with(tmp_path, stock)
    text, entries = page_of(build)
    for row, said in zip(rows_of(text, "What must be bought"), shopping(build).rows, strict=True):
        assert row[1][0] == said.need
        if said.whole is None:  # only a part is missing: what the shelf has is not in the need
            assert row[1][1] is None and said.why.startswith("the shelf runs out")
        else:
            assert row[1][1] is not None
            assert entries[row[1][1]]["n"] == said.whole.name


def test_no_number_is_called_by_the_name_of_an_operation(saltmarsh: Page) -> None:
    _, _, entries = saltmarsh
    labels = {entry["l"] for entry in entries}
    assert not labels & {"add", "multiply", "divide", "subtract", "ceil", "floor", "choose"}


def test_copies_have_their_hours_side_by_side(tmp_path: Path) -> None:
    build = build_with(tmp_path, {"paper": {"price": "0.35 EUR"}}, copies=3)
    text, entries = page_of(build)
    *stages, _ = rows_of(text, "Hands-on time")
    for row in stages:
        assert row[1][1] is not None and row[2][1] is not None
        assert entries[row[2][1]]["l"].startswith("hands-on time of all copies, ")
