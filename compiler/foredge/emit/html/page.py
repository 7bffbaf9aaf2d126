"""Jinja2 for the page: everything escaped, its style and script inlined and vouched for."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from importlib.resources import files
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, Template
from markupsafe import Markup


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("foredge", "emit/html"),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        newline_sequence="\n",
    )
    environment.globals["Markup"] = Markup
    return environment


def template(name: str) -> Template:
    """A template of this folder."""
    return _environment().get_template(name)


@cache
def inlined(name: str) -> Markup:
    """A file of this folder, to stand inside a ``style`` or ``script`` element."""
    text = files("foredge.emit.html").joinpath(name).read_text("utf-8")
    if "</s" in text.lower():
        raise ValueError(f"{name} would end the element it stands in")
    return Markup(text)


def policy(style: str, script: str) -> str:
    """The page's Content-Security-Policy: its own style and script, and nothing else.

    Source: W3C, Content Security Policy Level 3, 2.3.1 (hash sources), 6.1 (fetch directives).
    """
    return "; ".join(
        (
            "default-src 'none'",
            f"style-src '{_digest(style)}'",
            f"script-src '{_digest(script)}'",
            "img-src data:",
            "base-uri 'none'",
            "form-action 'none'",
        )
    )


def _digest(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def render_page(**context: Any) -> bytes:
    """The whole page."""
    style, script = inlined("bench.css"), inlined("bench.js")
    vouched = policy(style, script)
    page = template("page.html.j2").render(style=style, script=script, policy=vouched, **context)
    return page.encode()
