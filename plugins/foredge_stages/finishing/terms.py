"""Words this stage uses in more than one module."""

from __future__ import annotations

from foredge.contract import LENGTH, TIME, Dimension, Origin, Quantity, leaf

STAGE = "finishing"
SECTION = "finishing"
GEOMETRY = "geometry"
PRACTICE = "common practice"
PRESSED = "case.press"
PROTECT = "finishing.protect-block"
OPEN = "finishing.rest-open"
CLOSED = "finishing.rest-closed"


def nothing(dimension: Dimension = LENGTH) -> Quantity:
    """None of a thing."""
    return leaf(0.0, dimension, "nothing", Origin("constant"), label="nothing")


def no_time() -> Quantity:
    """No time at all."""
    return nothing(TIME)
