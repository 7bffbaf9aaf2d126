"""Jinja2, set up once: a missing name is an error, nothing is escaped twice, LF only."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined


@cache
def _environment() -> Environment:
    # Autoescape is off on purpose: the views hand over text made harmless for Markdown.
    return Environment(
        loader=PackageLoader("foredge", "emit/templates"),
        undefined=StrictUndefined,
        autoescape=False,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
        newline_sequence="\n",
    )


def render(template: str, **context: Any) -> bytes:
    """A Markdown file: no trailing spaces, never two blank lines, one line end at the end."""
    text = _environment().get_template(template).render(**context)
    lines = "\n".join(line.rstrip() for line in text.splitlines())
    return (re.sub(r"\n{3,}", "\n\n", lines).strip("\n") + "\n").encode()
