"""What a closure is handed, and where its work goes: an invented one stands in for all kinds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest

from case_books import HEAD, TEXT_BLOCK
from finishing_books import RELIEF, finished, ids, pressed
from foredge.contract import (
    BEFORE_PASTE_DOWNS,
    ClosureJob,
    ClosureResult,
    Operation,
    PartOptions,
    StageResult,
    say,
)
from foredge.testing import book_from
from ornament_books import CASE

SEEN: list[ClosureJob] = []


class CordOptions(PartOptions, frozen=True, kw_only=True, tag="test-cord"):
    """A cord."""


@dataclass(frozen=True)
class Cord:
    """Anchored before the paste-downs, cut to length at the end."""

    kind: str = "closure"
    name: str = "test-cord"
    title: str = "Cord"
    options: type[CordOptions] = CordOptions

    def fasten(self, job: ClosureJob) -> ClosureResult:
        SEEN.append(job)
        hand = job.book.practice("hand-closure")
        anchor = Operation("finishing.anchor-closure", "Anchor the cord", (say("Glue it in."),),
                           hand, after=(job.covered,), before_any=BEFORE_PASTE_DOWNS)  # fmt: skip
        fit = Operation("finishing.fit-closure", "Cut the cord", (say("Tie it."),), hand,
                        after=(anchor.id, job.coated))  # fmt: skip
        adds = job.book.table("board", "chipboard", "thickness")
        return ClosureResult(StageResult(operations=(anchor, fit)), adds, fit.id)


def tied(*, coats: str = "", embellishment: str = "") -> Any:
    text = f"{HEAD}{TEXT_BLOCK}{CASE}closure: {{use: test-cord}}\n{embellishment}{coats}"
    SEEN.clear()
    return book_from(text, plugins=[Cord()])


def test_it_is_told_the_pressed_book_without_relief() -> None:
    finished(tied())
    (job,) = SEEN
    assert (job.board_width.value, job.board_height.value) == (147.0, 211.0)
    assert (job.board.value, job.covering.value) == (2.0, 0.5)
    assert job.case_thickness.value == job.thickness.value == 17.0
    assert job.front.height.value == job.back.height.value == 0.0
    assert (job.sculpted, job.coated, job.pressed) == ("", "case.press", "case.press")
    assert (job.boards_cut, job.covered, job.cased_in) == (
        "case.cut-boards",
        "case.cover",
        "case.case-in",
    )


def test_a_relief_is_in_its_thickness_and_behind_its_gate() -> None:
    finished(tied(embellishment=f"embellishment:\n{RELIEF}"), pressed(relief=True))
    (job,) = SEEN
    assert job.front.height.value == 17.0 and job.front.footprint.value == 2400.0
    assert job.thickness.value == pytest.approx(34.0) and job.thickness.gates == {"G3"}
    assert job.case_thickness.gates == frozenset()
    assert job.sculpted == "sculpt.check-dry"


def test_it_is_fitted_when_the_painted_book_may_be_closed() -> None:
    result = finished(tied(coats="finishing:\n  - {use: wax}\n"))
    assert SEEN[0].coated == "finishing.rest-open"
    by_id = {one.id: one for one in result.operations}
    assert by_id["finishing.rest-open"].after == ("finishing.wax",)
    shut = by_id["finishing.rest-closed"]
    assert shut.after == ("finishing.rest-open", "finishing.fit-closure")
    assert ids(result)[-1] == "rest-closed"


def test_it_adds_its_thickness_to_the_closed_book() -> None:
    of = tied()
    result = finished(of)
    card = of.table("board", "chipboard", "thickness").value
    assert result.quantity("finishing.closed.thickness").value == pytest.approx(17.0 + card)
