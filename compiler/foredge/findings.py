"""What a compilation finds wrong, collected step by step, and placed at the end."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any, TypeVar

from foredge.accept import UNUSED, apply_accepts
from foredge.contract import Accepted, Build, Diagnostic, Problem, Severity
from foredge.display_beside import beside
from foredge.spec.yaml_reader import Document, Positions

Value = TypeVar("Value")


class Stopped(Exception):
    """There are errors, and the next step would work on nonsense. Never leaves the compiler."""


class Findings:
    """The problems of one compilation, against the document that caused them."""

    def __init__(self, document: Document) -> None:
        self._document = document
        self._problems: list[Problem] = []
        self._told: Callable[[Problem], Problem] = _as_it_is

    def read(self) -> None:
        """Stop where the document could not be read at all."""
        if self._document.data is None:
            raise Stopped

    def take(self, problems: Iterable[Problem], *, stop: bool = False) -> None:
        """Add ``problems``; with ``stop``, stop if there are errors now."""
        self._problems += map(self._told, problems)
        if stop and self._hopeless():
            raise Stopped

    def tell_in(self, display: str) -> None:
        """From now on, problems tell their measures in the units of the spec's ``display``."""
        self._told = _as_it_is if display == "metric" else _beside

    def keep(self, step: tuple[Value | None, Iterable[Problem]]) -> Value:
        """A step's value, its problems added; stops where it failed."""
        value, problems = step
        self.take(problems, stop=True)
        if value is None:
            raise Stopped
        return value

    def _hopeless(self) -> bool:
        found = [one.severity for one in self._document.problems]
        found += [one.severity for one in self._problems]
        return Severity.ERROR in found

    def settle(
        self, build: Build | None
    ) -> tuple[Build | None, tuple[Diagnostic, ...], tuple[Accepted, ...]]:
        """The build with its diagnostics, those the maker accepted taken out."""
        left, accepted = apply_accepts(self._problems, _entries(self._document.data))
        if build is None:
            left = [problem for problem in left if problem.rule != UNUSED]
        placed = [_place(problem, self._document.positions) for problem in left]
        # Of a scalar the reader refused, nobody need say more.
        refused = {one.span for one in self._document.problems if one.severity is Severity.ERROR}
        placed = [one for one in placed if one.span not in refused]
        known = tuple(sorted({*self._document.problems, *placed}, key=_by_place))
        if build is None:
            return None, known, ()
        consents = tuple(self._spot(one) for one in accepted)
        return replace(build, diagnostics=known, accepted=consents), known, consents

    def _spot(self, one: Accepted) -> Accepted:
        return replace(one, span=self._document.positions.of(one.problem.path, one.problem.on_key))


def _as_it_is(problem: Problem) -> Problem:
    return problem


def _beside(problem: Problem) -> Problem:
    return replace(
        problem,
        text=beside(problem.text),
        consequence=beside(problem.consequence),
        remedy=beside(problem.remedy),
    )


def _entries(data: Any) -> list[Mapping[str, Any]]:
    """The well-formed entries under ``accept``, of a spec that may be anything."""
    said = data.get("accept", ()) if isinstance(data, dict) else ()
    entries = said if isinstance(said, list) else []
    return [one for one in entries if isinstance(one, dict) and {"rule", "because"} <= one.keys()]


def _by_place(diagnostic: Diagnostic) -> tuple[str, int, int, str]:
    span = diagnostic.span
    return span.file, span.line, span.column, str(diagnostic)


def _place(problem: Problem, positions: Positions) -> Diagnostic:
    return Diagnostic(
        positions.of(problem.path, problem.on_key),
        problem.severity,
        problem.text,
        problem.rule,
        problem.consequence,
        problem.remedy,
        problem.source,
    )


def worst(diagnostics: Sequence[Diagnostic]) -> Severity | None:
    """The worst severity among ``diagnostics``."""
    for severity in Severity:
        if any(diagnostic.severity is severity for diagnostic in diagnostics):
            return severity
    return None
