"""The plan's sections of the page: cutting, shopping, money, evenings, water.

Each takes what the view function of the Markdown sheet gives, so that both say the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from foredge.contract import Build
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.pictures import Picture


@dataclass(frozen=True, slots=True)
class Block:
    """A piece of a section: words, a list, a table, pictures; all may be empty."""

    title: Markup | str = ""
    words: Sequence[Markup | str] = ()
    items: Sequence[Markup | str] = ()
    ordered: bool = False
    heads: Sequence[str] = ()
    rows: Sequence[Sequence[Markup | str]] = ()
    pictures: Sequence[Picture] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the page; ``anchor`` is its id."""

    anchor: str
    title: str
    blocks: Sequence[Block]


def plan_sections(build: Build, numbers: Numbers) -> tuple[Section, ...]:
    """The sections that have something to say, in the order in which they are read."""
    return ()
