"""How far a reading was from what had been estimated, in words."""

from __future__ import annotations

from foredge.display import show
from foredge.quantity import Band, Origin, Program, Quantity, leaf
from foredge.readings import estimate_of


def is_estimate(quantity: Quantity, band: Band) -> bool:
    """Whether a number has a range, and neither waits for a gate nor rests on a reading."""
    if band.exact or not quantity.firm or quantity.op == "blank":
        return False
    return not any(node.op == "gate" for node in Program([quantity]).nodes)


def estimate_text(quantity: Quantity, system: str = "metric") -> str:
    """The estimate behind a gate's quantity with its range, read or not."""
    band = estimate_of(quantity)
    return show(_estimated(quantity), system, band)


def off_by(quantity: Quantity, system: str = "metric") -> str:
    """``0.4 mm above the estimate``, for a gate that was read; says where it left the range."""
    band = estimate_of(quantity)
    off = quantity.value - _estimated(quantity).value
    size = leaf(abs(off), quantity.dimension, "off", Origin("reading"))
    outside = "" if _inside(quantity.value, band) else " and outside its range"
    if show(size, system).startswith("0 "):
        return "as estimated"
    side = "above" if off > 0 else "below"
    return f"{show(size, system)} {side} the estimate{outside}"


def _inside(value: float, band: Band) -> bool:
    slack = 1e-6
    return band.low - slack <= value <= band.high + slack


def _estimated(quantity: Quantity) -> Quantity:
    return quantity.args[0] if quantity.op == "gate" else quantity
