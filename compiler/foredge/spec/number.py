"""The numbers of a measure: integer, decimal, fraction, mixed number; exact.

The patterns are written for Python and for ECMA alike: no ``\\d`` (Python's takes the digits
of every script), no ``$`` (Python's takes a last newline), no escape that ECMA's u flag
refuses.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

SPACE = r"[ \u00a0\u2009\u202f]"
GAP = SPACE + "{0,3}"
BREAK = SPACE + "{1,3}"
SLASH = "[/⁄]"
TYPOGRAPHIC = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"

_DIGITS = "[0-9]{1,9}"
_ABOVE_ZERO = "(?=0*[1-9])" + _DIGITS
_MIXED = f"{_DIGITS}{BREAK}{_DIGITS}{SLASH}{_ABOVE_ZERO}"
_MIXED_POSITIVE = (
    f"(?:{_ABOVE_ZERO}{BREAK}{_DIGITS}|{_DIGITS}{BREAK}{_ABOVE_ZERO}){SLASH}{_ABOVE_ZERO}"
)
_SIGN = f"(?:{_DIGITS}{GAP})?[{TYPOGRAPHIC}]"
_DECIMAL = r"[0-9]{0,9}\.[0-9]{1,9}"

FRACTION_POSITIVE = f"{_ABOVE_ZERO}{SLASH}{_ABOVE_ZERO}"
NUMBER = f"(?:{_MIXED}|{_SIGN}|{_DIGITS}{SLASH}{_ABOVE_ZERO}|{_DECIMAL}|{_DIGITS})"
POSITIVE = (
    f"(?:{_MIXED_POSITIVE}|{_SIGN}|{FRACTION_POSITIVE}|(?=[0.]*[1-9]){_DECIMAL}|{_ABOVE_ZERO})"
)
BELOW_ZERO = r"-[0-9]{1,2}(?:\.[0-9]{1,9})?"  # for thermometers only; no colder than -99


def exact(text: str) -> Fraction:
    """Value of a text that ``NUMBER`` or ``BELOW_ZERO`` matches in full."""
    total = Fraction(0)
    for part in re.split(f"{SPACE}+", re.sub(f"([{TYPOGRAPHIC}])", r" \1", text).strip()):
        # NFKC writes a typographic fraction with the fraction slash.
        total += Fraction(unicodedata.normalize("NFKC", part).replace("⁄", "/"))
    return total
