"""What rules share: a problem in the rule's own words, and the times of what is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from foredge.contract import Build, Part, Path, Problem, Rule, Severity, Sheet, paper_figures

DAY = 86_400.0


def told(rule: Rule, path: Path, text: str, severity: Severity | None = None) -> Problem:
    """``text`` at ``path``, with everything else the rule says of itself."""
    return Problem(
        severity or rule.severity,
        path,
        text,
        rule.name,
        consequence=rule.consequence,
        remedy=rule.remedy,
        source=rule.source,
    )


def between(earlier: str, later: str) -> float | None:
    """Seconds from one time under ``done`` to another; None where one is not said.

    A day without a clock is as kind as it can be: early in the day before, late after.
    """
    if not earlier or not later:
        return None
    slack = DAY if len(earlier) <= len("2026-12-01") or len(later) <= len("2026-12-01") else 0.0
    return (datetime.fromisoformat(later) - datetime.fromisoformat(earlier)).total_seconds() + slack


def done_place(build: Build, operation: str) -> Path:
    """Where ``done`` says that ``operation`` is finished."""
    names = list(build.book.done)
    return ("done", names.index(operation)) if operation in names else ("done",)


def hours(seconds: float) -> str:
    """``36 h`` or ``8 days``, for a problem's text."""
    if seconds >= 3 * DAY:
        return f"{seconds / DAY:.0f} days"
    return f"{seconds / 3600:.0f} h"


@dataclass(frozen=True, slots=True)
class EndPaper:
    """The paper of the end-papers: its row of the paper table, its grammage in g/m2.

    ``called`` is what a sentence calls it.
    """

    row: str
    gsm: float
    called: str
    path: Path


def end_paper_of(build: Build) -> EndPaper | None:
    """The end-paper the spec names; None where it is left to the maker."""
    part: Part[Any] | None = build.book.sections["text_block"].end_papers
    if part is None:
        return None
    stock = getattr(part.options, "paper", None)
    row = getattr(part.options, "material", None) or "end-paper"
    figures = paper_figures(build.book, stock, row)
    item = build.book.stock.get(stock) if stock else None
    row = (item.material if isinstance(item, Sheet) else None) or row
    gsm = figures.grammage.value * 1e6
    return EndPaper(row, gsm, f"'{stock}'" if stock else "the end-paper", part.path)


def adhesives_of(build: Build) -> Iterator[tuple[Path, str]]:
    """Every adhesive the spec names, with its place: sections, their parts, embellishment."""
    for section, options in build.book.sections.items():
        yield from _adhesive((section,), options)
        for key in getattr(options, "__struct_fields__", ()):
            value = getattr(options, key)
            for one in value if isinstance(value, tuple) else (value,):
                if isinstance(one, Part):
                    yield from _adhesive(one.path, one.options)
    for part in build.book.embellishment:
        yield from _adhesive(part.path, part.options)


def _adhesive(path: Path, options: object) -> Iterator[tuple[Path, str]]:
    adhesive = getattr(options, "adhesive", None)
    if isinstance(adhesive, str):
        yield (*path, "adhesive"), adhesive
