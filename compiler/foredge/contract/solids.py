"""A relief as a tree of solids: what a relief part returns, and all it knows of geometry.

Lengths are in mm, angles in degrees. In a solid's own frame z = 0 is the board's face and z
points away from it; every solid is cut off at its own z = 0. On a panel x runs away from the
spine and y from head to tail (on the spine: x from the left edge as you face it). A positive
angle turns x towards y.

The tree holds quantities. The core works on the same tree with plain floats in it, so every
class here takes either.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, Literal, TypeAlias, TypeVar

from foredge.quantity import Quantity

N = TypeVar("N", Quantity, float)
Made = Literal["core", "clay", "rigid"]
"""``core``: a light core under a skin; ``clay``: solid clay; ``rigid``: an inset of its own
stuff (shell, glass, metal) that the clay rings."""

MOST_PIECES = 400
"""More solids than this on one panel are refused: nobody models them, and they cost minutes."""

MOST_CORNERS = 2000
"""More outline corners and tube points than this in one relief are refused."""


@dataclass(frozen=True, slots=True)
class Cap(Generic[N]):
    """A spherical cap: a dome of ``height`` on a circle of ``base_radius``."""

    base_radius: N
    height: N


@dataclass(frozen=True, slots=True)
class Mound(Generic[N]):
    """Half an ellipsoid with the semi-axes ``radius_x``, ``radius_y`` and ``height``."""

    radius_x: N
    radius_y: N
    height: N


@dataclass(frozen=True, slots=True)
class Frustum(Generic[N]):
    """A cone cut off at ``height``; pointed where ``top_radius`` is 0, a disc where both are
    equal."""

    bottom_radius: N
    top_radius: N
    height: N


@dataclass(frozen=True, slots=True)
class Ring(Generic[N]):
    """An oval of ``width`` by ``height`` led round z on a circle of ``radius`` (to its middle).

    ``sunk`` is how deep the oval lies under the board's face: 0 is a hoop laid on it, half of
    ``height`` a half-round. It starts ``start`` degrees from x and goes ``sweep`` degrees
    round; less than 360 is an arc with flat ends.
    """

    radius: N
    width: N
    height: N
    start: N
    sweep: N
    sunk: N


@dataclass(frozen=True, slots=True)
class Tube(Generic[N]):
    """Balls at ``points`` (x, y, z of their middles), each joined to the next by the cone or
    cylinder that touches both; one radius a point."""

    points: tuple[tuple[N, N, N], ...]
    radii: tuple[N, ...]


@dataclass(frozen=True, slots=True)
class Slab(Generic[N]):
    """A plate of ``height`` over a simple polygon; ``bevel`` is taken off its upper edge at 45
    degrees. ``outline`` may turn either way round."""

    outline: tuple[tuple[N, N], ...]
    height: N
    bevel: N


@dataclass(frozen=True, slots=True)
class Ridge(Generic[N]):
    """A fin: a triangle of base ``width`` and ``height``, drawn out to ``length`` along x."""

    length: N
    width: N
    height: N


Solid: TypeAlias = Cap[N] | Mound[N] | Frustum[N] | Ring[N] | Tube[N] | Slab[N] | Ridge[N]


@dataclass(frozen=True, slots=True)
class Placed(Generic[N]):
    """A solid on its panel: mirrored (x to -x) where asked, turned about its own z, moved to
    ``x``, ``y`` and raised by ``lift`` above the board's face."""

    solid: Solid[N]
    x: N
    y: N
    turn: N
    lift: N
    mirrored: bool = False


@dataclass(frozen=True, slots=True)
class ReliefShape:
    """The solids of one relief part and what they are made of."""

    pieces: tuple[Placed[Quantity], ...]
    made: Made = "core"
