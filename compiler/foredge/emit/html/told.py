"""Words of the sheets as HTML, in every system of units at once.

The view functions of :mod:`foredge.emit` give one text for one system, made harmless for
Markdown. Here the same view is made once a system, turned into HTML, and laid together:
where the texts differ the page holds all of them and shows the one that is wanted.
"""

from __future__ import annotations

import html
import re
import unicodedata
from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from types import SimpleNamespace
from typing import Any

from markupsafe import Markup

from foredge.contract import Band, Build

SYSTEMS = ("metric", "imperial", "both")

_MARKDOWN = re.compile(r"\\([^\w\s])|&(?:amp|lt|gt|#\d{1,4});|`([^`]*)`|\*\*([^*]+)\*\*|\\(_)")


def as_html(words: str) -> Markup:
    """Words that were made harmless for Markdown, as harmless HTML: the inverse, and code."""
    return Markup("").join(_pieces(words))


def as_text(words: str) -> str:
    """The same as plain words."""
    return html.unescape(as_html(words).striptags()) if words.strip() else words


def _pieces(words: str) -> list[Markup]:
    found, end = [], 0
    for match in _MARKDOWN.finditer(words):
        found.append(Markup.escape(words[end : match.start()]))
        found.append(_piece(match))
        end = match.end()
    return [*found, Markup.escape(words[end:])]


def _piece(match: re.Match[str]) -> Markup:
    mark, code, strong, line = match.groups()
    if code is not None:
        return Markup("<code>{}</code>").format(code)
    if strong is not None:
        return Markup("<strong>{}</strong>").format(strong)
    return Markup.escape(mark or line or html.unescape(match[0]))


def harmless(words: str) -> str:
    """Words from a spec or a plugin without what turns the reading round or cannot be seen."""
    spaced = re.sub(r"\s+", " ", words)
    return "".join(
        char
        for char in spaced
        if unicodedata.category(char) not in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp")
    )


def switched(texts: tuple[str, str, str], shown: str, **attributes: str) -> Markup:
    """One of three plain ``texts`` (metric, imperial, both), the others kept beside it.

    ``attributes`` are those of the element, a button where ``data_q`` is among them.
    """
    kept = dict(attributes)
    metric, imperial, both = texts
    if not metric == imperial == both:
        kept |= {"data_m": metric, "data_i": imperial, "data_b": both}
    words = texts[SYSTEMS.index(shown)]
    if not kept:
        return Markup.escape(words)
    pairs = Markup("").join(
        Markup(' {}="{}"').format(name.replace("_", "-"), value) for name, value in kept.items()
    )
    if "data_q" in kept:
        return Markup('<button type="button" class="n"{}>{}</button>').format(pairs, words)
    return Markup("<span{}>{}</span>").format(pairs, words)


def each_system(build: Build, view: Callable[[Build], Any]) -> list[Any]:
    """``view`` of ``build`` once a system of units, in the order of :data:`SYSTEMS`."""
    books = [replace(build, book=replace(build.book, display=system)) for system in SYSTEMS]
    return [view(book) for book in books]


def told(build: Build, view: Callable[[Build], Any]) -> Any:
    """``view`` of ``build`` as HTML: the same shape, with every text ready for the page.

    A dataclass becomes a namespace with its fields; quantities and their bands stay as they are.
    """
    return _together(each_system(build, view), build.book.display)


def _together(views: list[Any], shown: str) -> Any:
    first = views[0]
    if isinstance(first, str):
        if views[1:] == [first, first]:
            return as_html(first)
        metric, imperial, both = (as_text(view) for view in views)
        return switched((metric, imperial, both), shown)
    if isinstance(first, tuple | list):
        return [_together(list(items), shown) for items in zip(*views, strict=True)]
    if is_dataclass(first) and not isinstance(first, Band | type):
        names = [field.name for field in fields(first)]
        return SimpleNamespace(
            **{name: _together([getattr(view, name) for view in views], shown) for name in names}
        )
    return first
