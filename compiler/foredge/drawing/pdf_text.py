"""Words in a PDF: every character finds a letter, or is said by other means.

The letters come from the font that ReportLab brings along (Bitstream Vera Sans, embedded).
What it lacks is written out (``⅜`` as 3/8), or set in one of the standard Asian fonts, which
PDF readers bring along themselves (they hold Greek and Cyrillic too). What none of them has is
named by its number, so that nothing is dropped unseen.
"""

from __future__ import annotations

import unicodedata
from functools import cache
from itertools import groupby
from typing import Any

from foredge.drawing.style import words

MAIN = "Vera"

_ASIAN = (
    ("shift_jis", "HeiseiKakuGo-W5"),
    ("gb2312", "STSong-Light"),
    ("euc_kr", "HYSMyeongJo-Medium"),
)
_WRITTEN_OUT = {"→": "->", "←": "<-", "↔": "<->", "⁄": "/", "\u2212": "-", "″": '"', "′": "'"}


@cache
def main_letters() -> frozenset[int]:
    """What the main font has letters for; registers it at the first call."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(MAIN, "Vera.ttf")
    pdfmetrics.registerFont(font)
    return frozenset(font.face.charToGlyph)


def runs(text: str) -> list[tuple[str, str]]:
    """``text`` as (font, words) in order of reading."""
    told = _spelt(unicodedata.normalize("NFC", words(text)))
    return [
        (font, "".join(char for _, char in group))
        for font, group in groupby(told, key=lambda one: one[0])
    ]


def width(text: str, size: float) -> float:
    """How wide ``text`` is printed at an em of ``size``."""
    from reportlab.pdfbase import pdfmetrics

    return float(sum(pdfmetrics.stringWidth(told, font, size) for font, told in runs(text)))


def _spelt(text: str) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    for char in text:
        font, told = _letter(char)
        # 1⅜ is one and three eighths, and not thirteen eighths.
        apart = len(told) > 1 and told[0].isdigit() and bool(found) and found[-1][1].isdigit()
        found += [(font, one) for one in (" " + told if apart else told)]
    return found


@cache
def _letter(char: str) -> tuple[str, str]:
    """The font and what is written for ``char``."""
    if _has(char):
        return MAIN, char
    plain = "".join(_WRITTEN_OUT.get(one, one) for one in unicodedata.normalize("NFKC", char))
    if _has(plain):
        return MAIN, plain
    for coding, font in _ASIAN:
        if _codes(char, coding):
            _register(font)
            return font, char
    bare = "".join(one for one in unicodedata.normalize("NFKD", char) if _has(one))
    return MAIN, bare or f"[U+{ord(char):04X}]"


def _has(text: str) -> bool:
    return bool(text) and all(ord(char) in main_letters() for char in text)


def _codes(char: str, coding: str) -> bool:
    try:
        char.encode(coding)
    except UnicodeEncodeError:
        return False
    return True


@cache
def _register(font: str) -> None:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.cidfonts import UnicodeCIDFont

    made: Any = UnicodeCIDFont(font)
    pdfmetrics.registerFont(made)
