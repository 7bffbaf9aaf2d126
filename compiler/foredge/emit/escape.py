"""Words from a spec or a plugin, made harmless in Markdown.

The result is one line that shows as it was written: no heading, list, table, link, code or
HTML can come out of it.
"""

from __future__ import annotations

import re
import unicodedata

_ENTITIES = {"&": "&amp;", "<": "&lt;", ">": "&gt;"}
_SPECIAL = re.compile(r"[\\`*\[\]|~$]|(?<![A-Za-z0-9])_|_(?![A-Za-z0-9])|[&<>]")
_BLOCK_START = re.compile(r"^([#+=\-]|[0-9]{1,9}(?=[.)](?:\s|$)))")
_MARKS_OF_DIRECTION = frozenset("\u200e\u200f\u061c")


def one_line(text: str) -> str:
    """``text`` on one line, without control characters and marks that turn the reading round."""
    kept = (
        char
        for char in re.sub(r"\s+", " ", text)
        if unicodedata.category(char) not in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp")
        and char not in _MARKS_OF_DIRECTION
    )
    return "".join(kept).strip()


def escape(text: str) -> str:
    """``text`` as plain words of a Markdown line or table cell."""
    line = _SPECIAL.sub(lambda match: _ENTITIES.get(match[0], "\\" + match[0]), one_line(text))
    return escape_start(line)


def escape_start(line: str) -> str:
    """Keep the first character of a line from beginning a heading, a list or a rule."""
    return _BLOCK_START.sub(lambda match: _start(match[1]), line)


def _start(text: str) -> str:
    # "1." would begin a list; the digit itself cannot be escaped, so it becomes an entity.
    return f"&#{ord(text[0])};{text[1:]}" if text[0].isdigit() else "\\" + text


def code(text: str) -> str:
    """``text`` as a code span, for names that are typed as they stand."""
    return "`" + one_line(text).replace("`", "'").replace("|", "/") + "`"
