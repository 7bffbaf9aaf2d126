"""Rounding for show: exact, half up, never a "-0"."""

from __future__ import annotations

import math
from fractions import Fraction

from foredge.quantity import Band

_GRID = 10**9
_MOST_PLACES = 6
"""What is below this in the unit shown is the residue of a subtraction: nothing."""


def exact(value: float) -> Fraction | None:
    """``value`` with the noise of its last bits taken off; None when it is not a number.

    Three significant figures of the smallest values must survive, so the grid is relative
    below 1 and absolute above.
    """
    if not math.isfinite(value):
        return None
    if value and abs(value) < 1:
        grid = _GRID * 10 ** math.ceil(-math.log10(abs(value)))
        return Fraction(round(Fraction(value) * grid), grid)
    return Fraction(round(Fraction(value) * _GRID), _GRID)


def half_up(value: Fraction, step: Fraction) -> Fraction:
    """``value`` to the nearest ``step``; a tie goes away from zero."""
    size = math.floor(abs(value) / step + Fraction(1, 2)) * step
    return -size if value < 0 else size


def decimal(value: Fraction, places: int) -> str:
    """``value`` with at most ``places`` decimals, without trailing zeros."""
    rounded = half_up(value, Fraction(1, 10**places))
    digits = abs(int(rounded * 10**places))
    whole, rest = divmod(digits, 10**places)
    text = str(whole)
    if rest:
        text += "." + str(rest).rjust(places, "0").rstrip("0")
    return "-" + text if rounded < 0 else text


def significant(value: Fraction, figures: int | None = None) -> int:
    """Decimals that show ``value`` to ``figures`` figures; by default 3, and 2 below 1."""
    if figures is None:
        figures = 3 if abs(value) >= 1 else 2
    if abs(value) < Fraction(1, 10**_MOST_PLACES):
        return _MOST_PLACES  # shows as 0 all the same; a range around it keeps its figures
    return min(_MOST_PLACES, max(0, figures - 1 - math.floor(math.log10(abs(value)))))


def within_band(value: Fraction, places: int, band: Band | None, factor: Fraction) -> int:
    """``places``, or fewer where the width of ``band`` drowns them; ``value`` is in ``factor``.

    One figure below the first of half its width is kept, and two of ``value`` at least:
    5.26 within 3.9 to 6.8 is told as 5.3.
    """
    if band is None or band.exact:
        return places
    low, high = exact(band.low), exact(band.high)
    if low is None or high is None or low == high:
        return places
    half = float((high - low) / factor / 2)
    return min(places, max(1 - math.floor(math.log10(half)), significant(value, 2)))


def band_ends(band: Band | None, factor: Fraction, places: int) -> tuple[str, str] | None:
    """Both ends of ``band`` in a unit of ``factor``: no finer than ``places`` or its width asks."""
    if band is None or band.exact:
        return None
    low, high = exact(band.low), exact(band.high)
    if low is None or high is None:
        return None
    half = float((high - low) / factor / 2)
    if half >= 10:
        places = 0
    elif half >= 0.1:
        places = min(places, 1)
    elif half > 0:
        places = min(places, math.floor(-math.log10(half)) + 1)
    return decimal(low / factor, places), decimal(high / factor, places)


def ranged(text: str, ends: tuple[str, str] | None) -> str:
    """``text (low to high)``, or ``text`` alone where the ends show no difference."""
    return text if ends is None or ends[0] == ends[1] else f"{text} ({ends[0]} to {ends[1]})"
