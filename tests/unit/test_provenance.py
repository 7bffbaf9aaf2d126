"""What is musty is frozen first, what is to look old is dipped first, what is old says so."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from foredge.compile import compile_spec
from foredge.contract import Build, Operation
from foredge.registry import collect

PLAIN = Path(__file__).parents[1] / "specs-valid" / "plain-journal.yaml"
REGISTRY, _ = collect(entry_points=False)
DAY = 86_400.0


def compiled(folder: Path, *items: str, more: str = "") -> Build:
    """The plain journal with ``items`` said of its stock, one a line."""
    (folder / PLAIN.name).write_text(PLAIN.read_text("utf-8"), "utf-8")
    lines = "".join(f"  {item}\n" for item in items)
    spec = folder / "book.yaml"
    spec.write_text(f"extends: {PLAIN.name}\nstock:\n{lines}{more}", "utf-8")
    run = compile_spec(str(spec), REGISTRY)
    assert run.build is not None, run.diagnostics
    return run.build


def named(build: Build, pattern: str) -> list[Operation]:
    return [one for one in build.order if re.fullmatch(pattern, one.id)]


def test_nothing_is_asked_of_new_stuff(tmp_path: Path) -> None:
    build = compiled(tmp_path, "cloth: {found: new}")
    assert named(build, r".*\.(quarantine|age)-.*") == []
    assert not any("mould-thrift" in one.cautions for one in build.order)


def test_musty_cloth_is_frozen_before_every_step_that_uses_it(tmp_path: Path) -> None:
    build = compiled(tmp_path, "cloth: {state: [musty]}")
    (frozen,) = named(build, r"case\.quarantine-cloth")
    assert frozen.wait is not None
    assert frozen.wait.value == pytest.approx(15 * DAY)
    pieces = {piece.name for piece in build.whole.pieces if piece.stock == "cloth"}
    users = [one for one in build.order if pieces & set(one.pieces)]
    assert users
    assert all(frozen.id in one.after and "mould-thrift" in one.cautions for one in users)
    place = {one.id: at for at, one in enumerate(build.order)}
    assert place[frozen.id] < min(place[one.id] for one in users)


def test_the_schedule_waits_for_the_freezer(tmp_path: Path) -> None:
    bench = "bench: {start: 2026-12-01, sessions: ['Mon-Sun 19:00-22:00']}\n"
    build = compiled(tmp_path, "cloth: {state: [insects]}", more=bench)
    work = build.plan.work
    assert work is not None
    frozen = work.step("case.quarantine-cloth")
    cover = next(one for one in build.order if "case.quarantine-cloth" in one.after)
    step = work.step(cover.id)
    assert frozen is not None and step is not None
    assert step.start - frozen.finish >= 15 * 24 * 60


@pytest.mark.parametrize("said", ["quarantined: true", "quarantined: false"])
def test_done_already_or_refused_it_is_not_planned(tmp_path: Path, said: str) -> None:
    build = compiled(tmp_path, f"cloth: {{state: [musty], {said}}}")
    assert named(build, r".*\.quarantine-.*") == []


def test_one_item_in_two_stages_is_frozen_once(tmp_path: Path) -> None:
    """The thread sews block and perhaps headbands; the paper is block and lining."""
    lining = "text_block: {lining: {stock: end-sheets}}\n"
    build = compiled(tmp_path, "end-sheets: {state: [musty]}", more=lining)
    assert len(named(build, r".*\.quarantine-end-sheets")) == 1


def test_sheets_are_frozen_and_then_aged(tmp_path: Path) -> None:
    build = compiled(tmp_path, "paper: {state: [musty], aged: tea}")
    place = {one.id: at for at, one in enumerate(build.order)}
    (aged,) = named(build, r"text-block\.age-paper")
    assert aged.after == ("text-block.quarantine-paper",)
    assert aged.wait is not None
    assert aged.wait.value == pytest.approx(12 * 3600)
    assert place["text-block.quarantine-paper"] < place[aged.id] < place["text-block.cut-folios"]
    assert any(one.operation == aged.id for one in build.plan.moisture.wettings)


@pytest.mark.parametrize(
    ("item", "cautions"),
    [
        ("cloth: {found: second-hand, state: [clean]}", {"mould-thrift"}),
        ("cloth: {found: old, state: [clean]}", {"mould-thrift", "historic-poison"}),
        (
            "cloth: {found: old, state: [painted], colour: Paris green}",
            {"mould-thrift", "historic-poison", "antique-green-cloth", "old-paint"},
        ),
        ("cloth: {colour: Paris green, state: [painted]}", set()),
        ("paper: {found: old, state: [clean]}", {"mould-thrift"}),
    ],
)
def test_cautions_of_what_is_old(tmp_path: Path, item: str, cautions: set[str]) -> None:
    kinds = {"mould-thrift", "historic-poison", "antique-green-cloth", "old-paint"}
    met = {name for one in compiled(tmp_path, item).order for name in one.cautions}
    assert met & kinds == cautions


def test_an_old_button_with_paint_on_it(tmp_path: Path) -> None:
    """Its step names no stock item; the item's name says which it means."""
    item = "button: {kind: supply, count: 1, found: old, state: [painted]}"
    build = compiled(tmp_path, item, more="closure: {use: button-loop, button: 18 mm}\n")
    users = [one.id for one in build.order if "old-paint" in one.cautions]
    assert users == ["finishing.set-closure"]
