"""Small reliefs for the tests of solids."""

from __future__ import annotations

from foredge.contract import LENGTH, RATIO, Made, Origin, Placed, Quantity, ReliefShape, Solid, leaf
from foredge.solids.plain import Plain, Relief

SKIN = leaf(2.0, LENGTH, "skin", Origin("spec"), low=1.5, high=2.5)


def mm(value: float, name: str = "size") -> Quantity:
    """A length, as a spec says it."""
    return leaf(value, LENGTH, name, Origin("spec"))


def relief(*solids: Solid[float], made: Made = "core", apart: float = 0.0) -> Relief:
    """Solids in a row along x, ``apart`` mm from each other, as the core sees them."""
    pieces = tuple(
        Placed(solid, place * apart, 0.0, 0.0, 0.0) for place, solid in enumerate(solids)
    )
    return (Plain(pieces, made),)


def shape(
    solid: Solid[Quantity],
    x: float = 0.0,
    y: float = 0.0,
    *,
    turn: float = 0.0,
    lift: float = 0.0,
    mirrored: bool = False,
    made: Made = "core",
) -> ReliefShape:
    """One solid as a part returns it."""
    turned = leaf(turn, RATIO, "turn", Origin("spec"))
    piece = Placed(solid, mm(x, "x"), mm(y, "y"), turned, mm(lift, "lift"), mirrored)
    return ReliefShape((piece,), made)
