"""Scalars of the core schema of YAML 1.2.2 (10.3), less numbers that begin with a zero.

``no``, ``12:30``, ``010``, ``1_000`` and dates are text here, as they read.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Any

import yaml

TAG = "tag:yaml.org,2002:"
CANNOT = "leave it out"

_PATTERNS: dict[str, tuple[re.Pattern[str], str]] = {
    # tag: what it looks like, the characters it begins with
    "null": (re.compile(r"(?:~|null|Null|NULL|)\Z"), "~nN"),
    "bool": (re.compile(r"(?:true|True|TRUE|false|False|FALSE)\Z"), "tTfF"),
    "int": (re.compile(r"(?:[-+]?(?:0|[1-9][0-9]*)|0o[0-7]+|0x[0-9a-fA-F]+)\Z"), "-+0123456789"),
    "float": (
        re.compile(
            r"(?:[-+]?(?:\.[0-9]+|(?:0|[1-9][0-9]*)(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?"
            r"|[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN))\Z"
        ),
        "-+.0123456789",
    ),
    "merge": (re.compile(r"<<\Z"), "<"),
}
_KINDS = {"int": "a whole number", "float": "a number", "bool": "true or false", "null": "empty"}
_MOST_DIGITS = 18  # a whole number of 64 bits holds them all


@dataclass(frozen=True, slots=True)
class BadScalar:
    """Why a scalar cannot be read; ``instead`` is its plain text, so that nothing seems missing."""

    text: str
    rule: str
    instead: str


def add_resolvers(loader: type[yaml.SafeLoader]) -> None:
    """Make ``loader`` (with an empty resolver table of its own) resolve plain scalars so."""
    for tag, (pattern, firsts) in _PATTERNS.items():
        starts = [*firsts, ""] if tag == "null" else list(firsts)
        loader.add_implicit_resolver(TAG + tag, pattern, starts)


def tag_name(node: yaml.Node) -> str:
    """The tag as a spec writes it: ``!!set``, ``!mine``."""
    tag = str(node.tag)
    return "!!" + tag.removeprefix(TAG) if tag.startswith(TAG) else tag


def scalar(node: yaml.ScalarNode) -> Any:
    """The value of a resolved scalar, or a :class:`BadScalar`."""
    text: str = node.value
    tag = node.tag.removeprefix(TAG) if node.tag.startswith(TAG) else ""
    if tag in ("str", "merge"):
        if any("\ud800" <= letter <= "\udfff" for letter in text):
            return BadScalar(
                "an escape here makes half a character; write the character itself",
                "forbidden-character",
                text.encode("utf-8", "replace").decode("utf-8"),
            )
        return text
    if tag not in _KINDS:
        return BadScalar(f"the tag {tag_name(node)} is not known; {CANNOT}", "unknown-tag", text)
    if not _PATTERNS[tag][0].match(text):
        what = f"'{text}' is not {_KINDS[tag]}, as its tag {tag_name(node)} says"
        return BadScalar(f"{what}; take the tag away", "tag-does-not-fit", text)
    if tag == "null":
        return None
    if tag == "bool":
        return text.lower() == "true"
    return _number(tag, text)


def _number(tag: str, text: str) -> int | float | BadScalar:
    if tag == "int":
        base = {"0o": 8, "0x": 16}.get(text[:2], 10)
        if len(text) > _MOST_DIGITS + 1:
            return BadScalar(f"a number of {len(text)} digits is too long", "number-too-long", text)
        return int(text, base)
    number = math.inf if text.lower().endswith(("inf", "nan")) else float(text)
    if not math.isfinite(number):
        return BadScalar(
            f"'{text[:40]}' is not a number that can be measured", "number-not-finite", text
        )
    return number
