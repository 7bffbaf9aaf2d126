"""Closures on a finished book of known sizes, for the tests; no stage is run."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from case_books import CASE, HEAD, TEXT_BLOCK, mm
from foredge.contract import (
    AREA,
    LENGTH,
    ClosureJob,
    ClosureResult,
    Operation,
    Origin,
    Problem,
    Relief,
    leaf,
)
from foredge.registry import Registry
from foredge.testing import book_from, registry_of

STOCK = """\
  ribbon: {kind: tape, width: 10 mm, thickness: 0.4 mm, length: 2 m}
  belt: {kind: tape, width: 20 mm, thickness: 1.5 mm}
  cord: {kind: thread, diameter: 1.5 mm}
"""
RELIEF = """\
embellishment:
  - {use: relief, on: front, made_on: %s, parts: [{use: dome, diameter: 60 mm, height: 10 mm}]}
"""
NONE = Relief(
    leaf(0.0, LENGTH, "none", Origin("constant")), leaf(0.0, AREA, "n", Origin("constant"))
)


@cache
def registry() -> Registry:
    """The built-ins, collected once."""
    return registry_of()


def job(closure: str, *, relief: float = 0.0, made_on: str = "", **sizes: float) -> ClosureJob:
    """A book 150 by 215 by 20 mm, boards 2.5 mm; ``relief`` mm high on the front if any."""
    more = RELIEF % made_on if made_on else ""
    book = book_from(
        f"{HEAD}{STOCK}{TEXT_BLOCK}{CASE}{more}closure: {closure}\n", registry=registry()
    )
    assert book.closure is not None
    known = {
        "board_width": 148.0, "board_height": 213.0, "board": 2.5, "covering": 0.5, "spine": 16.0,
        "joint": 8.0, "square_fore": 3.0, "case_thickness": 20.0, "height": 214.0, "width": 158.0,
        "swell": 0.0, **sizes,
    }  # fmt: skip
    lengths = {name: mm(value, name) for name, value in known.items()}
    raised = NONE.height
    if relief:
        estimate = mm(relief, "relief", 0.5)
        raised = book.measured(estimate, "G3", "relief.front", "height of the relief")
    thick = lengths["case_thickness"] + raised
    return ClosureJob(
        book=book, part=book.closure, thickness=thick,
        front=replace(NONE, height=raised), back=NONE, spine_relief=NONE,
        boards_cut="case.cut-boards", covered="case.cover", cased_in="case.case-in",
        pressed="case.press", sculpted="sculpt.dry" if relief else "",
        coated="finishing.varnish", **lengths,
    )  # fmt: skip


def fastened(closure: str, **more: Any) -> ClosureResult:
    """What the closure makes of :func:`job`."""
    asked = job(closure, **more)
    result: ClosureResult = asked.part.plugin.fasten(asked)
    return result


def value(result: ClosureResult, key: str) -> float:
    """``finishing.closure.<key>`` in mm."""
    return result.work.quantity(f"finishing.closure.{key}").value


def operation(result: ClosureResult, verb: str) -> Operation:
    """``finishing.<verb>-closure``."""
    (found,) = [o for o in result.work.operations if o.id == f"finishing.{verb}-closure"]
    return found


def rules(result: ClosureResult) -> dict[str, Problem]:
    """The problems by their rule."""
    return {problem.rule: problem for problem in result.work.problems}
