"""How a number is written for the maker: metric, imperial or both.

The same value always gives the same text. Values are first put on a grid far finer than
anything shown, so the last bits of a float never decide a digit, and then rounded half up
with fractions. A size on the maker's grid (0.5 mm, 1/32 in) is shown exactly as it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from foredge import display_imperial as imperial
from foredge.dimension import (
    AREA,
    DENSITY,
    GRAMMAGE,
    LENGTH,
    LINEAR_DENSITY,
    MASS,
    RATIO,
    TIME,
    VOLUME,
    Dimension,
)
from foredge.display_number import (
    band_ends,
    decimal,
    exact,
    half_up,
    ranged,
    significant,
    within_band,
)
from foredge.quantity import Band, Quantity

LONG_MM = 1500
"""From here on a length is told in metres: thread, not a size that is cut."""


@dataclass(frozen=True, slots=True)
class Scale:
    """A unit and how many canonical ones make one of it."""

    unit: str
    factor: Fraction


# Smallest value (canonical) from which the scale is used, largest first.
_METRIC: dict[Dimension, tuple[tuple[float, Scale], ...]] = {
    MASS: ((1000, Scale("kg", Fraction(1000))), (0, Scale("g", Fraction(1)))),
    AREA: ((1e6, Scale("m²", Fraction(10**6))), (0, Scale("cm²", Fraction(100)))),
    VOLUME: ((1e6, Scale("l", Fraction(10**6))), (0, Scale("ml", Fraction(1000)))),
    GRAMMAGE: ((0, Scale("g/m²", Fraction(1, 10**6))),),
    DENSITY: ((0, Scale("g/cm³", Fraction(1, 1000))),),
    LINEAR_DENSITY: ((0, Scale("tex", Fraction(1, 10**6))),),
    Dimension(3, -1, 0): ((0, Scale("cm³/g", Fraction(1000))),),
}


def show(
    quantity: Quantity,
    system: str = "metric",
    band: Band | None = None,
    *,
    within: Band | None = None,
) -> str:
    """``quantity`` with its unit, and its 95 % range when ``band`` has one.

    ``system`` is ``metric``, ``imperial`` or ``both``: ``148.5 mm (147.7 to 149.4)``. An amount
    has no more figures than its range is worth (:func:`within_band`); lengths in mm and inches,
    which are cut, and times keep theirs. ``within`` is the range where it is not written out.
    """
    within = band if within is None else within
    value, dimension = exact(quantity.value), quantity.dimension
    if value is None:
        return "unknown"
    if dimension == RATIO:
        return _plain(quantity, band, within)
    if dimension == TIME:
        return ranged(duration(quantity.value), _time_range(band))
    texts = []
    if system in ("metric", "both"):
        texts.append(_metric(value, dimension, band, within))
    if system in ("imperial", "both"):
        text = imperial.write(value, dimension, band, within)
        if text is not None:
            texts.append(text)
    if not texts:
        return _metric(value, dimension, band, within)
    if len(texts) == 2 and not texts[0].endswith(")"):
        return f"{texts[0]} ({texts[1]})"
    return ", ".join(texts)


def show_size(width: Quantity, height: Quantity, system: str = "metric") -> str:
    """Width × height of a piece, in mm, inches or both: ``149 × 215 mm (5 7/8 × 8 7/16 in)``."""
    texts = []
    if system in ("metric", "both"):
        texts.append(f"{in_mm(width)} × {in_mm(height)} mm")
    if system in ("imperial", "both"):
        texts.append(f"{in_inches(width)} × {in_inches(height)} in")
    return texts[0] if len(texts) == 1 else f"{texts[0]} ({texts[1]})"


def show_length(length: Quantity | float, system: str = "metric") -> str:
    """A length (a plain one in mm) for a drawing, without its range: ``22 mm (7/8 in)``."""
    value = exact(length if isinstance(length, float | int) else length.value)
    if value is None:
        return "unknown"
    metric = f"{decimal(value, _mm_places(value))} mm"
    inches = f"{imperial.inches(value)} in"
    return {"imperial": inches, "both": f"{metric} ({inches})"}.get(system, metric)


def in_mm(length: Quantity) -> str:
    """A length in mm without its unit."""
    value = exact(length.value)
    return "unknown" if value is None else decimal(value, _mm_places(value))


def in_inches(length: Quantity) -> str:
    """A length in inches, as a fraction, without its unit."""
    value = exact(length.value)
    return "unknown" if value is None else imperial.inches(value)


def duration(seconds: float) -> str:
    """A time: ``20 min``, ``1 h 30 min``, ``2 days 12 h``."""
    amount = exact(seconds)
    if amount is None:
        return "unknown"
    whole = half_up(amount, Fraction(1))
    if whole < 60:
        return f"{int(whole)} s" if whole else "0 min"
    minutes = int(half_up(amount / 60, Fraction(1)))
    if minutes < 60:
        return f"{minutes} min"
    if minutes < 48 * 60:
        return _two(minutes // 60, "h", minutes % 60, "min")
    hours = int(half_up(amount / 3600, Fraction(1)))
    return _two(hours // 24, "days", hours % 24, "h")


def _two(large: int, large_unit: str, small: int, small_unit: str) -> str:
    return f"{large} {large_unit}" + (f" {small} {small_unit}" if small else "")


def _time_range(band: Band | None) -> tuple[str, str] | None:
    if band is None or band.exact:
        return None
    return duration(max(0.0, band.low)), duration(max(0.0, band.high))


def _metric(value: Fraction, dimension: Dimension, band: Band | None, within: Band | None) -> str:
    if dimension == LENGTH and abs(value) < LONG_MM:
        scale, places, within = Scale("mm", Fraction(1)), _mm_places(value), None
    elif dimension == LENGTH:
        scale, places = Scale("m", Fraction(1000)), significant(value / 1000)
    else:
        scale = _scale(value, dimension)
        places = significant(value / scale.factor)
    number = value / scale.factor
    text = f"{decimal(number, within_band(number, places, within, scale.factor))} {scale.unit}"
    return ranged(text, band_ends(band, scale.factor, places))


def _mm_places(value: Fraction) -> int:
    size = abs(value)
    if size >= 10:
        return 1
    return 2 if size >= 1 else significant(value, 2)


def _scale(value: Fraction, dimension: Dimension) -> Scale:
    known = _METRIC.get(dimension)
    if known is None:
        return Scale(_powers(dimension), Fraction(1))
    size = abs(value)
    return next((scale for least, scale in known if size >= least), known[-1][1])


def _powers(dimension: Dimension) -> str:
    """A unit for a dimension nobody gave a name: ``g·mm``, ``mm/s``."""
    signs = {1: "", 2: "²", 3: "³"}
    units = list(zip(("mm", "g", "s"), dimension, strict=True))
    above = [unit + signs.get(p, f"^{p}") for unit, p in reversed(units) if p > 0]
    below = [unit + signs.get(-p, f"^{-p}") for unit, p in units if p < 0]
    text = "·".join(above) or "1"
    return f"{text}/{'/'.join(below)}" if below else text


def _plain(quantity: Quantity, band: Band | None, within: Band | None) -> str:
    """A count, a share, a factor, an angle or a temperature."""
    value = exact(quantity.value) or Fraction(0)
    written = quantity.origin.text.rstrip() if quantity.origin else ""
    factor, unit = Fraction(1), ""
    if written.endswith(("deg", "°", "degrees", "degree")):
        unit = "°"
    elif written.endswith(("degC", "°C", "degF", "°F")):
        unit = " °C"
    elif written.endswith(("%", "percent")) or _is_share(quantity, value, within):
        factor, unit = Fraction(1, 100), " %"
    number = value / factor
    places = 0 if number.denominator == 1 else significant(number)
    text = decimal(number, within_band(number, places, within, factor)) + unit
    whole = quantity.integer or quantity.op in ("ceil", "floor")
    ends = band_ends(band, factor, 0 if whole else max(places, significant(number)))
    return ranged(text, ends and (ends[0] + unit, ends[1] + unit))


def _is_share(quantity: Quantity, value: Fraction, band: Band | None) -> bool:
    """Whether a plain number reads best in per cent: below one, or an error around nothing."""
    if quantity.integer or (quantity.origin is not None and quantity.origin.kind == "constant"):
        return False
    if not value:
        return band is not None and not band.exact and max(-band.low, band.high) < 1
    return abs(value) < 1
