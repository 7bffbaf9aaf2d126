"""Relief parts out of a spec's own words, read and checked as any spec is."""

from __future__ import annotations

from functools import cache
from typing import Annotated, Any

from case_books import CASE, HEAD, TEXT_BLOCK
from foredge.contract import (
    LENGTH,
    RELIEF_PART,
    Origin,
    Panel,
    Part,
    PartOptions,
    ReliefPartResult,
    ReliefShape,
    leaf,
    relief_job,
    shape_part,
    slot,
)
from foredge.registry import Registry
from foredge.testing import book_from, diagnostics_of, registry_of

PANEL = Panel(
    "front",
    leaf(150.0, LENGTH, "case.board.width", Origin("spec")),
    leaf(220.0, LENGTH, "case.board.height", Origin("spec")),
)


class FormsOptions(PartOptions, frozen=True, kw_only=True, tag="test-forms"):
    """Nothing but parts."""

    parts: tuple[Annotated[Part[Any], slot(RELIEF_PART)], ...]


class Forms:
    """An embellishment that only holds parts."""

    kind = "embellishment"
    name = "test-forms"
    title = "Forms"
    options = FormsOptions


@cache
def _registry() -> Registry:
    return registry_of(Forms())


def _text(part: str) -> str:
    item = f"embellishment:\n  - use: test-forms\n    parts: [{part}]\n"
    return HEAD + TEXT_BLOCK + CASE + item


def make(part: str, panel: Panel = PANEL) -> ReliefPartResult:
    """What one part, written in YAML, makes on a panel of 150 by 220 mm."""
    book = book_from(_text(part), registry=_registry())
    (nested,) = book.embellishment[0].options.parts
    return shape_part(relief_job(book, nested, panel))


def shape(part: str) -> ReliefShape:
    """The shape of a part that has nothing wrong with it."""
    result = make(part)
    assert result.shape is not None
    assert not result.problems
    return result.shape


def rules(part: str) -> list[tuple[str, str]]:
    """Rule and place (the path's end within the part) of each problem of a part."""
    return [(problem.rule, ".".join(map(str, problem.path[4:]))) for problem in make(part).problems]


def said(part: str) -> list[str]:
    """What the compiler says of a part before it is shaped."""
    return diagnostics_of(_text(part), registry=_registry())
