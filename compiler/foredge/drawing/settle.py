"""Finding a free place for words on a crowded drawing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from foredge.drawing.layout import expand
from foredge.drawing.model import Item, Label
from foredge.drawing.textbox import clash, label_box, text_width

ELLIPSIS = "…"


def words_of(items: Iterable[Item]) -> list[Label]:
    """Every label that ``items`` draw, those of dimensions and bars included."""
    return [item for item in expand(items) if isinstance(item, Label) and item.text]


def settle(
    choices: Iterable[Label], taken: Sequence[Label], width: float, height: float
) -> Label | None:
    """The first of ``choices`` on the page (``width`` by ``height`` mm) and clear of ``taken``."""
    for label in choices:
        on_page = all(0 <= x <= width and 0 <= y <= height for x, y in label_box(label).corners)
        if on_page and not any(clash(label, other) for other in taken):
            return label
    return None


def shortened(label: Label, room: float) -> Label:
    """``label`` with so much of its words as go into ``room`` mm, and dots for the rest."""
    if text_width(label.text, label.size) <= room:
        return label
    words = label.text
    while words and text_width(words + ELLIPSIS, label.size) > room:
        words = words[:-1]
    return replace(label, text=words.rstrip() + ELLIPSIS)
