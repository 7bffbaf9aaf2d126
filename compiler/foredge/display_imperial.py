"""Inches, ounces and fluid ounces for show. Inches never become feet.

A length is a fraction to 1/16 in; one that lies on the 1/32 grid is shown on it, so a size
rounded to 1/32 in is shown as it is cut. Thin things (below 1/8 in) are decimals, as
callipers and dealers tell them; thread by the length is in yards.
"""

from __future__ import annotations

from fractions import Fraction

from foredge.dimension import AREA, GRAMMAGE, LENGTH, MASS, VOLUME, Dimension
from foredge.display_number import (
    band_ends,
    decimal,
    exact,
    half_up,
    ranged,
    significant,
    within_band,
)
from foredge.quantity import Band

# NIST Special Publication 811 (2008), appendix B.8 and Handbook 44, appendix C: exact.
INCH_MM = Fraction("25.4")
OUNCE_G = Fraction("28.349523125")
FLUID_OUNCE_MM3 = 231 * INCH_MM**3 / 128
YARD_MM = 36 * INCH_MM

THIN_IN = Fraction(1, 8)
LONG_IN = Fraction(60)
_ON_GRID = Fraction(1, 10**6)


def write(
    value: Fraction, dimension: Dimension, band: Band | None, within: Band | None = None
) -> str | None:
    """``value`` (canonical) in customary units; None where the craft uses metric ones.

    ``band`` is written behind it; ``within`` says how many of its figures are worth telling.
    """
    if dimension == LENGTH:
        return _length(value, band, within)
    scale = _scale(value, dimension)
    if scale is None:
        return None
    unit, factor = scale
    places = significant(value / factor)
    told = decimal(value / factor, within_band(value / factor, places, within, factor))
    return ranged(f"{told} {unit}", band_ends(band, factor, places))


def inches(value_mm: Fraction) -> str:
    """A length in inches without its unit: ``5 7/8``, ``0.012`` for what is thin."""
    size = value_mm / INCH_MM
    if abs(size) < THIN_IN and not _on_grid(size, 32):
        return decimal(size, _thin_places(size))
    return fraction(size, 32 if _on_grid(size, 32) else 16)


def fraction(size: Fraction, parts: int) -> str:
    """``size`` as whole and fraction, to the nearest 1/``parts``."""
    rounded = half_up(size, Fraction(1, parts))
    whole, rest = divmod(abs(rounded), 1)
    words = [str(whole)] if whole or not rest else []
    if rest:
        words.append(f"{rest.numerator}/{rest.denominator}")
    return ("-" if rounded < 0 else "") + " ".join(words)


def _on_grid(size: Fraction, parts: int) -> bool:
    return abs(size - half_up(size, Fraction(1, parts))) < _ON_GRID


def _thin_places(size: Fraction) -> int:
    return significant(size, 2)


def _length(value: Fraction, band: Band | None, within: Band | None) -> str:
    text = f"{inches(value)} in"
    size = value / INCH_MM
    if abs(size) >= LONG_IN:
        places = significant(value / YARD_MM)
        told = within_band(value / YARD_MM, places, within, YARD_MM)
        yards = f"{decimal(value / YARD_MM, told)} yd"
        return ranged(yards, band_ends(band, YARD_MM, places))
    if abs(size) < THIN_IN:
        return ranged(text, band_ends(band, INCH_MM, max(3, _thin_places(size))))
    if band is None or band.exact:
        return text
    low, high = exact(band.low), exact(band.high)
    if low is None or high is None:
        return text
    parts = 32 if (high - low) / INCH_MM < THIN_IN else 16
    return ranged(text, (fraction(low / INCH_MM, parts), fraction(high / INCH_MM, parts)))


def _scale(value: Fraction, dimension: Dimension) -> tuple[str, Fraction] | None:
    if dimension == MASS:
        return ("lb", 16 * OUNCE_G) if abs(value) >= 16 * OUNCE_G else ("oz", OUNCE_G)
    if dimension == AREA:
        return "sq in", INCH_MM**2
    if dimension == VOLUME:
        return "fl oz", FLUID_OUNCE_MM3
    if dimension == GRAMMAGE:
        return "oz/yd²", OUNCE_G / YARD_MM**2
    return None
