"""Problems as a SARIF 2.1.0 log (OASIS, Static Analysis Results Interchange Format, 2020).

A problem the maker accepted is a result too, with the reason as its suppression (3.27.23):
whoever reads the log sees that it was looked at. Same problems, same bytes: nothing of the
clock or the machine is in it.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import quote

import foredge
from foredge.contract import Accepted, Diagnostic
from foredge.problem import Span
from foredge.registry import Registry

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
VERSION = "2.1.0"

Plain = dict[str, Any]


@dataclass(frozen=True, slots=True)
class _Finding:
    """A problem at its place; ``because`` is the maker's reason, None where it stands."""

    span: Span
    severity: str
    rule: str
    message: str
    consequence: str
    remedy: str
    source: str
    because: str | None


def sarif_text(
    diagnostics: Iterable[Diagnostic], accepted: Iterable[Accepted], registry: Registry, root: Path
) -> str:
    """One log with one run. File names become URIs relative to ``root`` where they lie in it."""
    findings = [_standing(one) for one in diagnostics]
    findings += sorted(
        {_consented(one) for one in accepted if one.span is not None},
        key=lambda one: (one.span.file, one.span.line, one.span.column, one.rule, one.message),
    )
    rules = _rules(findings, registry)
    places = {rule["id"]: place for place, rule in enumerate(rules)}
    run: Plain = {
        "tool": {"driver": {"name": "foredge", "version": foredge.__version__, "rules": rules}},
        "columnKind": "unicodeCodePoints",
        "invocations": [{"executionSuccessful": True}],
        "results": [_result(one, places[one.rule], root) for one in findings],
    }
    log = {"$schema": SCHEMA, "version": VERSION, "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2)


def _standing(one: Diagnostic) -> _Finding:
    return _Finding(
        one.span,
        one.severity.value,
        one.rule,
        one.message,
        one.consequence,
        one.remedy,
        one.source,
        None,
    )


def _consented(one: Accepted) -> _Finding:
    assert one.span is not None
    told = one.problem
    words = (told.consequence, told.remedy, told.source)
    message = Diagnostic(one.span, told.severity, told.text, told.rule, *words).message
    return _Finding(one.span, told.severity.value, told.rule, message, *words, one.because)


def _rules(findings: Sequence[_Finding], registry: Registry) -> list[Plain]:
    """Every rule that found something, by name. A rule plugin is described by itself, what a
    stage or the reader of the spec reports by what it says of the first place."""
    first: dict[str, _Finding] = {}
    for one in findings:
        first.setdefault(one.rule, one)
    return [_rule(one, registry) for _, one in sorted(first.items())]


def _rule(one: _Finding, registry: Registry) -> Plain:
    known = registry.find("rule", one.rule)
    plugin = known.plugin if known is not None else None
    words = one.rule.split("-")
    title = plugin.title if plugin is not None else " ".join(words).capitalize()
    told: Mapping[str, str] = {
        key: getattr(plugin, key) if plugin is not None else getattr(one, key)
        for key in ("consequence", "remedy", "source")
    }
    source = f"Source: {told['source']}" if told["source"] else ""
    help_text = [text for text in (told["consequence"], told["remedy"], source) if text]
    rule: Plain = {
        "id": one.rule,
        "name": "".join(word.capitalize() for word in words),
        "shortDescription": {"text": _sentence(title)},
    }
    if told["consequence"]:
        rule["fullDescription"] = {"text": _sentence(told["consequence"])}
    if help_text:
        rule["help"] = {"text": " ".join(_sentence(text) for text in help_text)}
    level = plugin.severity.value if plugin is not None else one.severity
    rule["defaultConfiguration"] = {"level": level}
    return rule


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."


def _result(one: _Finding, place: int, root: Path) -> Plain:
    # Suppressions stand at every result or at none (3.27.23): empty says "not suppressed".
    suppressed = [] if one.because is None else [{"kind": "inSource", "justification": one.because}]
    result: Plain = {
        "ruleId": one.rule,
        "ruleIndex": place,
        "level": one.severity,
        "message": {"text": one.message},
        "locations": [{"physicalLocation": _location(one.span, root)}],
        "suppressions": suppressed,
    }
    if one.source:
        result["properties"] = {"source": one.source}
    return result


def _location(span: Span, root: Path) -> Plain:
    return {
        "artifactLocation": {"uri": uri_of(span.file, root)},
        "region": {"startLine": span.line, "startColumn": span.column},
    }


def uri_of(file: str, root: Path) -> str:
    """The URI of a file as the user named it: relative to ``root``, or whole where it lies
    elsewhere (a reference that climbs with ``..`` means nothing to who reads the log)."""
    path = (root / file).resolve()
    inside = root.resolve()
    if path != inside and path.is_relative_to(inside):
        return quote(path.relative_to(inside).as_posix(), safe="/")
    return path.as_uri()
