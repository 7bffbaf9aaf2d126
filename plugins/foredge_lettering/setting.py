"""Text set in lines, in cap heights: widths, extents, line breaks. Plain numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from foredge_lettering.typeface import Stroke, Typeface, area_of, length_of

_HAIR = 0.01
"""Cap heights: what a stroke without width or height is taken for."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of text: letters from x = 0 on, baseline at 0, ink from ``left`` to ``right``."""

    text: str
    letters: tuple[tuple[Stroke, ...], ...]
    left: float
    right: float
    top: float
    bottom: float

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """The lines of all its letters."""
        return tuple(stroke for letter in self.letters for stroke in letter)

    @property
    def width(self) -> float:
        """How wide its ink is."""
        return self.right - self.left


@dataclass(frozen=True, slots=True)
class Setting:
    """Rows ``leading`` apart, all in cap heights. ``width`` and ``height`` are of the ink."""

    rows: tuple[Row, ...]
    leading: float
    filled: bool

    @property
    def width(self) -> float:
        """The widest row; never nothing, though a lone I has no width."""
        return max(_HAIR, *(row.width for row in self.rows))

    @property
    def top(self) -> float:
        """The highest ink, from the first baseline (negative: above it)."""
        return min(place * self.leading + row.top for place, row in enumerate(self.rows))

    @property
    def height(self) -> float:
        """From the highest ink to the lowest; never nothing, though a dash has no height."""
        low = max(place * self.leading + row.bottom for place, row in enumerate(self.rows))
        return max(_HAIR, low - self.top)

    @property
    def letters(self) -> int:
        """How many letters are drawn."""
        return sum(1 for row in self.rows for letter in row.letters if letter)

    @property
    def length(self) -> float:
        """All its lines."""
        return length_of((s for row in self.rows for s in row.strokes), closed=self.filled)

    @property
    def area(self) -> float:
        """What filled letters cover."""
        return math.fsum(area_of(letter) for row in self.rows for letter in row.letters)


def missing(lines: Sequence[str], face: Typeface) -> list[tuple[int, str]]:
    """Characters that ``face`` does not have: the line (from 1) and the character, once each."""
    return [
        (place, char)
        for place, line in enumerate(lines, 1)
        for char in dict.fromkeys(line)
        if face.glyph(char) is None
    ]


def set_lines(lines: Sequence[str], face: Typeface, tracking: float, leading: float) -> Setting:
    """``lines`` set as they are; ``tracking`` is put between letters, in cap heights."""
    return Setting(tuple(_row(line, face, tracking) for line in lines), leading, face.filled)


def _row(text: str, face: Typeface, tracking: float) -> Row:
    letters: list[tuple[Stroke, ...]] = []
    x = 0.0
    for char in text:
        glyph = face.glyph(char)
        if glyph is None:
            raise KeyError(char)
        letters.append(tuple(tuple((x + px, py) for px, py in one) for one in glyph.strokes))
        x += glyph.advance + tracking
    points = [point for letter in letters for stroke in letter for point in stroke]
    if not points:  # an empty line between two
        return Row(text, (), 0.0, 0.0, -1.0, 0.0)
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return Row(text, tuple(letters), min(xs), max(xs), min(ys), max(ys))


def break_text(
    text: str, face: Typeface, tracking: float, leading: float, box: tuple[float, float]
) -> Setting:
    """``text`` broken between words so that it can stand largest in ``box`` (width, height).

    Every number of lines is tried, with the breaks that keep the widest line narrowest.
    """
    words = text.split()
    breaks = _Breaks(_spans(words, face, tracking))
    best, size = set_lines([" ".join(words)], face, tracking, leading), 0.0
    for count in range(1, len(words) + 1):
        if (count - 2) * leading * size > box[1]:
            break  # its baselines alone need more room than there is for a larger size
        lines = [" ".join(words[start:end]) for start, end in breaks.into(count)]
        setting = set_lines(lines, face, tracking, leading)
        fits = min(box[0] / setting.width, box[1] / setting.height)
        if fits > size:
            best, size = setting, fits
    return best


def _spans(words: list[str], face: Typeface, tracking: float) -> list[list[float]]:
    """Ink width of words i to j together, from the first one's left to the last one's right."""
    rows = [_row(word, face, tracking) for word in words]
    gap = _advance(" ", face, tracking)
    starts = [0.0]
    for word in words:
        starts.append(starts[-1] + _advance(word, face, tracking) + gap)
    return [
        [
            starts[end] + rows[end].right - starts[start] - rows[start].left
            for end in range(len(words))
        ]
        for start in range(len(words))
    ]


def _advance(text: str, face: Typeface, tracking: float) -> float:
    glyphs = [face.glyph(char) for char in text]
    return math.fsum(glyph.advance + tracking for glyph in glyphs if glyph is not None)


class _Breaks:
    """Words in so many lines, the widest of them as narrow as can be; ``widths`` of words i to j.

    ``_best[k][i]`` is of words i and on in k lines: the widest line, and where the first ends.
    """

    def __init__(self, widths: list[list[float]]) -> None:
        self._widths = widths
        last = len(widths)
        self._best = [[(math.inf, last)] * last + [(0.0, last)]]

    def into(self, count: int) -> list[tuple[int, int]]:
        """First word and end of each of ``count`` lines."""
        while len(self._best) <= count:
            self._best.append(self._one_more(self._best[-1]))
        lines, start = [], 0
        for left in range(count, 0, -1):
            end = self._best[left][start][1]
            lines.append((start, end))
            start = end
        return lines

    def _one_more(self, rest: list[tuple[float, int]]) -> list[tuple[float, int]]:
        last = len(self._widths)
        row = [
            min(
                (max(self._widths[start][end - 1], rest[end][0]), end)
                for end in range(start + 1, last + 1)
            )
            for start in range(last)
        ]
        return [*row, (math.inf, last)]
