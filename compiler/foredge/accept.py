"""``accept:`` silences a rule by name, for a reason; errors are never silenced."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Any

from foredge.problem import Accepted, Path, Problem, Severity, warning

UNUSED = "accept-unused"
"""The rule that tells of an entry which matches nothing."""


def apply_accepts(
    problems: Sequence[Problem], entries: Sequence[Mapping[str, Any]]
) -> tuple[list[Problem], list[Accepted]]:
    """Problems that stay, and those accepted; an entry that matches nothing is a warning."""
    left: list[Problem] = []
    accepted: list[Accepted] = []
    matched: set[int] = set()
    for problem in problems:
        place = _entry_for(problem, entries)
        if place is None:
            left.append(problem)
            continue
        matched.add(place)
        if problem.severity is Severity.ERROR:
            left.append(replace(problem, remedy=_join(problem.remedy, _CANNOT)))
        else:
            accepted.append(Accepted(problem, str(entries[place]["because"])))
    rules = {problem.rule for problem in problems}
    left += [
        _unused(place, entries, rules) for place in range(len(entries)) if place not in matched
    ]
    return left, accepted


_CANNOT = "An error cannot be accepted"


def _join(first: str, second: str) -> str:
    return f"{first.rstrip('.')}. {second}" if first else second


def _entry_for(problem: Problem, entries: Sequence[Mapping[str, Any]]) -> int | None:
    for place, entry in enumerate(entries):
        if entry["rule"] == problem.rule and _at(problem.path, entry.get("at")):
            return place
    return None


def _at(path: Path, at: object) -> bool:
    """Whether ``at`` (``case.boards.layers``; nothing: everywhere) is a start of ``path``."""
    if at is None:
        return True
    wanted = str(at).split(".")
    return [str(step) for step in path[: len(wanted)]] == wanted


def _unused(place: int, entries: Sequence[Mapping[str, Any]], rules: set[str]) -> Problem:
    rule, at = str(entries[place]["rule"]), entries[place].get("at")
    where = "here" if at is None else f"at '{at}'"
    text = f"no problem {where} is called '{rule}', so there is nothing to accept"
    if any(one["rule"] == rule and one.get("at") in (None, at) for one in entries[:place]):
        text = f"an entry above names '{rule}' already, so this one accepts nothing"
    near = [] if rule in rules else get_close_matches(rule, sorted(rules), n=1)
    return warning(
        ("accept", place, "rule"),
        text,
        UNUSED,
        remedy=f"Did you mean {near[0]}?" if near else "Take the entry out",
    )
