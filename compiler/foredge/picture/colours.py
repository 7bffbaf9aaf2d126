"""Colours: from words to light and back. Mixing is done in linear light.

The transfer curve is that of sRGB (IEC 61966-2-1:1999, clause 5.2; from memory).
"""

from __future__ import annotations

import re
from difflib import get_close_matches
from functools import lru_cache

from foredge.contract import Stuff
from foredge.tables import load_tables

Colour = tuple[float, float, float]
"""Red, green, blue in linear light, 0 to 1."""

NEUTRAL = "#b4ab9b"
FLAT = 0.72
"""The tone of a face that lies flat: there a colour is itself."""

_SHIFTS = {
    "dark": -0.45,
    "deep": -0.35,
    "dusky": -0.3,
    "old": -0.2,
    "aged": -0.2,
    "dull": -0.15,
    "light": 0.35,
    "pale": 0.5,
    "faded": 0.35,
    "bright": 0.12,
}
"""What a word does to the colour after it: towards black, or towards white."""

_MOST_WORDS = 12
_CLOSE = 0.79
_BESIDE = 0.3


def colour_of(stuff: Stuff) -> Colour:
    """What ``stuff`` looks like; grey-brown where neither its words nor its row are known."""
    return find(stuff.said) or find(stuff.row) or read(NEUTRAL)


@lru_cache(maxsize=256)
def find(said: str) -> Colour | None:
    """The colour that ``said`` names: its last word that is known, tinged by those before it."""
    found: list[Colour] = []
    shift = 0.0
    row = _row(said.strip().lower().replace(" ", "-"))
    if row is not None:
        return row
    words = re.findall(r"[a-z]+", said.lower())[:_MOST_WORDS]
    place = 0
    while place < len(words):
        pair = _row("-".join(words[place : place + 2])) if place + 1 < len(words) else None
        one = pair if pair is not None else _near(words[place])
        if one is not None:
            found.append(one)
        elif words[place] in _SHIFTS:
            shift += _SHIFTS[words[place]]
        place += 1 if pair is None else 2
    if not found:
        return None
    whole = found[-1]
    for other in found[:-1]:
        whole = mix(whole, other, _BESIDE)
    return shifted(whole, max(-0.8, min(0.8, shift)))


def _row(name: str) -> Colour | None:
    rows = _table()
    return read(rows[name]) if name in rows else None


def _near(word: str) -> Colour | None:
    if word in _SHIFTS or len(word) < 3:
        return None
    # A slip of the pen is seldom in the first letter: crust is no rust.
    alike = [name for name in _table() if name[0] == word[0]]
    close = get_close_matches(word, alike, n=1, cutoff=_CLOSE)
    return _row(close[0]) if close else None


@lru_cache(maxsize=1)
def _table() -> dict[str, str]:
    return {row.name: row.text("srgb") for row in load_tables().rows("colours")}


def read(srgb: str) -> Colour:
    """``#rrggbb`` as light."""
    red, green, blue = (_linear(int(srgb[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return red, green, blue


def written(colour: Colour) -> str:
    """Light as ``#rrggbb``."""
    return "#" + "".join(f"{round(255 * _curved(part)):02x}" for part in colour)


def _linear(part: float) -> float:
    return float(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)


def _curved(part: float) -> float:
    part = max(0.0, min(1.0, part))
    return float(12.92 * part if part <= 0.0031308 else 1.055 * part ** (1 / 2.4) - 0.055)


def mix(one: Colour, other: Colour, share: float) -> Colour:
    """``one`` with ``share`` of ``other`` in it."""
    red, green, blue = (a + (b - a) * share for a, b in zip(one, other, strict=True))
    return red, green, blue


def shifted(colour: Colour, by: float) -> Colour:
    """Towards white for a positive ``by``, towards black for a negative one."""
    if by >= 0:
        return mix(colour, (1.0, 1.0, 1.0), by * 0.7)
    keep = (1 + by) ** 1.6
    return mix((0.0, 0.0, 0.0), colour, keep)


def lit(colour: Colour, tone: float, *, metal: bool = False) -> Colour:
    """``colour`` in the light ``tone`` (0 to 1); at :data:`FLAT` it is itself."""
    if tone <= FLAT:
        depth = (FLAT - tone) / FLAT
        dark = mix(colour, (0.004, 0.004, 0.008), 0.93)
        return mix(colour, dark, depth ** (0.7 if metal else 0.85))
    height = (tone - FLAT) / (1 - FLAT)
    # Matt colour only gets brighter; metal throws the lamp itself back.
    gain, gleam = (1.5, 0.4 * height) if metal else (1.0, 0.05)
    red, green, blue = (min(1.0, part * (1 + gain * height) + gleam * height) for part in colour)
    return red, green, blue


def brightness(colour: Colour) -> float:
    """Luminance, 0 to 1 (ITU-R BT.709, the weights of sRGB; from memory)."""
    return 0.2126 * colour[0] + 0.7152 * colour[1] + 0.0722 * colour[2]
