"""The built-in letters: Hershey's stroke sets, under names of our own.

The sets stand on a baseline at 9 and their capitals reach to -12, y downwards, as the
format has it (A. V. Hershey, Calligraphy for Computers, 1967; the format as in the
distribution of the set by J. Hurt, 1986). They know the characters of ASCII only.
"""

from __future__ import annotations

from functools import cache

from foredge_lettering.typeface import Glyph

SETS = {
    "plain": "futural",
    "plain-double": "futuram",
    "roman": "timesr",
    "roman-bold": "timesrb",
    "italic": "timesi",
    "script": "scripts",
    "script-double": "scriptc",
    "blackletter": "gothiceng",
}
"""Our name -> the set's."""

SINGLE = frozenset({"plain", "script"})
"""Sets in which every limb of a letter is one line, drawn once."""

_BASE = 9.0
_CAP = 21.0
_PRINTING = range(32, 127)
_SAME = str.maketrans({"\u2019": "'", "\u2018": "'", "\u201c": '"', "\u201d": '"', "\u00a0": " "})


class StrokeSet:
    """One of ``SETS``."""

    filled = False

    def __init__(self, name: str) -> None:
        self.name = name
        self.citation = f"the built-in letters '{name}', after A. V. Hershey, 1967"

    def glyph(self, char: str) -> Glyph | None:
        """The letter; typographic quotes are taken for plain ones."""
        return _glyphs(self.name).get(char.translate(_SAME))


@cache
def _glyphs(name: str) -> dict[str, Glyph]:
    from HersheyFonts import HersheyFonts  # decompresses its sets: only where text is set

    letters = HersheyFonts()
    letters.load_default_font(SETS[name])
    return {
        char: Glyph(
            tuple(
                tuple(((x - one.left_offset) / _CAP, (y - _BASE) / _CAP) for x, y in stroke)
                for stroke in one.strokes
            ),
            one.char_width / _CAP,
        )
        for char, one in letters.all_glyphs.items()
        if ord(char) in _PRINTING
    }
