"""PyYAML's syntax errors in plain words, at the place that caused them."""

from __future__ import annotations

import re
from collections.abc import Sequence

import yaml

_SYNTAX = "yaml-syntax"
_QUOTED = re.compile(r"""^[^"'#]*:\s+(["']).*\1\s*[^\s#].*$""")

_PLAIN = (
    # (in PyYAML's problem, what a maker reads), the first that fits is used
    ("mapping values are not allowed", "a ':' too many, or a line that is not indented like its "
     "neighbours; text that holds ': ' goes in quotes"),
    ("sequence entries are not allowed", "a list cannot start on this line; put each '- ' on a "
     "line of its own below the key"),
    ("found incompatible YAML document", "only YAML 1.x is read; take this line away"),
    ("but found another document", "a second document starts here; one file holds one spec"),
    ("found unknown escape", "a backslash in double quotes starts an escape; write two "
     "backslashes, or single quotes"),
    ("expected <block end>", "this line is not indented like its neighbours"),
    ("expected the node content", "a value is missing here"),
)  # fmt: skip


def explain_syntax(
    failure: yaml.MarkedYAMLError, lines: Sequence[str]
) -> tuple[yaml.Mark | None, str, str]:
    """Where the mistake is, what to say and the name of the rule; ``lines`` is the text."""
    problem, mark = failure.problem or "", failure.problem_mark
    context, start = failure.context or "", failure.context_mark
    line = lines[mark.line] if mark and mark.line < len(lines) else ""
    if "cannot start any token" in problem:
        return _bad_start(problem, mark, line)
    if start and "found unexpected end of stream" in problem:
        return start, "this quote is never closed", _SYNTAX
    if start and "could not find expected ':'" in problem:
        return start, "this line needs a ':' and a value, or quotes around it", _SYNTAX
    if start and (closing := re.match(r"expected ',' or '([\]}])'", problem)):
        where = f"on line {mark.line + 1} " if mark and mark.line != start.line else ""
        text = f"this bracket needs a ',' or a '{closing[1]}' {where}before what follows"
        return start, text, _SYNTAX
    if "found undefined alias" in problem:
        name = problem.split()[-1].strip("'\"")
        return mark, f"no anchor '&{name}' stands above this '*{name}'", "unknown-alias"
    if "found duplicate anchor" in context and start:
        text = f"this anchor is already used on line {start.line + 1}; give it another name"
        return mark, text, "duplicate-anchor"
    if "expected <block end>" in problem and _QUOTED.match(line):
        text = "something follows the closing quote; put the whole text in the other quotes"
        return mark, text, _SYNTAX
    for theirs, ours in _PLAIN:
        if theirs in problem:
            return mark, ours, _SYNTAX
    text = " ".join(f"{context}: {problem}".split()) if context else problem
    return mark or start, f"this cannot be read as YAML ({text})", _SYNTAX


def _bad_start(
    problem: str, mark: yaml.Mark | None, line: str
) -> tuple[yaml.Mark | None, str, str]:
    """A character that no value may begin with."""
    found = problem.split("'")[1] if "'" in problem else problem
    if found != "\\t":
        return mark, f"a value cannot begin with '{found}'; put it in quotes", _SYNTAX
    if mark and not line[: mark.column].strip():
        return mark, "this line is indented with a tab; use spaces", "tab-indent"
    return mark, "a tab stands here; use a space", "tab-indent"
